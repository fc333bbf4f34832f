package toothmark.examination;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import toothmark.capture.StatedLayout;
import toothmark.edges.EdgeDirection;
import toothmark.edges.SensorKind;
import toothmark.ignition.Coil;
import toothmark.timing.IgnitionTable;
import toothmark.timing.TdcReadings;
import toothmark.wheel.WheelPattern;

/**
 * What the user states of the engine and the recording. Everything is optional: what is not stated
 * is found from the capture.
 *
 * @param heading whose job it is, for the report
 * @param engine cylinders and firing
 * @param wheel trigger wheel as the controller is told
 * @param sensor sensor and the edge that the controller times
 * @param channels which channel is which
 * @param tdc what was read by hand of top dead centre
 * @param coils ignition coils and their channels
 * @param commanded what the controller commands
 * @param layout how the capture is laid out; read with it, and of no use afterwards
 */
public record JobSheet(
    Heading heading,
    Engine engine,
    Wheel wheel,
    Sensor sensor,
    Channels channels,
    TdcReadings tdc,
    List<CoilEntry> coils,
    Commanded commanded,
    StatedLayout layout) {

  /** Copies the list. */
  public JobSheet {
    coils = List.copyOf(coils);
  }

  /**
   * A sheet that states nothing.
   *
   * @return the empty sheet
   */
  public static JobSheet empty() {
    return new JobSheet(
        new Heading("", "", ""),
        new Engine(OptionalInt.empty(), List.of(), List.of()),
        new Wheel(Optional.empty(), OptionalDouble.empty(), OptionalDouble.empty()),
        new Sensor(Optional.empty(), Optional.empty()),
        new Channels(Optional.empty(), Optional.empty()),
        TdcReadings.NONE,
        List.of(),
        Commanded.NOTHING,
        StatedLayout.NOTHING);
  }

  /**
   * The same sheet with another statement of what is commanded.
   *
   * @param next what the controller commands
   * @return a sheet
   */
  public JobSheet withCommanded(Commanded next) {
    return new JobSheet(heading, engine, wheel, sensor, channels, tdc, coils, next, layout);
  }

  /**
   * The same sheet with another heading.
   *
   * @param next whose job it is
   * @return a sheet
   */
  public JobSheet withHeading(Heading next) {
    return new JobSheet(next, engine, wheel, sensor, channels, tdc, coils, commanded, layout);
  }

  /**
   * Whose job it is.
   *
   * @param shop who examines; empty when not stated
   * @param title engine or vehicle; empty when not stated
   * @param notes free text; empty when not stated
   */
  public record Heading(String shop, String title, String notes) {}

  /**
   * The engine.
   *
   * @param cylinders 1 to 12
   * @param firingOrder cylinder numbers; empty when not stated
   * @param firingAngles crank degrees of the TDC of each cylinder of the order after the first
   *     one's; empty for even firing
   */
  public record Engine(
      OptionalInt cylinders, List<Integer> firingOrder, List<Double> firingAngles) {

    /** Copies the lists. */
    public Engine {
      firingOrder = List.copyOf(firingOrder);
      firingAngles = List.copyOf(firingAngles);
    }
  }

  /**
   * The trigger wheel.
   *
   * @param pattern as the controller is told
   * @param tooth1BtdcDegrees nominal angle from tooth 1 to TDC of cylinder 1, degrees
   * @param sensorCircleMillimetres diameter at the tooth tips, mm
   */
  public record Wheel(
      Optional<WheelPattern> pattern,
      OptionalDouble tooth1BtdcDegrees,
      OptionalDouble sensorCircleMillimetres) {}

  /**
   * The crank sensor.
   *
   * @param kind kind of sensor
   * @param edge edge that the controller times
   */
  public record Sensor(Optional<SensorKind> kind, Optional<EdgeDirection> edge) {}

  /**
   * Which channel is which.
   *
   * @param crank name of the crank channel
   * @param tdc name of the channel that rises at TDC of cylinder 1
   */
  public record Channels(Optional<String> crank, Optional<String> tdc) {}

  /**
   * A coil and its channel.
   *
   * @param coil name, cylinders and pick-up
   * @param channel name of its channel
   */
  public record CoilEntry(Coil coil, String channel) {}

  /**
   * What the controller commands.
   *
   * @param advanceDegrees fixed timing, degrees before TDC
   * @param table ignition table; wins over the advance of a log and over fixed timing
   * @param load at which the table is read, in the unit of its loads; when not stated, at those of
   *     the controller's log
   */
  public record Commanded(
      OptionalDouble advanceDegrees, Optional<IgnitionTable> table, OptionalDouble load) {

    /** Nothing is stated. */
    public static final Commanded NOTHING =
        new Commanded(OptionalDouble.empty(), Optional.empty(), OptionalDouble.empty());
  }
}
