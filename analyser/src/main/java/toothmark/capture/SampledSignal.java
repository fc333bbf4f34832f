package toothmark.capture;

import toothmark.units.Interval;

/**
 * Samples of a voltage or current on a uniform clock.
 *
 * <p>Every sample is finite: a reader fills an empty cell from its neighbours and an over-range
 * word with the channel's extreme, and says so in the {@link Reading}. Samples may live outside the
 * heap, so they are read in blocks, any number of times, in any order.
 */
public abstract non-sealed class SampledSignal implements Signal {

  private final double startSeconds;
  private final double intervalSeconds;
  private final long size;

  /**
   * Starts a signal.
   *
   * @param startSeconds time of the first sample, s
   * @param intervalSeconds sampling interval, s; positive
   * @param size number of samples, at least 1
   */
  protected SampledSignal(double startSeconds, double intervalSeconds, long size) {
    if (!(intervalSeconds > 0) || size < 1 || !Double.isFinite(startSeconds)) {
      throw new IllegalArgumentException(
          "a sampled signal needs samples and a positive interval, got "
              + size
              + " samples every "
              + intervalSeconds
              + " s from "
              + startSeconds
              + " s");
    }
    this.startSeconds = startSeconds;
    this.intervalSeconds = intervalSeconds;
    this.size = size;
  }

  /**
   * Wraps samples that are already in memory.
   *
   * @param startSeconds time of the first sample, s
   * @param intervalSeconds sampling interval, s; positive
   * @param samples values in the channel's unit; copied
   * @return a signal over them
   */
  public static SampledSignal of(double startSeconds, double intervalSeconds, double... samples) {
    double[] own = samples.clone();
    return new SampledSignal(startSeconds, intervalSeconds, own.length) {
      @Override
      public void read(long first, double[] into, int count) {
        System.arraycopy(own, Math.toIntExact(first), into, 0, count);
      }
    };
  }

  /**
   * Copies a run of samples.
   *
   * @param first index of the first sample, from 0
   * @param into where to put them, from index 0
   * @param count how many; first + count must not pass {@link #size()}
   */
  public abstract void read(long first, double[] into, int count);

  /**
   * How many samples there are.
   *
   * @return at least 1
   */
  public final long size() {
    return size;
  }

  /**
   * Time between samples.
   *
   * @return seconds, positive
   */
  public final double intervalSeconds() {
    return intervalSeconds;
  }

  /**
   * Time of a sample, or between samples.
   *
   * @param index sample index from 0; may be fractional
   * @return seconds from the capture's own zero
   */
  public final double timeOf(double index) {
    return startSeconds + index * intervalSeconds;
  }

  @Override
  public final Interval span() {
    return new Interval(startSeconds, timeOf(size));
  }
}
