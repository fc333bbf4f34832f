package toothmark.findings;

import toothmark.receiver.SyncLoss;
import toothmark.rotation.SpeedTrace;
import toothmark.units.Say;

/** The starter turns the engine too slowly. */
final class SlowCrankingCheck extends CrankCheck {

  /** A warm sound engine cranks at 150 to 250 rev/min (common practice, no source). */
  private static final double WATCH_RPM = 120;

  /** Cranking must last this many turns for its mean to mean anything. */
  private static final double FEWEST_TURNS = 2;

  /** Before a standstill the crank runs down, degrees. */
  private static final double RUN_DOWN = 720;

  @Override
  public String id() {
    return "slow-cranking";
  }

  @Override
  Outcome examine(Observations seen, CrankSymptoms crank) {
    Turns turns = crank.turns();
    double seconds = 0;
    double degrees = 0;
    for (int i = 0; i + 1 < turns.teeth(); i++) {
      double rpm = turns.rpmAt(turns.time(i));
      if (rpm < SyncLoss.CRANKING_BELOW_RPM && rpm > 40 && !turns.runsDown(i, RUN_DOWN)) {
        seconds += turns.time(i + 1) - turns.time(i);
        degrees += turns.angle(i + 1) - turns.angle(i);
      }
    }
    if (degrees < FEWEST_TURNS * 360) {
      return Outcome.cannotRun("no-turns-cranked");
    }
    double mean = degrees / seconds / 6;
    if (mean >= WATCH_RPM || crank.stalls(seen)) {
      return Outcome.quiet();
    }
    SpeedTrace speed = turns.crank().speed();
    return Outcome.fires(
        Draft.of(id(), Severity.WATCH)
            .probability(0.8)
            .saw("speed", Say.rpm(mean), Say.rpm(speed.minRpm()))
            .ratherThan("weak-sensor")
            .caution("starter")
            .picture(Picture.SPEED));
  }
}
