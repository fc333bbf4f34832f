package toothmark.findings;

import java.util.Optional;
import toothmark.timing.GapFit;
import toothmark.units.Measured;
import toothmark.units.Say;

/** Sparks stray while the speed changes. */
final class SpeedPredictionCheck implements Check {

  @Override
  public String id() {
    return "speed-prediction";
  }

  @Override
  public Outcome examine(Symptoms symptoms) {
    Optional<GapFit> fit = symptoms.seen().timing().gap();
    if (fit.isEmpty()) {
      return Outcome.cannotRun(TimingShapes.NO_GAP);
    }
    return fit.get()
        .foretoldDegrees()
        .filter(m -> Math.abs(m.value()) >= TimingShapes.MATTERS_DEGREES)
        .map(m -> Outcome.fires(draft(m, fit.get())))
        .orElseGet(Outcome::quiet);
  }

  private Draft draft(Measured shift, GapFit fit) {
    return Draft.of(id(), Severity.WATCH, "Sparks stray while the speed changes.")
        .probability(0.8)
        .saw(
            "The advance gap follows the change of speed just before the spark: by up to "
                + Say.degrees(shift)
                + ".")
        .saw(
            Words.count(fit.fitted(), "spark", "sparks")
                + " between "
                + Say.rpm(fit.fromRpm())
                + " and "
                + Say.rpm(fit.toRpm())
                + " say so.")
        .ratherThan(
            "A fixed angle and a fixed delay do not depend on acceleration; they are measured with"
                + " this held apart.")
        .next(
            "Set the controller to time sparks from a tooth nearer to the spark, or to a quicker speed measure.")
        .caution("Judge the basic timing at steady speed only.")
        .picture(Picture.ADVANCE);
  }
}
