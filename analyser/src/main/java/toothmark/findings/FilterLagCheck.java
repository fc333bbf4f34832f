package toothmark.findings;

import java.util.Optional;
import toothmark.timing.GapFit;
import toothmark.timing.GapShape;
import toothmark.units.Say;

/** The crank signal passes through a slow filter. */
final class FilterLagCheck implements Check {

  @Override
  public String id() {
    return "filter-lag";
  }

  @Override
  public Outcome examine(Symptoms symptoms) {
    if (symptoms.seen().timing().gap().isEmpty()) {
      return Outcome.cannotRun(TimingShapes.NO_GAP);
    }
    Optional<GapFit> fit = TimingShapes.fitNaming(symptoms.seen(), GapShape.FILTER_LAG);
    if (fit.isEmpty()) {
      return Outcome.quiet();
    }
    GapFit g = fit.get();
    return Outcome.fires(
        Draft.of(id(), Severity.WATCH, "The crank signal passes through a slow filter.")
            .probability(0.8)
            .saw("The gap grows with speed at first and then levels off, as a filter's lag does.")
            .saw(
                Words.count(g.fitted(), "spark", "sparks")
                    + " between "
                    + Say.rpm(g.fromRpm())
                    + " and "
                    + Say.rpm(g.toRpm())
                    + " say so.")
            .ratherThan("A pure delay grows in a straight line; this one bends over.")
            .next(
                "Look for a capacitor or a long shielded lead on the sensor's wires, and for a filter setting of the controller.")
            .caution("Do not take a filter out without checking for noise at cranking.")
            .picture(Picture.ADVANCE));
  }
}
