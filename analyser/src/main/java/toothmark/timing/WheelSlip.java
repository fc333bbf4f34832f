package toothmark.timing;

import toothmark.units.Interval;
import toothmark.units.Measured;

/**
 * The wheel moved against the crank during the capture.
 *
 * @param manner at once or little by little
 * @param during when it moved, s
 * @param degrees how far the measured tooth 1 angle changed, from start to end, degrees
 */
public record WheelSlip(Manner manner, Interval during, Measured degrees) {

  /** How a wheel moved. */
  public enum Manner {
    /** From one turn to the next. */
    STEP,
    /** Over many turns. */
    CREEP
  }
}
