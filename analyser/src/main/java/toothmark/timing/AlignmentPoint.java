package toothmark.timing;

/**
 * One reading of the tooth 1 angle.
 *
 * @param timeSeconds s
 * @param rpm rev/min
 * @param tooth1BtdcDegrees as read, the sensor's lag not taken off, degrees
 * @param used whether the fit kept it
 */
public record AlignmentPoint(double timeSeconds, double rpm, double tooth1BtdcDegrees, Use used) {

  /** Whether a reading was kept. */
  public enum Use {
    /** Kept. */
    KEPT,
    /** Too far from the others. */
    REJECTED
  }
}
