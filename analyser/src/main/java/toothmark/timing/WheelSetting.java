package toothmark.timing;

import java.util.OptionalDouble;
import toothmark.edges.SensorKind;

/**
 * What timing needs to know of the trigger wheel and its sensor.
 *
 * @param nominalTooth1BtdcDegrees how far before TDC of cylinder 1 tooth 1 passes, as the
 *     controller is told, degrees
 * @param sensorCircleMillimetres diameter at the tooth tips, mm
 * @param pitchDegrees angle from slot to slot
 * @param geometryDegrees standard uncertainty of one tooth's place, the same at every turn
 * @param sensor kind of sensor
 */
public record WheelSetting(
    OptionalDouble nominalTooth1BtdcDegrees,
    OptionalDouble sensorCircleMillimetres,
    double pitchDegrees,
    double geometryDegrees,
    SensorKind sensor) {}
