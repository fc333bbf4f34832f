package toothmark.timing;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import toothmark.units.Measured;

/**
 * What was read by hand of top dead centre, on the scale of one pointer.
 *
 * @param stops pairs of touches of a piston stop
 * @param tooth1Degrees what the pointer reads with tooth 1 at the sensor, degrees BTDC; one or
 *     several readings, or none
 * @param light readings with a timing light
 * @param readingUncertaintyDegrees standard uncertainty of one reading, degrees, above 0
 */
public record TdcReadings(
    List<PistonStop> stops,
    List<Double> tooth1Degrees,
    Optional<Light> light,
    double readingUncertaintyDegrees) {

  /** Standard uncertainty of one reading by eye, degrees (common practice). */
  public static final double USUAL_UNCERTAINTY_DEGREES = 0.5;

  /** Nothing was read. */
  public static final TdcReadings NONE =
      new TdcReadings(List.of(), List.of(), Optional.empty(), USUAL_UNCERTAINTY_DEGREES);

  /**
   * How well a tooth is put to the middle of its sensor by eye, degrees: 0.65 mm on a circle of 150
   * mm. The same for all readings of one setting.
   */
  private static final double CENTRING_DEGREES = 0.5;

  /**
   * How far a pulley's mark may be off that no piston stop has proved, degrees: half of the 2 that
   * makers allow for basic timing.
   */
  private static final double UNPROVED_MARK_DEGREES = 1;

  /** Copies the lists. */
  public TdcReadings {
    stops = List.copyOf(stops);
    tooth1Degrees = List.copyOf(tooth1Degrees);
  }

  /**
   * A timing light's readings.
   *
   * @param file where they stand
   * @param readings at least one
   */
  public record Light(Path file, List<StrobeWorksheet.Reading> readings) {

    /** Copies the list. */
    public Light {
      readings = List.copyOf(readings);
    }
  }

  /** What the pointer reads at true top dead centre, degrees BTDC. */
  Measured readingAtTop() {
    return stops.isEmpty()
        ? new Measured(0, UNPROVED_MARK_DEGREES)
        : PistonStop.readingAtTopDegrees(stops);
  }

  /** Where tooth 1 stands by the piston stop, degrees BTDC; empty without both its readings. */
  Optional<Measured> tooth1ByStop() {
    if (stops.isEmpty() || tooth1Degrees.isEmpty()) {
      return Optional.empty();
    }
    Measured top = readingAtTop();
    double[] at = tooth1Degrees.stream().mapToDouble(Double::doubleValue).toArray();
    Measured tooth1 = PistonStop.repeated(at, readingUncertaintyDegrees);
    double read = Math.hypot(top.standardUncertainty(), tooth1.standardUncertainty());
    return Optional.of(
        new Measured(tooth1.value() - top.value(), Math.hypot(read, CENTRING_DEGREES)));
  }
}
