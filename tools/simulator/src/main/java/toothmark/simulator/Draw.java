package toothmark.simulator;

import java.util.ArrayList;
import java.util.List;
import toothmark.simulator.Controller.AdvanceMap;
import toothmark.simulator.Fault.Setting;
import toothmark.simulator.Sensor.Edge;
import toothmark.simulator.SpeedProfile.Drive;
import toothmark.simulator.SpeedProfile.Phase;

/** One draw of a healthy engine and its recorder. */
final class Draw {
  private static final List<String> PATTERNS =
      List.of("36-1", "36-1", "36-1", "60-2", "60-2", "60-2", "24-1", "24-2", "36-2", "12-1");

  /** Those whose teeth show some ten swings a turn. */
  private static final List<String> FINE_PATTERNS = List.of("36-1", "60-2", "24-1", "36-2");

  private static final List<String> RARE_PATTERNS =
      List.of("36-2-2-2", "12+1", "32-2", "48-1", "60-1", "18-1", "24+1", "8-1");
  private static final double[] SAMPLE_RATES = {
    50e3, 80e3, 100e3, 125e3, 160e3, 200e3, 250e3, 400e3
  };
  private static final double SAMPLES_A_TOOTH = 14.0;
  private static final int SCOPE_COILS = 2;

  private final Randomness random;
  private boolean needsWave;
  private boolean needsVolts;
  private boolean needsHall;
  private boolean needsCoils;
  private boolean needsUsualWheel;
  private boolean needsFineWheel;

  Draw(long seed) {
    random = Randomness.of(seed, "draw");
  }

  /** Keeps to engines and recorders in which these faults can be. */
  Draw forFaults(List<Fault> faults) {
    for (Fault fault : faults) {
      switch (fault) {
        case SENSOR_POLARITY_REVERSED,
            WEAK_SIGNAL,
            SENSOR_CLIPPED,
            PERIODIC_INTERFERENCE,
            GAP_NOISE,
            PROBE_FACTOR,
            GROUND_SHIFT,
            SENSOR_BRACKET,
            CRANK_TWIST,
            CAPTURE_TOO_SLOW -> {
          needsWave = true;
          needsVolts = true;
        }
        case AC_COUPLED -> {
          needsHall = true;
          needsVolts = true;
        }
        // a coil does not resolve half a pitch of a fine wheel
        case BOLT_HEAD -> needsHall = true;
        case WRONG_TIMING_EDGE -> {
          needsHall = true;
          needsUsualWheel = true;
        }
        default -> {
          // at home anywhere
        }
      }
      needsCoils |= fault.group() == Fault.Group.COILS || fault.group() == Fault.Group.TIMING;
      needsCoils |=
          fault == Fault.GROUND_SHIFT
              || fault == Fault.DOUBLE_TRIGGER
              || fault == Fault.WRONG_TIMING_EDGE;
      needsCoils |= fault == Fault.WHEEL_SLIP || fault == Fault.NO_CRANK_SIGNAL;
      needsCoils |= fault == Fault.IGNITION_INTERFERENCE || fault == Fault.PREDICTION;
      needsFineWheel |= fault == Fault.SENSOR_BRACKET || fault == Fault.CRANK_TWIST;
      needsUsualWheel |= fault.group() == Fault.Group.WHEEL || fault == Fault.BOLT_HEAD;
    }
    return this;
  }

  Scenario scenario(String name, Setting setting) {
    Engine engine = engine();
    Coils.Layout layout = layout(engine);
    String pattern = pattern();
    double tooth1 = Math.rint(random.uniform(50.0, 130.0));
    Sensor sensor = sensor();
    Speed speed = speed(setting);
    Recorder recorder = recorder(sensor, speed, Pattern.of(pattern));
    Scenario scenario =
        Scenario.healthy(name, (long) (random.uniform() * 0x1.0p48))
            .withEngine(engine)
            .withCoils(Coils.WASTED_SPARK.withLayout(layout))
            .withWheel(wheel(pattern, tooth1))
            .withSensor(sensor)
            .withSpeed(speed.profile())
            .withController(controller(tooth1))
            .withRecorder(recorder);
    if (random.chance(0.5)) {
      scenario = scenario.withToldPattern(pattern);
    }
    if (!scenario.controller().advance().isFixed()) {
      scenario = scenario.withLog(log());
    }
    return hookedUp(scenario);
  }

  private Engine engine() {
    double kind = random.uniform();
    Engine usual = Engine.ofCylinders(kind < 0.65 ? 4 : kind < 0.85 ? 6 : 8);
    double inertia = usual.inertiaKgM2() * random.uniform(0.8, 1.4);
    double ratio = random.uniform(8.5, 11.5);
    double litres = usual.displacementLitres() * random.uniform(0.8, 1.3);
    return new Engine(usual.firingOrder(), litres, ratio, inertia, 12.0 * litres);
  }

  private Coils.Layout layout(Engine engine) {
    double kind = random.uniform();
    if (kind < 0.75 || needsCoils) {
      return Coils.Layout.WASTED_SPARK;
    }
    return kind < 0.9 ? Coils.Layout.ONE_PER_CYLINDER : Coils.Layout.DISTRIBUTOR;
  }

  private String pattern() {
    boolean rare = random.chance(0.2) && !needsUsualWheel && !needsFineWheel;
    List<String> from = rare ? RARE_PATTERNS : needsFineWheel ? FINE_PATTERNS : PATTERNS;
    return from.get(random.below(from.size()));
  }

  private Wheel wheel(String pattern, double tooth1) {
    Wheel.Errors errors =
        new Wheel.Errors(
            random.uniform(0.01, 0.05), random.uniform(0.0, 0.04), random.uniform(0.0, 360.0));
    double diameter = Math.rint(random.uniform(110.0, 190.0));
    Wheel.Mount mount = new Wheel.Mount(Wheel.Shaft.CRANK, tooth1, diameter);
    return Wheel.of(pattern, tooth1).withMount(mount).withErrors(errors);
  }

  private Sensor sensor() {
    double kind = random.uniform();
    double gap = random.uniform(0.5, 1.1);
    double peak = random.logUniform(2.0, 6.0);
    double lag = random.uniform(4e-6, 25e-6);
    double share = random.uniform(0.38, 0.6);
    boolean falling = random.chance(0.75);
    if (needsWave || (kind < 0.65 && !needsHall)) {
      return new Sensor.VariableReluctance(Sensor.Polarity.NORMAL, gap, peak, lag);
    }
    Edge edge = falling ? Edge.FALLING : Edge.RISING;
    return new Sensor.Hall(edge, edge, share, 0.01, random.uniform(0.03, 0.08));
  }

  private record Speed(SpeedProfile profile, double seconds, double topRpm) {}

  private Speed speed(Setting setting) {
    double kind = random.uniform();
    return switch (setting) {
      case CRANKING -> kind < 0.7 ? cranking() : start();
      case START -> start();
      case CALM -> steady(random.uniform(700.0, 1200.0));
      case RUNNING -> kind < 0.6 ? steady(random.logUniform(750.0, 4000.0)) : sweep();
      case SWEEP -> sweep();
      case ANY -> {
        if (kind < 0.3) {
          yield steady(random.uniform(700.0, 1200.0));
        } else if (kind < 0.45) {
          yield steady(random.logUniform(1200.0, 5000.0));
        } else if (kind < 0.7) {
          yield sweep();
        } else if (kind < 0.8) {
          yield snap();
        }
        yield kind < 0.9 ? start() : cranking();
      }
    };
  }

  private Speed steady(double rpm) {
    return new Speed(SpeedProfile.steady(rpm), random.uniform(1.4, 2.2), 1.1 * rpm);
  }

  private Speed cranking() {
    double rpm = random.uniform(185.0, 270.0);
    return new Speed(SpeedProfile.cranking(rpm), random.uniform(2.6, 3.6), 500.0);
  }

  private Speed start() {
    double rpm = random.uniform(190.0, 270.0);
    double cranking = random.uniform(0.9, 1.5);
    double idle = random.uniform(800.0, 1100.0);
    SpeedProfile profile = SpeedProfile.start(rpm, cranking, idle);
    return new Speed(profile, cranking + random.uniform(1.0, 1.6), 2.0 * idle);
  }

  private Speed sweep() {
    double low = random.uniform(850.0, 1300.0);
    double high = random.uniform(3000.0, 6500.0);
    double seconds = random.uniform(1.5, 2.2);
    double up = 0.8 * seconds * random.uniform(0.6, 1.0);
    boolean falling = random.chance(0.25);
    SpeedProfile profile =
        falling
            ? SpeedProfile.sweep(high, low, up)
            : SpeedProfile.sweep(low, high, up).then(0.5 * (low + high), seconds - up);
    return new Speed(profile, seconds, 1.1 * high);
  }

  private Speed snap() {
    double idle = random.uniform(800.0, 1100.0);
    double peak = random.uniform(3500.0, 6000.0);
    double wait = random.uniform(0.2, 0.4);
    double up = peak / random.uniform(5000.0, 10000.0);
    SpeedProfile profile =
        new SpeedProfile(
            idle,
            List.of(
                new Phase(Drive.FIRING, wait, idle, 0.35),
                new Phase(Drive.FIRING, up, peak, 0.95),
                new Phase(Drive.FIRING, 1.2, idle, 0.35)));
    return new Speed(profile, wait + up + 0.9, 1.15 * peak);
  }

  private Recorder recorder(Sensor sensor, Speed speed, Pattern pattern) {
    double kind = random.uniform();
    double start = random.chance(0.4) ? -0.1 * (1 + random.below(5)) : 0.0;
    double noise = random.logUniform(0.003, 0.015);
    int bits = Math.max(8 + 2 * random.below(4), speed.profile().startRpm() > 0.0 ? 8 : 10);
    double teethPerSecond = speed.topRpm() / 60.0 * pattern.slots();
    List<Double> enough = new ArrayList<>();
    for (double rate : SAMPLE_RATES) {
      if (rate >= SAMPLES_A_TOOTH * teethPerSecond) {
        enough.add(rate);
      }
    }
    double rate = enough.isEmpty() ? 400e3 : enough.get(random.below(Math.min(5, enough.size())));
    Recorder.Front front = new Recorder.Front(bits, 0.0, noise, 0.0, 0.0);
    Recorder scope = new Recorder(Recorder.Kind.OSCILLOSCOPE, rate, speed.seconds(), start, front);
    boolean plain = needsVolts || kind < 0.7;
    if (plain || (needsCoils && sensor instanceof Sensor.VariableReluctance)) {
      return scope;
    }
    boolean levels = sensor instanceof Sensor.Hall && (kind < 0.9 || needsCoils);
    Recorder.Kind other = levels ? Recorder.Kind.LOGIC_ANALYSER : Recorder.Kind.EDGE_LOGGER;
    return new Recorder(other, 1e6, speed.seconds(), levels ? start : 0.0, front);
  }

  private Controller controller(double tooth1) {
    double base = Math.rint(random.uniform(6.0, 14.0));
    double top = Math.rint(random.uniform(24.0, 34.0));
    boolean fixed = random.chance(0.6);
    AdvanceMap map = fixed ? AdvanceMap.fixed(base) : new AdvanceMap(base, 900.0, 3600.0, top);
    Controller.Dwell dwell = new Controller.Dwell(random.uniform(2.4e-3, 3.6e-3), 8e-6, 0.8);
    return Controller.fixed(tooth1, base).withAdvance(map).withDwell(dwell);
  }

  private ControllerLog log() {
    double rate = 10.0 * (1 + random.below(4));
    double offset = Math.rint(random.uniform(0.0, 9000.0)) / 100.0;
    return new ControllerLog(rate, offset, random.uniform(-50e-6, 50e-6), 1.0 / rate, 20.0);
  }

  /** An oscilloscope has room for two coils, a logic analyser for all. */
  private Scenario hookedUp(Scenario scenario) {
    int coils = scenario.coils().count(scenario.engine());
    int room = scenario.recorder().kind() == Recorder.Kind.OSCILLOSCOPE ? SCOPE_COILS : coils;
    List<Integer> recorded = new ArrayList<>();
    for (int i = 0; i < Math.min(coils, room); i++) {
      recorded.add(i);
    }
    boolean tdc = needsCoils || random.chance(0.85);
    Hookup.Tdc mark = tdc ? Hookup.Tdc.RECORDED : Hookup.Tdc.ABSENT;
    return scenario.withHookup(new Hookup(recorded, mark));
  }
}
