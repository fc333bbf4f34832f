package toothmark.simulator.command;

import java.util.List;
import toothmark.simulator.Coils;
import toothmark.simulator.Controller;
import toothmark.simulator.Controller.AdvanceMap;
import toothmark.simulator.ControllerLog;
import toothmark.simulator.Disturbance;
import toothmark.simulator.Disturbance.Window;
import toothmark.simulator.Engine;
import toothmark.simulator.Hookup;
import toothmark.simulator.Limiter;
import toothmark.simulator.Recorder;
import toothmark.simulator.Scenario;
import toothmark.simulator.Sensor;
import toothmark.simulator.Sensor.VariableReluctance;
import toothmark.simulator.SpeedProfile;
import toothmark.simulator.Wheel;
import toothmark.simulator.file.CaseFolder.Compression;
import toothmark.simulator.file.Dialect;

/** The captures that come with the program: one engine, one season, good days and bad. */
final class SampleCatalogue {
  private static final double TOOTH1_36 = 90.0;
  private static final double TOOTH1_60 = 114.0;

  private SampleCatalogue() {}

  static List<Sample> all() {
    return List.of(
        cleanIdle(),
        coldStart(),
        leadsSwapped(),
        refittedWheel(),
        wheelPutRight(),
        sparksInTheSignal(),
        looseConnector(),
        logicProbe(),
        periodsOnly(),
        wheelOutOfTrue(),
        droppedSpanner(),
        straightIntoTheLimiter(),
        weakOnTheStarter(),
        tiredCylinder(),
        primarySide(),
        soundCard());
  }

  /** The 1.6 litre four-cylinder engine that all samples come from. */
  private static Scenario engine(String name, long seed) {
    return Scenario.healthy(name, seed)
        .withEngine(new Engine(List.of(1, 3, 4, 2), 1.6, 10.5, 0.14, 19.0))
        .withWheel(Wheel.of("36-1", TOOTH1_36))
        .withController(Controller.fixed(TOOTH1_36, 10.0));
  }

  private static Scenario with60(Scenario scenario) {
    return scenario
        .withWheel(Wheel.of("60-2", TOOTH1_60))
        .withController(Controller.fixed(TOOTH1_60, 10.0));
  }

  private static Sample gzip(Scenario scenario, Dialect dialect, String story, String shows) {
    return new Sample(scenario, dialect, Compression.GZIP, story, shows);
  }

  private static Sample cleanIdle() {
    return gzip(
        engine("clean-idle", 101).withRecorder(Recorder.oscilloscope(50e3, 1.6)),
        Dialect.PLAIN,
        "Warm idle on the morning of the first event, everything as it should be.",
        "What good looks like: a 36-1 wheel, even teeth, sparks at 10 degrees.");
  }

  private static Sample coldStart() {
    Recorder recorder = Recorder.oscilloscope(50e3, 2.0).withStart(-0.5);
    return gzip(
        with60(engine("cold-start", 102))
            .withSpeed(SpeedProfile.start(215.0, 1.1, 950.0))
            .withRecorder(recorder),
        Dialect.DECIMAL_COMMA,
        "The spare engine with its 60-2 wheel, from rest on the starter to first fire.",
        "Compression ripple of the speed on the starter, the flare after first fire; semicolons,"
            + " decimal commas, negative times.");
  }

  private static Sample leadsSwapped() {
    return gzip(
        engine("leads-swapped", 103)
            .withSensor(VariableReluctance.USUAL.reversed())
            .withSpeed(SpeedProfile.sweep(900.0, 2600.0, 1.0))
            .withRecorder(Recorder.oscilloscope(80e3, 1.4))
            .withFault("sensor-polarity-reversed"),
        Dialect.UNITS_ROW,
        "After the new loom the engine started only now and then.",
        "The sensor's two wires are the wrong way round: the gap splits into two long intervals.");
  }

  private static Sample refittedWheel() {
    Controller controller =
        Controller.fixed(TOOTH1_36, 10.0)
            .withAdvance(new AdvanceMap(10.0, 1000.0, 3600.0, 28.0))
            .withTiming(Controller.Timing.USUAL.withDelaySeconds(90e-6));
    return gzip(
        engine("refitted-wheel", 104)
            .withWheel(Wheel.of("36-1", TOOTH1_36 - 3.4))
            .withController(controller)
            .withSpeed(SpeedProfile.sweep(950.0, 4600.0, 1.2).then(1800.0, 0.5))
            .withRecorder(Recorder.oscilloscope(100e3, 1.7))
            .withLog(new ControllerLog(20.0, 512.35, 30e-6, 0.05, 35.0))
            .withToldPattern("36-1")
            .withFault("wheel-misaligned")
            .withFault("timing-delay"),
        Dialect.PLAIN,
        "The front pulley had been off; a strobe then showed too little advance, the more so the"
            + " faster it turned.",
        "The wheel is 3.4 degrees late and every spark 90 microseconds later still; with the"
            + " controller's log.");
  }

  /** The sweep of the refitted wheel, as the controller was told what had been found. */
  private static Sample wheelPutRight() {
    double measured = TOOTH1_36 - 3.4;
    Controller controller =
        Controller.fixed(measured, 10.0)
            .withAdvance(new AdvanceMap(10.0, 1000.0, 3600.0, 28.0))
            .withTiming(Controller.Timing.USUAL.withDelaySeconds(-1e-6));
    return gzip(
        engine("wheel-put-right", 114)
            .withWheel(Wheel.of("36-1", measured))
            .withController(controller)
            .withSpeed(SpeedProfile.sweep(950.0, 4600.0, 1.2).then(1800.0, 0.5))
            .withRecorder(Recorder.oscilloscope(50e3, 1.7))
            .withLog(new ControllerLog(20.0, 87.2, 30e-6, 0.05, 35.0))
            .withToldPattern("36-1"),
        Dialect.PLAIN,
        "The same sweep after the refitted wheel's angle and the delay were entered: the proof.",
        "Angle and delay hold nought in their intervals; compare it with refitted-wheel.");
  }

  private static Sample sparksInTheSignal() {
    return gzip(
        engine("sparks-in-the-signal", 105)
            .withSpeed(SpeedProfile.sweep(900.0, 1900.0, 1.1))
            .withDisturbance(new Disturbance.SparkBursts(5.5, 14e3, 60e-6, 6e-6))
            .withRecorder(Recorder.oscilloscope(100e3, 1.4))
            .withFault("ignition-interference"),
        Dialect.NO_TIME,
        "Plain-core plug leads borrowed from another car; the tachometer jumped about.",
        "A burst on the crank signal at each spark; no time column, the interval is in the"
            + " preamble.");
  }

  private static Sample looseConnector() {
    List<Window> windows =
        List.of(new Window(0.41, 0.438), new Window(0.82, 0.829), new Window(1.27, 1.335));
    return gzip(
        with60(engine("loose-connector", 106))
            .withSpeed(SpeedProfile.steady(1500.0))
            .withDisturbance(new Disturbance.OpenCircuit(windows))
            .withRecorder(Recorder.oscilloscope(50e3, 1.6))
            .withFault("intermittent-connection"),
        Dialect.SAMPLE_NUMBERS,
        "It cut out over bumps; on the stand it took a finger on the connector.",
        "Three openings of the wire, between 9 and 65 ms; tabulators and sample numbers.");
  }

  private static Sample logicProbe() {
    Recorder recorder = Recorder.oscilloscope(1e6, 1.2).ofKind(Recorder.Kind.LOGIC_ANALYSER);
    return gzip(
        engine("logic-probe", 107)
            .withSensor(Sensor.Hall.USUAL)
            .withSpeed(SpeedProfile.sweep(900.0, 4200.0, 0.6).then(1500.0, 0.6))
            .withRecorder(recorder),
        Dialect.VALUE_CHANGE_DUMP,
        "The Hall sensor that is to replace the coil, tried with a cheap logic analyser.",
        "Levels only: a snap of the throttle through a value change dump.");
  }

  private static Sample periodsOnly() {
    Recorder recorder = Recorder.oscilloscope(1e6, 2.2).ofKind(Recorder.Kind.EDGE_LOGGER);
    return new Sample(
        with60(engine("periods-only", 108))
            .withSpeed(SpeedProfile.start(220.0, 1.2, 950.0))
            .withRecorder(recorder),
        Dialect.PERIODS,
        Compression.NONE,
        "A list of tooth periods that a friend's controller had kept of a start.",
        "One column of microseconds is enough for wheel, speed and losses.");
  }

  private static Sample wheelOutOfTrue() {
    Wheel.Errors errors = new Wheel.Errors(0.03, 0.38, 140.0);
    return gzip(
        engine("wheel-out-of-true", 109)
            .withWheel(Wheel.of("36-1", TOOTH1_36).withErrors(errors))
            .withSpeed(SpeedProfile.sweep(900.0, 2400.0, 1.0))
            .withRecorder(Recorder.oscilloscope(80e3, 1.4))
            .withFault("wheel-run-out"),
        Dialect.PLAIN,
        "The wheel had been welded to its carrier a little off the centre.",
        "Heights and places of the teeth swing once a turn.");
  }

  private static Sample droppedSpanner() {
    Wheel.DamagedTooth tooth = new Wheel.DamagedTooth(23, -1.2, 0.2);
    return gzip(
        engine("dropped-spanner", 114)
            .withWheel(Wheel.of("36-1", TOOTH1_36).withDamage(tooth))
            .withSpeed(SpeedProfile.sweep(900.0, 2200.0, 0.8))
            .withRecorder(Recorder.oscilloscope(60e3, 1.0))
            .withFault("damaged-tooth"),
        Dialect.PLAIN,
        "A spanner fell into the turning pulley; the tachometer twitched ever after.",
        "Tooth 23 is bent back by more than a degree, the same in every turn.");
  }

  private static Sample straightIntoTheLimiter() {
    Controller controller =
        Controller.fixed(TOOTH1_36, 28.0).withLimiter(Limiter.cuttingSparksAbove(6400.0));
    return gzip(
        engine("straight-into-the-limiter", 110)
            .withController(controller)
            .withSpeed(SpeedProfile.sweep(3600.0, 6900.0, 0.6))
            .withRecorder(Recorder.oscilloscope(100e3, 1.3))
            .withFault("spark-cut-limiter"),
        Dialect.PLAIN,
        "Held against the limiter by mistake: the misfire that was none.",
        "Sparks missing above 6400 rev/min by the controller's own doing; the speed saws.");
  }

  private static Sample weakOnTheStarter() {
    VariableReluctance far = VariableReluctance.USUAL.withGapMm(2.6).withPeakVoltsPer1000Rpm(1.1);
    return gzip(
        engine("weak-on-the-starter", 111)
            .withSensor(far)
            .withSpeed(SpeedProfile.cranking(205.0))
            .withRecorder(Recorder.oscilloscope(50e3, 2.2))
            .withFault("weak-signal"),
        Dialect.PLAIN,
        "It would start when pushed but not on the starter.",
        "A clearance of 2.6 mm leaves less than a tenth of a volt.");
  }

  private static Sample tiredCylinder() {
    return gzip(
        engine("tired-cylinder", 116)
            .withEngine(
                new Engine(List.of(1, 3, 4, 2), 1.6, 10.5, 0.14, 19.0).withLastCompression(0.6))
            .withSpeed(SpeedProfile.cranking(220.0))
            .withRecorder(Recorder.oscilloscope(50e3, 2.4))
            .withFault("compression-uneven"),
        Dialect.PLAIN,
        "It shook at idle; with the fuel off, the starter turned it for a while.",
        "One compression takes far less from the crank's speed than the others.");
  }

  private static Sample primarySide() {
    return gzip(
        engine("primary-side", 112)
            .withCoils(Coils.WASTED_SPARK.withSignal(Coils.Signal.PRIMARY_VOLTAGE))
            .withSpeed(SpeedProfile.steady(2200.0))
            .withController(
                Controller.fixed(TOOTH1_36, 18.0)
                    .withDwell(new Controller.Dwell(1.1e-3, 8e-6, 0.8)))
            .withRecorder(Recorder.oscilloscope(200e3, 0.7))
            .withFault("dwell-short"),
        Dialect.PLAIN,
        "A misfire under load; the coils were looked at on their primary side.",
        "Flyback and burn line of both coils, and a charge of 1.1 ms, too short for them.");
  }

  private static Sample soundCard() {
    Recorder.Front front = new Recorder.Front(16, 0.0, 0.004, 0.0, 8.0);
    return new Sample(
        engine("sound-card", 113)
            .withSpeed(SpeedProfile.steady(1100.0))
            .withHookup(new Hookup(List.of(), Hookup.Tdc.ABSENT))
            .withRecorder(Recorder.oscilloscope(48e3, 1.5).withFront(front)),
        Dialect.WAV,
        Compression.NONE,
        "Recorded with a laptop's line input through a divider.",
        "Sixteen-bit sound, AC coupled, the crank signal alone.");
  }
}
