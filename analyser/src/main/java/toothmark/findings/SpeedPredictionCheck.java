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
      return Outcome.cannotRun("no-gap");
    }
    return fit.get()
        .foretoldDegrees()
        .filter(m -> Math.abs(m.value()) >= TimingShapes.MATTERS_DEGREES)
        .map(m -> Outcome.fires(draft(m, fit.get())))
        .orElseGet(Outcome::quiet);
  }

  private Draft draft(Measured shift, GapFit fit) {
    return Draft.of(id(), Severity.WATCH)
        .probability(0.8)
        .saw("follows", Say.degrees(shift))
        .saw(fit.fitted(), "sparks-say-so", Say.rpm(fit.fromRpm()), Say.rpm(fit.toRpm()))
        .ratherThan("fixed-errors")
        .caution("steady-speed")
        .picture(Picture.ADVANCE);
  }
}
