package toothmark.simulator;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * Everything that decides a capture. Immutable; each {@code with} method gives a changed copy. The
 * same scenario always gives the same capture, to the last bit.
 */
public final class Scenario {
  private String name;
  private long seed;
  private Engine engine;
  private SpeedProfile speed;
  private Wheel wheel;
  private Sensor sensor;
  private Controller controller;
  private Coils coils;
  private Recorder recorder;
  private Hookup hookup;
  private List<Disturbance> disturbances;
  private List<String> faults;
  private List<String> fairFindings;
  private String toldPattern;
  private Optional<ControllerLog> log;

  private Scenario() {}

  /**
   * A healthy four-cylinder engine with a 36-1 wheel and a coil sensor, idling: 1.6 s at 100 000
   * samples a second.
   *
   * @param name of the case
   * @param seed of everything random in it
   * @return the scenario
   */
  public static Scenario healthy(String name, long seed) {
    Scenario s = new Scenario();
    s.name = name;
    s.seed = seed;
    s.engine = Engine.ofCylinders(4);
    s.speed = SpeedProfile.steady(880.0);
    s.wheel = Wheel.of("36-1", 90.0);
    s.sensor = Sensor.VariableReluctance.USUAL;
    s.controller = Controller.fixed(90.0, 10.0);
    s.coils = Coils.WASTED_SPARK;
    s.recorder = Recorder.oscilloscope(100e3, 1.6);
    s.hookup = new Hookup(List.of(0, 1), Hookup.Tdc.RECORDED);
    s.disturbances = List.of();
    s.faults = List.of();
    s.fairFindings = List.of();
    s.toldPattern = "auto";
    s.log = Optional.empty();
    return s;
  }

  private Scenario copy() {
    Scenario s = new Scenario();
    s.name = name;
    s.seed = seed;
    s.engine = engine;
    s.speed = speed;
    s.wheel = wheel;
    s.sensor = sensor;
    s.controller = controller;
    s.coils = coils;
    s.recorder = recorder;
    s.hookup = hookup;
    s.disturbances = disturbances;
    s.faults = faults;
    s.fairFindings = fairFindings;
    s.toldPattern = toldPattern;
    s.log = log;
    return s;
  }

  /**
   * The same under another name and seed.
   *
   * @param otherName of the case
   * @param otherSeed of everything random in it
   * @return a changed copy
   */
  public Scenario named(String otherName, long otherSeed) {
    Scenario s = copy();
    s.name = otherName;
    s.seed = otherSeed;
    return s;
  }

  /**
   * The same with another engine; all its coils are recorded.
   *
   * @param other the engine
   * @return a changed copy
   */
  public Scenario withEngine(Engine other) {
    Scenario s = copy();
    s.engine = other;
    return s.recordingAllCoils();
  }

  /**
   * The same at another speed.
   *
   * @param other what drives the crank
   * @return a changed copy
   */
  public Scenario withSpeed(SpeedProfile other) {
    Scenario s = copy();
    s.speed = other;
    return s;
  }

  /**
   * The same with another wheel. The controller is not told.
   *
   * @param other the wheel
   * @return a changed copy
   */
  public Scenario withWheel(Wheel other) {
    Scenario s = copy();
    s.wheel = other;
    return s;
  }

  /**
   * The same with another sensor.
   *
   * @param other the sensor
   * @return a changed copy
   */
  public Scenario withSensor(Sensor other) {
    Scenario s = copy();
    s.sensor = other;
    return s;
  }

  /**
   * The same with another controller.
   *
   * @param other the controller
   * @return a changed copy
   */
  public Scenario withController(Controller other) {
    Scenario s = copy();
    s.controller = other;
    return s;
  }

  /**
   * The same with other coils, all recorded.
   *
   * @param other the coils
   * @return a changed copy
   */
  public Scenario withCoils(Coils other) {
    Scenario s = copy();
    s.coils = other;
    return s.recordingAllCoils();
  }

  private Scenario recordingAllCoils() {
    List<Integer> all = new ArrayList<>();
    for (int i = 0; i < coils.count(engine); i++) {
      all.add(i);
    }
    return withHookup(new Hookup(all, hookup.tdc()));
  }

  /**
   * The same with another recorder.
   *
   * @param other the recorder
   * @return a changed copy
   */
  public Scenario withRecorder(Recorder other) {
    Scenario s = copy();
    s.recorder = other;
    return s;
  }

  /**
   * The same with other signals recorded.
   *
   * @param other which signals
   * @return a changed copy
   */
  public Scenario withHookup(Hookup other) {
    Scenario s = copy();
    s.hookup = other;
    return s;
  }

  /**
   * The same with one more disturbance.
   *
   * @param disturbance of the crank signal
   * @return a changed copy
   */
  public Scenario withDisturbance(Disturbance disturbance) {
    Scenario s = copy();
    List<Disturbance> more = new ArrayList<>(disturbances);
    more.add(disturbance);
    s.disturbances = List.copyOf(more);
    return s;
  }

  /**
   * The same with one more fault in its truth. It changes nothing else.
   *
   * @param id of the finding that should be made of the capture
   * @return a changed copy
   */
  public Scenario withFault(String id) {
    Scenario s = copy();
    List<String> more = new ArrayList<>(faults);
    more.add(id);
    s.faults = List.copyOf(more);
    return s;
  }

  /**
   * The same with findings that are true beside the faults, though they need not be made.
   *
   * @param ids of those findings
   * @return a changed copy
   */
  public Scenario withFairFindings(List<String> ids) {
    Scenario s = copy();
    List<String> more = new ArrayList<>(fairFindings);
    more.addAll(ids);
    s.fairFindings = List.copyOf(more);
    return s;
  }

  /**
   * The same with a wheel named on the job sheet, right or wrong.
   *
   * @param pattern in the trade's notation, or {@code auto}
   * @return a changed copy
   */
  public Scenario withToldPattern(String pattern) {
    Scenario s = copy();
    s.toldPattern = pattern;
    return s;
  }

  /**
   * The same with a log of the controller beside it.
   *
   * @param other how it is kept
   * @return a changed copy
   */
  public Scenario withLog(ControllerLog other) {
    Scenario s = copy();
    s.log = Optional.of(other);
    return s;
  }

  /**
   * Name of the case.
   *
   * @return lower-case words joined by hyphens
   */
  public String name() {
    return name;
  }

  /**
   * Seed of everything random.
   *
   * @return the seed
   */
  public long seed() {
    return seed;
  }

  /**
   * What turns.
   *
   * @return the engine
   */
  public Engine engine() {
    return engine;
  }

  /**
   * What drives it.
   *
   * @return the speed profile
   */
  public SpeedProfile speed() {
    return speed;
  }

  /**
   * What passes the sensor.
   *
   * @return the wheel
   */
  public Wheel wheel() {
    return wheel;
  }

  /**
   * What looks at the wheel.
   *
   * @return the sensor
   */
  public Sensor sensor() {
    return sensor;
  }

  /**
   * What times the sparks.
   *
   * @return the controller
   */
  public Controller controller() {
    return controller;
  }

  /**
   * What makes the sparks.
   *
   * @return the coils
   */
  public Coils coils() {
    return coils;
  }

  /**
   * What records.
   *
   * @return the recorder
   */
  public Recorder recorder() {
    return recorder;
  }

  /**
   * What is recorded beside the crank.
   *
   * @return the signals
   */
  public Hookup hookup() {
    return hookup;
  }

  /**
   * What disturbs the crank signal.
   *
   * @return in the order in which they act
   */
  public List<Disturbance> disturbances() {
    return disturbances;
  }

  /**
   * What is wrong.
   *
   * @return finding ids
   */
  public List<String> faults() {
    return faults;
  }

  /**
   * What may also be said of the capture without being wrong.
   *
   * @return finding ids
   */
  public List<String> fairFindings() {
    return fairFindings;
  }

  /**
   * The wheel on the job sheet.
   *
   * @return in the trade's notation, or {@code auto}
   */
  public String toldPattern() {
    return toldPattern;
  }

  /**
   * How the controller keeps a log.
   *
   * @return empty when it keeps none
   */
  public Optional<ControllerLog> log() {
    return log;
  }
}
