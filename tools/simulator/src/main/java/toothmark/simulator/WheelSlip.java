package toothmark.simulator;

/**
 * How far the wheel has turned back on its hub, against the rotation, in crank degrees.
 *
 * @param fromSeconds when it begins to move
 * @param overSeconds how long it takes: a few hundredths for a step, the whole capture for a creep
 * @param degrees the whole angle; zero for a wheel that holds
 */
public record WheelSlip(double fromSeconds, double overSeconds, double degrees) {
  /** A wheel that holds. */
  public static final WheelSlip NONE = new WheelSlip(0.0, 1.0, 0.0);

  double degreesAt(double seconds) {
    double s = share(seconds);
    return degrees * s * s * (3.0 - 2.0 * s);
  }

  double degreesPerSecondAt(double seconds) {
    double s = share(seconds);
    return degrees * 6.0 * s * (1.0 - s) / overSeconds;
  }

  private double share(double seconds) {
    return Math.max(0.0, Math.min(1.0, (seconds - fromSeconds) / overSeconds));
  }
}
