package toothmark.edges;

import toothmark.capture.SampledSignal;

/**
 * Crossings of the middle between two levels, with hysteresis of 15 % of the span on each side.
 *
 * <p>The time is where the line between the samples beside the middle crosses it. Only where both
 * are on their way is the edge resolved. One sample that a fast step caught on its way says nothing
 * of its course to the next, so the step could lie anywhere in the interval, as one could that no
 * sample caught, which gets the interval's middle: both have the uncertainty of a rectangle,
 * interval over the square root of 12 (GUM, JCGM 100:2008, 4.3.7).
 */
final class LevelCrossings {

  private static final double HYSTERESIS = 0.15;

  /** A sample this near to its level (share of the span) has not begun to switch. */
  private static final double SETTLED = 0.15;

  private static final int BLOCK = 1 << 16;
  private static final int LOOK_BACK = 1 << 12;

  /** Takes crossings in time order. */
  interface Sink {
    void crossing(EdgeDirection direction, double time, double uncertainty);
  }

  private final SampledSignal signal;
  private final LogicLevels levels;
  private final double noise;
  private final Sink sink;
  private final double up;
  private final double down;
  private boolean high;

  private LevelCrossings(SampledSignal signal, LogicLevels levels, double noise, Sink sink) {
    this.signal = signal;
    this.levels = levels;
    this.noise = noise;
    this.sink = sink;
    this.up = levels.middle() + HYSTERESIS * levels.span();
    this.down = levels.middle() - HYSTERESIS * levels.span();
  }

  static void find(SampledSignal signal, LogicLevels levels, double noise, Sink sink) {
    LevelCrossings c = new LevelCrossings(signal, levels, noise, sink);
    double[] fresh = new double[(int) Math.min(BLOCK, signal.size())];
    double[] v = new double[fresh.length + LOOK_BACK];
    signal.read(0, fresh, 1);
    c.high = fresh[0] > levels.middle();
    int kept = 0;
    for (long first = 0; first < signal.size(); first += fresh.length) {
      int n = (int) Math.min(fresh.length, signal.size() - first);
      signal.read(first, fresh, n);
      System.arraycopy(fresh, 0, v, kept, n);
      c.scan(v, kept, kept + n, first - kept);
      int keep = Math.min(LOOK_BACK, kept + n);
      System.arraycopy(v, kept + n - keep, v, 0, keep);
      kept = keep;
    }
  }

  private void scan(double[] v, int from, int to, long origin) {
    int i = from;
    while (i < to) {
      if (high) {
        while (i < to && v[i] >= down) {
          i++;
        }
      } else {
        while (i < to && v[i] <= up) {
          i++;
        }
      }
      if (i < to) {
        emit(v, i, origin);
        high = !high;
      }
    }
  }

  private void emit(double[] v, int at, long origin) {
    double middle = levels.middle();
    int j = at;
    while (j > 0 && (high ? v[j - 1] < middle : v[j - 1] > middle)) {
      j--;
    }
    j = Math.max(1, j);
    double before = v[j - 1];
    double after = v[j];
    double settled = SETTLED * levels.span();
    boolean leaves = Math.abs(before - (high ? levels.high() : levels.low())) < settled;
    boolean arrives = Math.abs(after - (high ? levels.low() : levels.high())) < settled;
    double share = leaves && arrives ? 0.5 : (middle - before) / (after - before);
    double u = leaves || arrives ? 1 / Math.sqrt(12) : noise / Math.abs(after - before);
    double time = signal.timeOf(origin + j - 1 + share);
    sink.crossing(
        high ? EdgeDirection.FALLING : EdgeDirection.RISING,
        time,
        Math.min(1, u) * signal.intervalSeconds());
  }
}
