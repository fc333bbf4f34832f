package toothmark.simulator;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import toothmark.simulator.Controller.Timing;
import toothmark.simulator.Spark.Angles;
import toothmark.simulator.Spark.Outcome;

/**
 * When the controller makes its sparks, seen from the wheel as it is told that the wheel sits.
 *
 * <p>Each firing event has its TDC at a whole number of firing intervals. The controller sees the
 * wheel only, so it fires where TDC would be if tooth 1 were at the nominal place; the delay comes
 * on top. Commanded advance is read from the map at the speed 90 degrees before TDC.
 */
final class SparkScheduler {
  private static final double MAP_READ_DEGREES = 90.0;
  private static final double SPEED_WINDOW_DEGREES = 10.0;
  private static final double SLOWEST_RPM = 30.0;
  private static final double SYNC_DEGREES = 400.0;
  private static final double REPEAT_PAUSE_SECONDS = 0.2e-3;
  private static final double LOOK_BACK_SECONDS = 0.3;
  private static final double MARGIN_SECONDS = 0.01;

  private final Scenario scenario;
  private final CrankMotion crank;
  private final CrankMotion wheel;
  private final FiredEvents events;
  private final Randomness random;
  private final double interval;
  private final int coils;

  SparkScheduler(Scenario scenario, CrankDynamics.Result crank, CrankMotion wheelInCrankDegrees) {
    this.scenario = scenario;
    this.crank = crank.motion();
    wheel = wheelInCrankDegrees;
    events = crank.events();
    random = Randomness.of(scenario.seed(), "sparks");
    interval = scenario.engine().firingIntervalDegrees();
    coils = scenario.coils().count(scenario.engine());
    if (scenario.coils().layout() == Coils.Layout.WASTED_SPARK
        && scenario.engine().cylinders() % 2 != 0) {
      throw new IllegalArgumentException("wasted spark needs an even number of cylinders");
    }
  }

  /** All sparks, also a few from before and after the capture. */
  List<Spark> schedule() {
    List<Spark> sparks = new ArrayList<>();
    double begin = crank.startSeconds();
    double first = crank.angleAt(begin) + (scenario.speed().startRpm() > 0 ? 100.0 : SYNC_DEGREES);
    double end = scenario.recorder().durationSeconds() + MARGIN_SECONDS;
    double notBefore = begin;
    for (long event = (long) Math.ceil(first / interval) + 1; ; event++) {
      OptionalDouble reading = wheelTime(event, MAP_READ_DEGREES, notBefore);
      if (reading.isEmpty() || reading.getAsDouble() > end) {
        return sparks;
      }
      notBefore = reading.getAsDouble();
      double rpm = crank.rpmAt(notBefore);
      if (rpm > SLOWEST_RPM) {
        spark(event, rpm, notBefore).ifPresent(spark -> addWithRepeat(spark, sparks));
      }
    }
  }

  /** Adds a spark, and now and then the second one that a double trigger makes. */
  private void addWithRepeat(Spark spark, List<Spark> sparks) {
    sparks.add(spark);
    double share = scenario.coils().reliability().repeatShare();
    if (share > 0.0 && random.chance(share) && spark.fired()) {
      double charge = random.uniform(0.3e-3, 0.8e-3);
      double t = spark.seconds() + REPEAT_PAUSE_SECONDS + charge;
      if (t < crank.endSeconds()) {
        double commanded = spark.angles().commandedDegrees();
        Angles angles = new Angles(commanded, ownAdvance(spark.coil(), t), crank.rpmAt(t));
        sparks.add(new Spark(t, spark.coil(), Outcome.REPEATED, angles, charge));
      }
    }
  }

  /** When the wheel is this far before the TDC of an event, as the controller believes. */
  private OptionalDouble wheelTime(long event, double advanceDegrees, double notBefore) {
    double nominal = scenario.controller().nominalTooth1BtdcDegrees();
    return wheel.timeOf(nominal + event * interval - advanceDegrees, notBefore);
  }

  private Optional<Spark> spark(long event, double mapRpm, double notBefore) {
    double commanded = scenario.controller().advance().degreesAt(mapRpm);
    Limiter limiter = scenario.controller().limiter();
    boolean retarded = limiter.action() == Limiter.Action.RETARD && mapRpm > limiter.rpm();
    double advance = commanded - (retarded ? limiter.retardDegrees() : 0.0);
    Timing timing = scenario.controller().timing();
    double aim = advance + timing.scatterDegrees() * random.gaussian();
    double late = timing.delaySeconds() + timing.scatterSeconds() * random.gaussian();
    double dwellNoise = random.gaussian();
    boolean missed = random.chance(scenario.coils().reliability().missShare());
    OptionalDouble ideal = predicted(event, aim, notBefore);
    if (ideal.isEmpty() || ideal.getAsDouble() + late > crank.endSeconds()) {
      return Optional.empty();
    }
    double t = ideal.getAsDouble() + late;
    int output = (int) Math.floorMod(event, (long) coils);
    int coil = scenario.coils().coilOfOutput(output);
    double rpm = crank.rpmAt(t);
    Angles angles = new Angles(commanded, ownAdvance(coil, t), rpm);
    Outcome outcome = outcome(event, coil, missed);
    return Optional.of(new Spark(t, coil, outcome, angles, dwell(rpm, dwellNoise)));
  }

  private OptionalDouble predicted(long event, double aim, double notBefore) {
    double ahead = scenario.controller().timing().predictDegrees();
    if (ahead <= 0.0) {
      return wheelTime(event, aim, notBefore);
    }
    double from = notBefore - LOOK_BACK_SECONDS;
    OptionalDouble start = wheelTime(event, aim + ahead, from);
    OptionalDouble earlier = wheelTime(event, aim + ahead + SPEED_WINDOW_DEGREES, from);
    if (start.isEmpty() || earlier.isEmpty()) {
      return OptionalDouble.empty();
    }
    double perDegree = (start.getAsDouble() - earlier.getAsDouble()) / SPEED_WINDOW_DEGREES;
    return OptionalDouble.of(start.getAsDouble() + ahead * perDegree);
  }

  private Outcome outcome(long event, int coil, boolean missed) {
    if (scenario.coils().silent().contains(coil)) {
      return Outcome.COIL_SILENT;
    }
    if (events.isCut(event)) {
      return Outcome.CUT_BY_LIMITER;
    }
    return missed ? Outcome.MISSED : Outcome.FIRED;
  }

  /** Degrees before the nearest TDC of the coil's own cylinders. */
  private double ownAdvance(int coil, double seconds) {
    double period = coils * interval;
    double after = crank.angleAt(seconds) - coil * interval;
    return -(after - period * Math.rint(after / period));
  }

  private double dwell(double rpm, double noise) {
    Controller.Dwell dwell = scenario.controller().dwell();
    double most = dwell.greatestShare() * coils * interval / (6.0 * rpm);
    return Math.min(most, dwell.seconds() + dwell.scatterSeconds() * noise);
  }
}
