package toothmark.timing;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import toothmark.units.Measured;

/**
 * How far before top dead centre tooth 1 passes the sensor.
 *
 * @param source what tells top dead centre
 * @param nominalDegrees what the controller is told, degrees BTDC; empty when the job sheet does
 *     not say
 * @param tooth1BtdcDegrees what the capture shows, at standstill (the sensor's lag taken off),
 *     degrees BTDC; empty when the wheel slipped, for then there is no one value
 * @param errorDegrees measured less nominal, degrees; positive: sparks come further advanced than
 *     commanded
 * @param sensorMoveMillimetres the error as a way along the circle of the tooth tips; positive:
 *     move the sensor with the rotation; empty when the circle is not known
 * @param lag the sensor's lag
 * @param slip the wheel's slip, if it moved
 * @param parts where the uncertainty comes from
 * @param points each mark of a TDC channel, in time order; none of other sources
 */
public record Alignment(
    TdcSource source,
    OptionalDouble nominalDegrees,
    Optional<Measured> tooth1BtdcDegrees,
    Optional<Measured> errorDegrees,
    Optional<Measured> sensorMoveMillimetres,
    SensorLag lag,
    Optional<WheelSlip> slip,
    Parts parts,
    List<AlignmentPoint> points) {

  /** Copies the list. */
  public Alignment {
    points = List.copyOf(points);
  }

  /**
   * Standard uncertainties that make up that of the angle, degrees.
   *
   * @param scatterDegrees from the scatter of the marks, or of what was read by hand
   * @param lagDegrees from not knowing the sensor's lag
   * @param geometryDegrees from the places of the wheel's teeth, the same at every turn
   */
  public record Parts(double scatterDegrees, double lagDegrees, double geometryDegrees) {}
}
