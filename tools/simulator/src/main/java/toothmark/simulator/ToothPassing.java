package toothmark.simulator;

/**
 * A tooth's timing edge passes the sensor.
 *
 * @param seconds when its place on the wheel passed, before any lag or noise of the sensor
 * @param tooth its number
 * @param revolution turns of the wheel, 0 for the turn at the start of the capture
 * @param crankDegrees angle of the crank since a true wheel's tooth 1 passed in revolution 0
 * @param outcome whether it gave an edge
 */
public record ToothPassing(
    double seconds, int tooth, long revolution, double crankDegrees, Outcome outcome) {
  /** Whether the tooth gave an edge. */
  public enum Outcome {
    /** It did. */
    SEEN,
    /** It did not, through a fault. */
    LOST
  }

  ToothPassing lost() {
    return new ToothPassing(seconds, tooth, revolution, crankDegrees, Outcome.LOST);
  }
}
