package toothmark.rotation;

/**
 * Speed of the crank from tooth to tooth.
 *
 * <p>Each point is the mean speed between two neighbouring teeth seen, the wheel's learned errors
 * taken off, at the middle of the time between them.
 */
public final class SpeedTrace {

  private final double[] times;
  private final double[] rpm;
  private final double mean;
  private final double min;
  private final double max;

  /**
   * Builds a trace; the arrays are copied.
   *
   * @param times s, rising; at least one
   * @param rpm rev/min, positive, as many
   * @param meanRpm angle turned over time taken, rev/min
   */
  public SpeedTrace(double[] times, double[] rpm, double meanRpm) {
    if (times.length == 0 || times.length != rpm.length) {
      throw new IllegalArgumentException(
          "a speed trace needs as many speeds as times and at least one");
    }
    this.times = times.clone();
    this.rpm = rpm.clone();
    this.mean = meanRpm;
    this.min = java.util.Arrays.stream(rpm).min().orElseThrow();
    this.max = java.util.Arrays.stream(rpm).max().orElseThrow();
  }

  /**
   * How many points there are.
   *
   * @return at least 1
   */
  public int size() {
    return times.length;
  }

  /**
   * Time of a point.
   *
   * @param index from 0
   * @return s
   */
  public double time(int index) {
    return times[index];
  }

  /**
   * Speed at a point.
   *
   * @param index from 0
   * @return rev/min
   */
  public double rpm(int index) {
    return rpm[index];
  }

  /**
   * Mean over the record.
   *
   * @return rev/min
   */
  public double meanRpm() {
    return mean;
  }

  /**
   * Slowest point.
   *
   * @return rev/min
   */
  public double minRpm() {
    return min;
  }

  /**
   * Fastest point.
   *
   * @return rev/min
   */
  public double maxRpm() {
    return max;
  }
}
