package toothmark.timing;

import toothmark.units.Measured;

/**
 * How late the crank sensor's edges are, as a time that does not depend on speed.
 *
 * @param seconds the lag, s, positive when edges are late
 * @param knownFrom what it rests on
 */
public record SensorLag(Measured seconds, KnownFrom knownFrom) {

  /** What a lag rests on. */
  public enum KnownFrom {
    /** What is usual for the kind of sensor: the capture's speeds cannot show it. */
    USUAL_FOR_SENSOR,
    /** The change of the measured angle with speed. */
    CHANGE_WITH_SPEED
  }
}
