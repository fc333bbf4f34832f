package toothmark.timing;

/**
 * One reading of the tooth 1 angle.
 *
 * @param timeSeconds s
 * @param rpm rev/min
 * @param tooth1BtdcDegrees as read, the sensor's lag not taken off, degrees
 * @param widthDegrees how wide the mark was, see {@link TdcMark}, degrees; may be NaN
 * @param used whether the fit kept it
 */
public record AlignmentPoint(
    double timeSeconds, double rpm, double tooth1BtdcDegrees, double widthDegrees, Use used) {

  /** Whether a reading was kept. */
  public enum Use {
    /** Kept. */
    KEPT,
    /** Too far from the others. */
    REJECTED
  }
}
