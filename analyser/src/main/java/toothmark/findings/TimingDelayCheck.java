package toothmark.findings;

import java.util.Optional;
import toothmark.receiver.SyncLoss;
import toothmark.timing.GapFit;
import toothmark.timing.GapShape;
import toothmark.units.Measured;
import toothmark.units.Say;

/** Sparks leave late by one time, so that the gap grows with speed. */
final class TimingDelayCheck implements Check {

  /** Worth a look, s: 0.12 degrees for each 1000 rev/min. */
  private static final double WATCH_SECONDS = 20e-6;

  /** To mend, s: 1.6 degrees at 6000 rev/min, near the 2 degrees that makers allow. */
  private static final double FAULT_SECONDS = 45e-6;

  /** Least change of the gap over the speeds of the capture, degrees. */
  private static final double CHANGE_DEGREES = 0.3;

  @Override
  public String id() {
    return "timing-delay";
  }

  @Override
  public Outcome examine(Symptoms symptoms) {
    Optional<GapFit> fit = symptoms.seen().timing().gap();
    if (fit.isEmpty()) {
      return Outcome.cannotRun("no-gap");
    }
    if (fit.get().delaySeconds().isEmpty()) {
      return Outcome.cannotRun(onTheStarter(fit) ? "starter-alone" : "one-speed");
    }
    GapFit g = fit.get();
    Measured delay = g.delaySeconds().get();
    double sure = delay.value() - Say.EXPAND * delay.standardUncertainty();
    double change = 6 * (g.toRpm() - g.fromRpm()) * delay.value();
    if (sure < WATCH_SECONDS || change < CHANGE_DEGREES || TimingShapes.named(g, GapShape.STEP)) {
      return Outcome.quiet();
    }
    return Outcome.fires(draft(g, delay, sure >= FAULT_SECONDS ? Severity.FAULT : Severity.WATCH));
  }

  /** Whether the starter alone turned the engine where gaps were read. */
  static boolean onTheStarter(Optional<GapFit> fit) {
    return fit.filter(f -> f.toRpm() < SyncLoss.CRANKING_BELOW_RPM).isPresent();
  }

  private Draft draft(GapFit g, Measured delay, Severity severity) {
    return Draft.of(id(), severity)
        .probability(severity == Severity.FAULT ? 0.97 : 0.8)
        .saw(
            "grows",
            Say.degrees(6000 * delay.value()),
            Say.rpm(g.fromRpm()),
            Say.rpm(g.toRpm()),
            Words.microseconds(delay))
        .ratherThan("wheel-wrong")
        .caution("angle-setting", "advance")
        .picture(Picture.ADVANCE);
  }
}
