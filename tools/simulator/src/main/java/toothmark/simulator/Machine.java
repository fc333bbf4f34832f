package toothmark.simulator;

import java.util.ArrayList;
import java.util.List;

/**
 * The moving parts of one run: crank, wheel, teeth that pass, sparks. Time zero is the first
 * sample.
 */
final class Machine {
  private final Scenario scenario;
  private final CrankDynamics.Result crank;
  private final CrankMotion wheel;
  private final CrankMotion shake;
  private final ToothLayout layout;
  private final double tooth1BtdcDegrees;
  private final double timedEarlyDegrees;
  private final List<Spark> sparks;

  Machine(Scenario scenario) {
    this.scenario = scenario;
    crank =
        new CrankDynamics(
                scenario.engine(),
                scenario.speed(),
                scenario.controller().limiter(),
                Randomness.of(scenario.seed(), "engine"))
            .run(scenario.recorder().durationSeconds());
    Wheel.Mount mount = scenario.wheel().mount();
    double ratio = mount.shaft().turnsPerCrankTurn();
    shake =
        crank
            .motion()
            .shaking(
                mount.vibration(),
                scenario.engine().firingIntervalDegrees(),
                Randomness.of(scenario.seed(), "vibration"));
    wheel =
        crank.motion().ofWheel(ratio, mount.tooth1BtdcDegrees(), mount.slip()).plus(shake, ratio);
    layout = new ToothLayout(scenario.wheel(), Randomness.of(scenario.seed(), "wheel"));
    timedEarlyDegrees =
        scenario.sensor() instanceof Sensor.Hall hall
            ? hall.timedEarlyDegrees(scenario.wheel().pattern().pitchDegrees())
            : 0.0;
    tooth1BtdcDegrees = mount.tooth1BtdcDegrees() + timedEarlyDegrees / ratio;
    CrankMotion timed =
        crank.motion().ofWheel(1.0, tooth1BtdcDegrees, mount.slip()).plus(shake, 1.0);
    sparks = new SparkScheduler(scenario, crank, timed).schedule();
  }

  CrankMotion crank() {
    return crank.motion();
  }

  CrankMotion wheel() {
    return wheel;
  }

  /** How far the sensor has moved against the wheel's turning, crank degrees. */
  CrankMotion shake() {
    return shake;
  }

  ToothLayout layout() {
    return layout;
  }

  /** For the edge that the controller times. */
  double tooth1BtdcDegrees() {
    return tooth1BtdcDegrees;
  }

  /** Every spark meant, a few outside the capture included. */
  List<Spark> sparks() {
    return sparks;
  }

  /** Every passing of a tooth's timed edge during the capture. */
  List<ToothPassing> teeth() {
    MarkRing ring = layout.timedRing(scenario.sensor());
    double turnDegrees = scenario.wheel().crankDegreesPerTurn();
    long firstTurn = (long) Math.floor((wheel.angleAt(0.0) + timedEarlyDegrees) / 360.0);
    List<ToothPassing> passings = new ArrayList<>();
    CrankMotion.Cursor cursor = crank.motion().cursor();
    wheel.passings(
        ring,
        0.0,
        scenario.recorder().durationSeconds(),
        (mark, t, direction) -> {
          long turn = Math.floorDiv(mark, (long) ring.size());
          int index = (int) (mark - turn * ring.size());
          cursor.moveTo(t);
          double degrees = cursor.angleDegrees() + tooth1BtdcDegrees - firstTurn * turnDegrees;
          boolean lost = layout.isBroken(index);
          passings.add(
              new ToothPassing(
                  t,
                  index + 1,
                  turn - firstTurn,
                  degrees,
                  lost ? ToothPassing.Outcome.LOST : ToothPassing.Outcome.SEEN));
        });
    return passings;
  }

  /** Least and greatest speed during the capture. */
  Truth.Speed speed() {
    CrankMotion.Cursor cursor = crank.motion().cursor();
    double least = Double.POSITIVE_INFINITY;
    double most = Double.NEGATIVE_INFINITY;
    int steps = (int) (scenario.recorder().durationSeconds() / 1e-4);
    for (int i = 0; i <= steps; i++) {
      cursor.moveTo(i * 1e-4);
      least = Math.min(least, cursor.degreesPerSecond());
      most = Math.max(most, cursor.degreesPerSecond());
    }
    return new Truth.Speed(least / 6.0, most / 6.0);
  }
}
