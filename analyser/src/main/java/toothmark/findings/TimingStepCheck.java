package toothmark.findings;

import java.util.Optional;
import toothmark.timing.GapFit;
import toothmark.timing.GapShape;
import toothmark.units.Say;

/** The timing jumps by a fixed angle at one speed. */
final class TimingStepCheck implements Check {

  @Override
  public String id() {
    return "timing-step";
  }

  @Override
  public Outcome examine(Symptoms symptoms) {
    if (symptoms.seen().timing().gap().isEmpty()) {
      return Outcome.cannotRun(TimingShapes.NO_GAP);
    }
    Optional<GapFit> fit = TimingShapes.fitNaming(symptoms.seen(), GapShape.STEP);
    if (fit.isEmpty()) {
      return Outcome.quiet();
    }
    GapFit g = fit.get();
    return Outcome.fires(
        Draft.of(id(), Severity.WATCH, "The timing jumps by a fixed angle at one speed.")
            .probability(0.8)
            .saw("The gap has one value below a speed and another above it.")
            .saw(
                Words.count(g.fitted(), "spark", "sparks")
                    + " between "
                    + Say.rpm(g.fromRpm())
                    + " and "
                    + Say.rpm(g.toRpm())
                    + " say so.")
            .ratherThan("A delay changes little by little; this jumps.")
            .next(
                "Look in the controller for a table edge, a dwell limit or a change of timing tooth at that speed.")
            .caution("Do not trim it with the base angle: one side would be wrong.")
            .picture(Picture.ADVANCE));
  }
}
