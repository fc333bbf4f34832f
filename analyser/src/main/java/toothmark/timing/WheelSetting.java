package toothmark.timing;

import java.util.OptionalDouble;
import toothmark.edges.SensorKind;
import toothmark.units.CrankAngle;
import toothmark.wheel.ToothGeometry;
import toothmark.wheel.WheelPattern;

/**
 * What timing needs to know of the trigger wheel and its sensor.
 *
 * @param nominalTooth1BtdcDegrees how far before TDC of cylinder 1 tooth 1 passes, as the
 *     controller is told, degrees
 * @param sensorCircleMillimetres diameter at the tooth tips, mm
 * @param pattern the wheel
 * @param geometry places of its teeth, whose errors are the same at every turn
 * @param sensor kind of sensor
 */
public record WheelSetting(
    OptionalDouble nominalTooth1BtdcDegrees,
    OptionalDouble sensorCircleMillimetres,
    WheelPattern pattern,
    ToothGeometry geometry,
    SensorKind sensor) {

  /**
   * How the angle read at a place is made up of the teeth beside it: each tooth's share, by tooth.
   * An error of a tooth's place moves the reading by its share.
   */
  double[] teethBeside(double degreesAfterTooth1) {
    double place = CrankAngle.wrap(degreesAfterTooth1);
    int before = pattern.teeth();
    while (before > 1 && pattern.degreesAfterTooth1(before) > place) {
      before--;
    }
    double from = pattern.degreesAfterTooth1(before);
    boolean last = before == pattern.teeth();
    double to = last ? CrankAngle.REVOLUTION : pattern.degreesAfterTooth1(before + 1);
    double share = (place - from) / (to - from);
    double[] shares = new double[pattern.teeth()];
    shares[before - 1] = 1 - share;
    shares[before % pattern.teeth()] += share;
    return shares;
  }
}
