package toothmark.findings;

import java.util.Optional;
import toothmark.timing.GapFit;
import toothmark.timing.GapShape;
import toothmark.units.Say;

/** The sensor's signal passes its threshold late at low speed. */
final class ThresholdLagCheck implements Check {

  @Override
  public String id() {
    return "threshold-lag";
  }

  @Override
  public Outcome examine(Symptoms symptoms) {
    if (symptoms.seen().timing().gap().isEmpty()) {
      return Outcome.cannotRun(TimingShapes.NO_GAP);
    }
    Optional<GapFit> fit = TimingShapes.fitNaming(symptoms.seen(), GapShape.THRESHOLD);
    if (fit.isEmpty()) {
      return Outcome.quiet();
    }
    GapFit g = fit.get();
    return Outcome.fires(
        Draft.of(
                id(), Severity.WATCH, "The sensor's signal passes its threshold late at low speed.")
            .probability(0.8)
            .saw("The gap is largest at low speed and fades as the signal grows.")
            .saw(
                Words.count(g.fitted(), "spark", "sparks")
                    + " between "
                    + Say.rpm(g.fromRpm())
                    + " and "
                    + Say.rpm(g.toRpm())
                    + " say so.")
            .ratherThan("A delay would grow with speed; this shrinks.")
            .next("Check the air gap and the threshold of the sensor's input stage.")
            .caution("A lower threshold admits noise: look at both sides.")
            .picture(Picture.ADVANCE));
  }
}
