package toothmark.simulator;

import java.util.List;
import java.util.Locale;

/**
 * What can be wrong, or look wrong, each with a random but clear degree of it.
 *
 * <p>A fault changes the scenario's parts, so that its effects follow from the machine, and adds
 * its id to the truth. The last few are put in by name only, never drawn.
 */
public enum Fault {
  /** The coil sensor's wires are the wrong way round. */
  SENSOR_POLARITY_REVERSED(Group.SENSOR, Setting.ANY, SensorFaults::reversed),
  /** So large a clearance that hardly a signal is left while cranking. */
  WEAK_SIGNAL(Group.SENSOR, Setting.CRANKING, SensorFaults::weak),
  /** The recorder's range is too small. */
  SENSOR_CLIPPED(Group.RECORDER, Setting.ANY, SensorFaults::clipped),
  /** The wheel runs out of true. */
  WHEEL_RUN_OUT(Group.WHEEL, Setting.ANY, WheelFaults::runOut),
  /** A tooth is bent, short or broken off. */
  DAMAGED_TOOTH(Group.WHEEL, Setting.ANY, WheelFaults::damagedTooth),
  /** The wheel turns on its hub, at once or little by little. */
  WHEEL_SLIP(Group.WHEEL, Setting.RUNNING, WheelFaults::slip),
  /** The job sheet names another wheel. */
  WHEEL_PATTERN_MISMATCH(Group.WHEEL, Setting.ANY, WheelFaults::wrongPattern),
  /** The controller times the unsteady edge of a switching sensor. */
  WRONG_TIMING_EDGE(Group.SENSOR, Setting.ANY, SensorFaults::wrongEdge),
  /** Each spark rings into the sensor's wires. */
  IGNITION_INTERFERENCE(Group.NOISE, Setting.RUNNING, SensorFaults::ignitionInterference),
  /** Spikes at random times. */
  RANDOM_NOISE_PICKUP(Group.NOISE, Setting.RUNNING, SensorFaults::spikes),
  /** Hum of the mains or of the generator. */
  PERIODIC_INTERFERENCE(Group.NOISE, Setting.CALM, SensorFaults::hum),
  /** The wire opens now and then. */
  INTERMITTENT_CONNECTION(Group.NOISE, Setting.ANY, SensorFaults::intermittent),
  /** Nothing comes from the sensor. */
  NO_CRANK_SIGNAL(Group.ALONE, Setting.ANY, SensorFaults::silent),
  /** Too few samples a tooth. */
  CAPTURE_TOO_SLOW(Group.ALONE, Setting.SWEEP, RecorderFaults::tooSlow),
  /** Hardly one turn of the wheel. */
  CAPTURE_TOO_SHORT(Group.ALONE, Setting.CALM, RecorderFaults::tooShort),
  /** Tooth 1 is not where the controller was told. */
  WHEEL_MISALIGNED(Group.TIMING, Setting.ANY, TimingFaults::misaligned),
  /** Every spark is late by the same time. */
  TIMING_DELAY(Group.TIMING, Setting.SWEEP, TimingFaults::delay),
  /** Sparks scatter. */
  TIMING_SCATTER(Group.TIMING, Setting.RUNNING, TimingFaults::scatter),
  /** Two coils are on each other's output. */
  COILS_SWAPPED(Group.COILS, Setting.RUNNING, TimingFaults::swapped),
  /** A coil never fires. */
  COIL_SILENT(Group.COILS, Setting.RUNNING, TimingFaults::silentCoil),
  /** Sparks are missing at random. */
  COIL_MISSES(Group.COILS, Setting.RUNNING, TimingFaults::misses),
  /** Coils are charged too briefly. */
  DWELL_SHORT(Group.COILS, Setting.RUNNING, TimingFaults::shortDwell),
  /** Coils are charged too long. */
  DWELL_LONG(Group.COILS, Setting.CALM, TimingFaults::longDwell),
  /** A limiter cuts sparks; no fault. */
  SPARK_CUT_LIMITER(Group.TIMING, Setting.SWEEP, TimingFaults::sparkCut),
  /** A limiter pulls sparks back; no fault. */
  TIMING_RETARD_LIMITER(Group.TIMING, Setting.SWEEP, TimingFaults::retard),

  /** The starter's brushes crackle. */
  STARTER_NOISE(Group.BESIDE, Setting.START, SensorFaults::starterNoise),
  /** The recorder is AC coupled. */
  AC_COUPLED(Group.BESIDE, Setting.ANY, RecorderFaults::acCoupled),
  /** A bolt head between the teeth. */
  BOLT_HEAD(Group.BESIDE, Setting.ANY, WheelFaults::boltHead),
  /** Noise that crosses zero in the gap. */
  GAP_NOISE(Group.BESIDE, Setting.CRANKING, SensorFaults::gapNoise),
  /** The sensor's ground carries the current of the coils. */
  GROUND_SHIFT(Group.BESIDE, Setting.SWEEP, SensorFaults::groundShift),
  /** The sensor's bracket swings. */
  SENSOR_BRACKET(Group.BESIDE, Setting.SWEEP, SensorFaults::bracket),
  /** The crank twists between the wheel and the flywheel. */
  CRANK_TWIST(Group.BESIDE, Setting.SWEEP, SensorFaults::twist),
  /** Some sparks come twice. */
  DOUBLE_TRIGGER(Group.BESIDE, Setting.RUNNING, TimingFaults::doubleTrigger),
  /** A probe's factor is wrong. */
  PROBE_FACTOR(Group.BESIDE, Setting.ANY, RecorderFaults::probeFactor),
  /** The controller predicts angles from the last tooth; scatter while accelerating only. */
  PREDICTION(Group.BESIDE, Setting.SWEEP, TimingFaults::prediction);

  /** Faults of one group are not put together. */
  enum Group {
    SENSOR,
    WHEEL,
    NOISE,
    TIMING,
    COILS,
    RECORDER,
    ALONE,
    BESIDE
  }

  /** In what kind of capture a fault shows itself. */
  enum Setting {
    /** In any. */
    ANY,
    /** On the starter. */
    CRANKING,
    /** On the starter, then running. */
    START,
    /** With the engine running, at one speed or several. */
    RUNNING,
    /** At one low speed. */
    CALM,
    /** Over a wide range of speed. */
    SWEEP
  }

  private interface Change {
    Scenario apply(Scenario scenario, Randomness random);
  }

  private final Group group;
  private final Setting setting;
  private final Change change;

  Fault(Group group, Setting setting, Change change) {
    this.group = group;
    this.setting = setting;
    this.change = change;
  }

  Group group() {
    return group;
  }

  Setting setting() {
    return setting;
  }

  /**
   * Id of the finding that names this fault.
   *
   * @return lower-case words joined by hyphens
   */
  public String finding() {
    return switch (this) {
      case BOLT_HEAD -> "extra-wheel-feature";
      case DOUBLE_TRIGGER -> "double-sparks";
      case PREDICTION -> "speed-prediction";
      default -> words();
    };
  }

  /**
   * Whether random engines have it.
   *
   * @return false for those put in by name only
   */
  public boolean drawn() {
    return group != Group.BESIDE;
  }

  /** The constant's name as lower-case words joined by hyphens. */
  String words() {
    return name().toLowerCase(Locale.ROOT).replace('_', '-');
  }

  /**
   * Findings that the same cause makes true beside its own, so that they are no false alarm.
   *
   * @return ids
   */
  public List<String> fairFindings() {
    return switch (this) {
      case WHEEL_SLIP -> List.of("wheel-misaligned", "timing-scatter");
      case WRONG_TIMING_EDGE, SENSOR_POLARITY_REVERSED -> List.of("wheel-misaligned");
      case WEAK_SIGNAL -> List.of("intermittent-connection");
      case CAPTURE_TOO_SLOW -> List.of("timing-scatter");
      case TIMING_SCATTER -> List.of("wheel-misaligned");
      case NO_CRANK_SIGNAL -> List.of("intermittent-connection");
      case STARTER_NOISE, GAP_NOISE ->
          List.of("starter-noise", "gap-noise", "random-noise-pickup", "weak-signal");
      case BOLT_HEAD -> List.of("extra-wheel-feature", "damaged-tooth", "wheel-pattern-mismatch");
      case DOUBLE_TRIGGER -> List.of("double-sparks");
      case PREDICTION -> List.of("speed-prediction", "timing-scatter");
      case PROBE_FACTOR -> List.of("weak-signal");
      default -> List.of();
    };
  }

  /**
   * Puts the fault into a scenario.
   *
   * @param scenario healthy, or with faults already
   * @param seed decides its degree
   * @return a changed copy, with the fault's id in its truth
   */
  public Scenario applyTo(Scenario scenario, long seed) {
    return change
        .apply(scenario, Randomness.of(seed, words()))
        .withFairFindings(fairFindings())
        .withFault(finding());
  }
}
