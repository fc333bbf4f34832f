package toothmark.capture.store;

/** A clock of one or more segments: when each sample was taken. */
public final class Ticks {

  private final double intervalSeconds;
  private final double[] times;
  private final long[] firsts;
  private final long count;

  /**
   * Makes a clock.
   *
   * @param intervalSeconds time between samples of one segment, s; positive
   * @param times time of the first sample of each segment, s; rising
   * @param firsts index of the first sample of each segment; rising, the first is 0
   * @param count number of samples in all
   */
  public Ticks(double intervalSeconds, double[] times, long[] firsts, long count) {
    this.intervalSeconds = intervalSeconds;
    this.times = times.clone();
    this.firsts = firsts.clone();
    this.count = count;
  }

  /**
   * Makes a clock of one segment.
   *
   * @param intervalSeconds time between samples, s; positive
   * @param startSeconds time of the first sample, s
   * @param count number of samples
   * @return the clock
   */
  public static Ticks steady(double intervalSeconds, double startSeconds, long count) {
    return new Ticks(intervalSeconds, new double[] {startSeconds}, new long[] {0}, count);
  }

  double intervalSeconds() {
    return intervalSeconds;
  }

  double[] times() {
    return times;
  }

  long[] firsts() {
    return firsts;
  }

  /**
   * How many samples there are.
   *
   * @return 0 or more
   */
  public long count() {
    return count;
  }
}
