package toothmark.capture;

import java.util.Arrays;
import toothmark.units.Interval;

/**
 * Samples of a voltage or current on a uniform clock.
 *
 * <p>Every sample is finite: a reader fills an empty cell from its neighbours and an over-range
 * word with the channel's extreme, and says so in the {@link Reading}. Samples may live outside the
 * heap, so they are read in blocks, any number of times, in any order, by any number of threads.
 *
 * <p>Where a recorder paused, the signal has several segments: runs of samples on the same clock
 * with a gap in time before each. What happened in a gap is not known, so no edge, interpolation or
 * filter may reach across a segment's start.
 */
public abstract non-sealed class SampledSignal implements Signal {

  private final double startSeconds;
  private final double intervalSeconds;
  private final long size;
  private final long[] segmentStarts;
  private final double[] segmentTimes;

  /**
   * Starts a signal of one segment.
   *
   * @param startSeconds time of the first sample, s
   * @param intervalSeconds sampling interval, s; positive
   * @param size number of samples, at least 1
   */
  protected SampledSignal(double startSeconds, double intervalSeconds, long size) {
    this(new double[] {startSeconds}, new long[] {0}, intervalSeconds, size);
  }

  /**
   * Starts a signal of one or more segments.
   *
   * @param segmentTimes time of the first sample of each segment, s; rising
   * @param segmentStarts index of the first sample of each segment; rising, the first is 0
   * @param intervalSeconds sampling interval, s; positive
   * @param size number of samples in all, at least 1
   */
  protected SampledSignal(
      double[] segmentTimes, long[] segmentStarts, double intervalSeconds, long size) {
    this.startSeconds = segmentTimes[0];
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
    this.intervalSeconds = intervalSeconds;
    this.size = size;
    this.segmentStarts = segmentStarts.clone();
    this.segmentTimes = segmentTimes.clone();
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
   * Time of a sample, or between samples of one segment.
   *
   * @param index sample index from 0; may be fractional
   * @return seconds from the capture's own zero
   */
  public final double timeOf(double index) {
    if (segmentStarts.length == 1) {
      return startSeconds + index * intervalSeconds;
    }
    int k = Arrays.binarySearch(segmentStarts, (long) Math.floor(index));
    k = Math.max(0, k < 0 ? -k - 2 : k);
    return segmentTimes[k] + (index - segmentStarts[k]) * intervalSeconds;
  }

  /**
   * How many unbroken runs of samples there are.
   *
   * @return at least 1
   */
  public final int segments() {
    return segmentStarts.length;
  }

  /**
   * Where a segment starts.
   *
   * @param segment from 0; {@link #segments()} gives the end of the last one
   * @return index of its first sample
   */
  public final long segmentStart(int segment) {
    return segment == segmentStarts.length ? size : segmentStarts[segment];
  }

  @Override
  public final Interval span() {
    return new Interval(startSeconds, timeOf(size));
  }
}
