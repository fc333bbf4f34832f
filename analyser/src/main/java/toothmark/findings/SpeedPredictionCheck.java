package toothmark.findings;

import java.util.Optional;
import toothmark.timing.GapFit;
import toothmark.timing.GapShape;
import toothmark.units.Say;

/** Sparks stray while the speed changes. */
final class SpeedPredictionCheck implements Check {

  @Override
  public String id() {
    return "speed-prediction";
  }

  @Override
  public Outcome examine(Symptoms symptoms) {
    if (symptoms.seen().timing().gap().isEmpty()) {
      return Outcome.cannotRun(TimingShapes.NO_GAP);
    }
    Optional<GapFit> fit = TimingShapes.fitNaming(symptoms.seen(), GapShape.ACCELERATION);
    if (fit.isEmpty()) {
      return Outcome.quiet();
    }
    GapFit g = fit.get();
    return Outcome.fires(
        Draft.of(id(), Severity.WATCH, "Sparks stray while the speed changes.")
            .probability(0.8)
            .saw(
                "The gap follows the change of speed: one way while speeding up, the other way while slowing down.")
            .saw(
                Words.count(g.fitted(), "spark", "sparks")
                    + " between "
                    + Say.rpm(g.fromRpm())
                    + " and "
                    + Say.rpm(g.toRpm())
                    + " say so.")
            .ratherThan("A fixed delay does not depend on acceleration.")
            .next(
                "Set the controller to time sparks from a tooth nearer to the spark, or to a quicker speed measure.")
            .caution("Judge the basic timing at steady speed only.")
            .picture(Picture.ADVANCE));
  }
}
