package toothmark.capture;

import java.util.Arrays;

/**
 * The step of a recorder's clock, from the times that it wrote: a logic analyser that looks every
 * two microseconds may write nanoseconds, but all its times are whole steps apart.
 */
final class ClockStep {

  /** Times are taken as whole numbers of this where the file states no unit of its own, s. */
  private static final double FINEST_SECONDS = 1e-9;

  /** A time may miss a whole number of steps by this share of one, for rounding. */
  private static final double ROUNDING = 0.01;

  /** Fewer different intervals may share a step by chance. */
  private static final int FEWEST_DIFFERENT = 8;

  /** A step nearly as long as an interval is the signal's own rhythm, not the recorder's. */
  private static final long FEWEST_STEPS = 8;

  private ClockStep() {}

  /**
   * Finds the step.
   *
   * @param times s, rising
   * @param stated unit in which times were written, s; 0 when not known
   * @return the largest step of which all intervals are whole multiples, s; {@code stated} when the
   *     times do not show one
   */
  static double of(double[] times, double stated) {
    double unit = stated > 0 ? stated : FINEST_SECONDS;
    long[] intervals = new long[Math.max(0, times.length - 2)];
    long step = 0;
    for (int i = 0; i < intervals.length; i++) {
      double units = (times[i + 2] - times[1]) / unit;
      double slack = ROUNDING + 4 * Math.ulp(times[i + 2]) / unit;
      if (Math.abs(units - Math.rint(units)) > slack || Math.abs(units) > 1e15) {
        return stated;
      }
      intervals[i] = Math.round((times[i + 2] - times[i + 1]) / unit);
      step = commonDivisor(step, intervals[i]);
    }
    long[] different = Arrays.stream(intervals).distinct().sorted().toArray();
    boolean shown = different.length >= FEWEST_DIFFERENT && different[0] >= FEWEST_STEPS * step;
    return shown && step > 0 ? step * unit : stated;
  }

  private static long commonDivisor(long a, long b) {
    return b == 0 ? a : commonDivisor(b, a % b);
  }
}
