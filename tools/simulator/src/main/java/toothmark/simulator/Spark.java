package toothmark.simulator;

/**
 * One spark that the controller meant to make.
 *
 * @param seconds when it came, or would have come
 * @param coil index of the coil
 * @param outcome whether it came
 * @param angles where
 * @param dwellSeconds how long the coil was charged
 */
public record Spark(double seconds, int coil, Outcome outcome, Angles angles, double dwellSeconds) {
  /** Whether it came. */
  public enum Outcome {
    /** It came. */
    FIRED,
    /** It came on top of one that had just been made. */
    REPEATED,
    /** The limiter took it away. */
    CUT_BY_LIMITER,
    /** It did not come, at random. */
    MISSED,
    /** Its coil never fires. */
    COIL_SILENT
  }

  /**
   * Angles of a spark, degrees before the TDC of its coil's own cylinders.
   *
   * @param commandedDegrees what the controller's map said
   * @param actualDegrees where the crank was
   * @param rpm speed of the crank at that moment
   */
  public record Angles(double commandedDegrees, double actualDegrees, double rpm) {}

  /**
   * Whether the spark came.
   *
   * @return true when it came
   */
  public boolean fired() {
    return outcome == Outcome.FIRED || outcome == Outcome.REPEATED;
  }
}
