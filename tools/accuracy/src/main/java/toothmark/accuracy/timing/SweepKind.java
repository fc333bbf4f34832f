package toothmark.accuracy.timing;

import java.util.List;
import toothmark.accuracy.CaseName;
import toothmark.accuracy.Dice;
import toothmark.simulator.Coils;
import toothmark.simulator.Controller;
import toothmark.simulator.Controller.AdvanceMap;
import toothmark.simulator.Controller.Timing;
import toothmark.simulator.ControllerLog;
import toothmark.simulator.Limiter;
import toothmark.simulator.Recorder;
import toothmark.simulator.Scenario;
import toothmark.simulator.Sensor;
import toothmark.simulator.SpeedProfile;
import toothmark.simulator.SpeedProfile.Drive;
import toothmark.simulator.SpeedProfile.Phase;
import toothmark.simulator.Wheel;

/** What kind of sweep is made. All have an offset of up to 6° and, every second one, a delay. */
enum SweepKind {
  /** Coil sensor at 200 000 samples a second, fixed advance, a good controller. */
  CLEAN("fixed advance, 200 kSa/s", 300),
  /** The same with sparks that scatter by 0.1 to 0.4°, some missing and some repeated. */
  ROUGH("scatter, misses, repeats", 250),
  /** Advance from a map, known from the controller's log alone. */
  LOGGED("advance from a log", 250),
  /** Switching sensor on a logic analyser. */
  HALL("switching sensor, levels at 1 MSa/s", 200),
  /** The controller foresees the crank from the last tooth. */
  FORESEEING("foresight from the last tooth", 60),
  /** Into a limiter that cuts sparks. */
  CUT("into a spark cut", 300),
  /** Into a limiter that pulls sparks back. */
  RETARDED("into a retard", 300),
  /** One speed. */
  HELD("one speed", 60);

  private static final double SECONDS = 3.0;
  private static final double SAMPLES_HZ = 200e3;

  private final String words;
  private final int captures;

  SweepKind(String words, int captures) {
    this.words = words;
    this.captures = captures;
  }

  String words() {
    return words;
  }

  /** At full size. */
  int captures() {
    return captures;
  }

  /** Whether it is one of the thousand whose intervals are counted. */
  boolean counts() {
    return ordinal() <= HALL.ordinal();
  }

  String setting() {
    return name().toLowerCase(java.util.Locale.ROOT);
  }

  static SweepKind of(CaseName name) {
    return valueOf(name.setting().toUpperCase(java.util.Locale.ROOT));
  }

  Scenario scenario(CaseName name) {
    Dice dice = Dice.of(name, "scenario");
    double tooth1 = Math.rint(dice.uniform(60, 120));
    double delay = name.number() % 2 == 0 ? 0.0 : dice.uniform(10e-6, 200e-6);
    Controller controller =
        Controller.fixed(tooth1 - dice.uniform(-6, 6), 10.0)
            .withTiming(Timing.USUAL.withDelaySeconds(delay));
    Wheel wheel =
        Wheel.of(dice.pick(List.of("36-1", "60-2")), tooth1)
            .withErrors(
                new Wheel.Errors(
                    dice.uniform(0.01, 0.04), dice.uniform(0.0, 0.02), dice.uniform(0, 360)));
    Scenario scenario =
        Scenario.healthy(name.fileName(), name.seed())
            .withWheel(wheel)
            .withToldPattern(wheel.pattern().name())
            .withSensor(coil(dice))
            .withSpeed(upAndDown(950, 5800, dice))
            .withController(controller)
            .withRecorder(Recorder.oscilloscope(SAMPLES_HZ, SECONDS));
    return changed(scenario, dice);
  }

  private static Sensor coil(Dice dice) {
    return new Sensor.VariableReluctance(
        Sensor.Polarity.NORMAL,
        dice.uniform(0.6, 1.0),
        dice.logUniform(2, 6),
        dice.uniform(4e-6, 25e-6));
  }

  private Scenario changed(Scenario scenario, Dice dice) {
    Controller controller = scenario.controller();
    Timing timing = controller.timing();
    return switch (this) {
      case CLEAN -> scenario;
      case ROUGH ->
          scenario
              .withController(
                  controller.withTiming(
                      new Timing(timing.delaySeconds(), 3e-6, dice.uniform(0.1, 0.4), 0.0)))
              .withCoils(Coils.WASTED_SPARK.withMissShare(0.03).withRepeatShare(0.02));
      case LOGGED ->
          scenario
              .withController(controller.withAdvance(new AdvanceMap(10.0, 900.0, 3600.0, 30.0)))
              .withLog(
                  new ControllerLog(
                      10.0 * dice.between(1, 4),
                      dice.uniform(0, 90),
                      dice.uniform(-50e-6, 50e-6),
                      0.05,
                      20.0));
      case HALL ->
          scenario
              .withSensor(Sensor.Hall.USUAL)
              .withRecorder(
                  new Recorder(
                      Recorder.Kind.LOGIC_ANALYSER, 1e6, SECONDS, 0.0, Recorder.Front.USUAL));
      case FORESEEING ->
          scenario.withController(
              controller.withTiming(
                  new Timing(timing.delaySeconds(), 1.5e-6, 0.02, dice.uniform(40, 75))));
      case CUT -> limited(scenario, Limiter.cuttingSparksAbove(dice.uniform(4500, 5500)), dice);
      case RETARDED ->
          limited(
              scenario,
              Limiter.retardingAbove(dice.uniform(4500, 5500), dice.uniform(10, 25)),
              dice);
      case HELD -> scenario.withSpeed(SpeedProfile.steady(dice.logUniform(900, 4000)));
    };
  }

  private static Scenario limited(Scenario scenario, Limiter limiter, Dice dice) {
    return scenario
        .withController(scenario.controller().withLimiter(limiter))
        .withSpeed(upAndDown(1200, 1.06 * limiter.rpm(), dice));
  }

  private static SpeedProfile upAndDown(double low, double high, Dice dice) {
    double up = dice.uniform(0.4, 0.6) * SECONDS;
    return new SpeedProfile(
        low,
        List.of(
            new Phase(Drive.FIRING, up, high, 0.9),
            new Phase(Drive.FIRING, SECONDS - up, low, 0.35)));
  }
}
