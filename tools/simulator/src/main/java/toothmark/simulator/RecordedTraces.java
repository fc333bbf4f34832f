package toothmark.simulator;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import toothmark.simulator.LevelChanges.Level;

/** What the recorder keeps of a machine's signals. */
final class RecordedTraces {
  private static final double TDC_PULSE_DEGREES = 3.0;
  private static final double LOGIC_RANGE_VOLTS = 10.0;
  private static final SwitchedVoltage HALL = new SwitchedVoltage(0.1, 4.9, 3e-6, 0.3e-6);
  private static final SwitchedVoltage LOGIC = new SwitchedVoltage(0.0, 5.0, 0.2e-6, 0.2e-6);

  private final Scenario scenario;
  private final Machine machine;
  private final Recorder recorder;
  private final Digitiser digitiser;

  RecordedTraces(Scenario scenario, Machine machine) {
    this.scenario = scenario;
    this.machine = machine;
    recorder = scenario.recorder();
    digitiser = new Digitiser(recorder);
  }

  /** The crank first, then the coils, then the TDC mark. */
  List<Trace> all() {
    List<Trace> traces = new ArrayList<>();
    traces.add(crank());
    if (recorder.kind() == Recorder.Kind.EDGE_LOGGER) {
      return traces;
    }
    for (int coil : scenario.hookup().coils()) {
      traces.add(coil(coil));
    }
    if (scenario.hookup().tdc() == Hookup.Tdc.RECORDED) {
      traces.add(logic(Trace.Role.TDC, "tdc", tdcLevels()));
    }
    return traces;
  }

  private Trace crank() {
    String name = "crank";
    double[] volts = crankVolts();
    Randomness noise = Randomness.of(scenario.seed(), "noise " + name);
    return switch (recorder.kind()) {
      case OSCILLOSCOPE ->
          new Trace.Analogue(Trace.Role.CRANK, name, digitiser.crank(volts, noise));
      case LOGIC_ANALYSER ->
          new Trace.Logic(Trace.Role.CRANK, name, conditioner().levels(volts, recorder));
      case EDGE_LOGGER ->
          new Trace.Edges(Trace.Role.CRANK, name, conditioner().timedEdges(volts, recorder));
    };
  }

  private Conditioner conditioner() {
    return Conditioner.of(scenario.sensor());
  }

  /** Greatest voltage on the sensor's wires, before the recorder. */
  double crankPeakVolts() {
    double peak = 0.0;
    for (double v : crankVolts()) {
      peak = Math.max(peak, Math.abs(v));
    }
    return peak;
  }

  /** The voltage on the sensor's wires, before the recorder. */
  private double[] crankVolts() {
    double[] volts = new double[recorder.samples()];
    double rest = 0.0;
    if (scenario.sensor() instanceof Sensor.VariableReluctance coil) {
      FluxProfile flux = new FluxProfile(scenario.wheel(), machine.layout(), coil.gapMm());
      double sign = coil.polarity() == Sensor.Polarity.NORMAL ? 1.0 : -1.0;
      double scale = sign * coil.peakVoltsPer1000Rpm() / 6000.0;
      flux.render(machine.wheel(), recorder.sampleRateHz(), scale, volts);
      moveAway(volts);
      Filters.lag(volts, recorder.sampleRateHz(), coil.lagSeconds());
    } else if (scenario.sensor() instanceof Sensor.Hall hall) {
      HallOutput output = new HallOutput(hall, scenario.wheel(), machine.layout());
      Randomness scatter = Randomness.of(scenario.seed(), "hall edges");
      double seconds = recorder.durationSeconds();
      LevelChanges levels = output.run(machine.wheel(), seconds, scatter);
      HALL.render(levels, 0.0, recorder.sampleRateHz(), volts);
      rest = HALL.highVolts();
    }
    disturb(volts, rest);
    return volts;
  }

  /** A sensor that shakes comes nearer and goes away, of which the field tells. */
  private void moveAway(double[] volts) {
    Wheel.Mount mount = scenario.wheel().mount();
    double mm = mount.vibration().gapMmPerDegree();
    if (mm == 0.0 || mount.vibration().isStill()) {
      return;
    }
    double wavelengthMm = Math.PI * mount.diameterMm() / scenario.wheel().pattern().slots();
    CrankMotion.Cursor cursor = machine.shake().cursor();
    for (int i = 0; i < volts.length; i++) {
      cursor.moveTo(i / recorder.sampleRateHz());
      volts[i] *= StrictMath.exp(-2.0 * Math.PI * mm * cursor.angleDegrees() / wavelengthMm);
    }
  }

  private void disturb(double[] volts, double rest) {
    List<Spark> fired = machine.sparks().stream().filter(Spark::fired).toList();
    int number = 0;
    for (Disturbance disturbance : scenario.disturbances()) {
      Randomness random = Randomness.of(scenario.seed(), "disturbance " + number++);
      disturbance.apply(
          new Disturbance.Bench(recorder.sampleRateHz(), machine.crank(), fired, rest, random),
          volts);
    }
  }

  private Trace coil(int coil) {
    List<Spark> own =
        machine.sparks().stream()
            .filter(s -> s.coil() == coil && s.fired())
            .sorted(Comparator.comparingDouble(Spark::seconds))
            .toList();
    String name = "coil " + (coil + 1);
    if (scenario.coils().signal() == Coils.Signal.PRIMARY_VOLTAGE
        && recorder.kind() == Recorder.Kind.OSCILLOSCOPE) {
      Randomness random = Randomness.of(scenario.seed(), "primary " + name);
      double[] volts = new double[recorder.samples()];
      new PrimaryVoltage(random).render(own, recorder.sampleRateHz(), volts);
      Randomness noise = Randomness.of(scenario.seed(), "noise " + name);
      float[] kept = digitiser.plain(volts, PrimaryVoltage.RANGE_VOLTS, noise);
      return new Trace.Analogue(Trace.Role.COIL, name, kept);
    }
    return logic(Trace.Role.COIL, name, drive(own));
  }

  private static LevelChanges drive(List<Spark> sparks) {
    List<Double> times = new ArrayList<>();
    double last = Double.NEGATIVE_INFINITY;
    for (Spark spark : sparks) {
      double from = Math.max(last, spark.seconds() - spark.dwellSeconds());
      times.add(from);
      times.add(spark.seconds());
      last = spark.seconds();
    }
    return changes(Level.LOW, times);
  }

  private LevelChanges tdcLevels() {
    List<Double> times = new ArrayList<>();
    MarkRing ring = new MarkRing(360.0, 0.0, TDC_PULSE_DEGREES);
    CrankMotion crank = machine.crank();
    long next = ring.firstAtOrAfter(crank.angleAt(0.0));
    crank.passings(ring, 0.0, recorder.durationSeconds(), (mark, t, direction) -> times.add(t));
    return changes(Math.floorMod(next, 2L) == 1L ? Level.HIGH : Level.LOW, times);
  }

  private static LevelChanges changes(Level first, List<Double> times) {
    return new LevelChanges(first, times.stream().mapToDouble(Double::doubleValue).toArray());
  }

  private Trace logic(Trace.Role role, String name, LevelChanges levels) {
    if (recorder.kind() == Recorder.Kind.LOGIC_ANALYSER) {
      LevelChanges sampled = levels.sampled(recorder.sampleRateHz(), 0.0, recorder.samples());
      return new Trace.Logic(role, name, sampled.moved(recorder.startSeconds()));
    }
    double[] volts = new double[recorder.samples()];
    LOGIC.render(levels, 0.0, recorder.sampleRateHz(), volts);
    Randomness noise = Randomness.of(scenario.seed(), "noise " + name);
    return new Trace.Analogue(role, name, digitiser.plain(volts, LOGIC_RANGE_VOLTS, noise));
  }
}
