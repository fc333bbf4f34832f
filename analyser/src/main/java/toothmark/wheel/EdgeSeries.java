package toothmark.wheel;

import java.util.Arrays;
import toothmark.edges.EdgeTrain;

/**
 * Edges made ready for labelling: times, the local edge interval, and what each edge's strength
 * says for and against its being a tooth.
 */
final class EdgeSeries {

  /** Intervals on each side that make the local interval. */
  private static final int REACH = 12;

  /** How far before and behind an edge the speed may still bear on it, in edges. */
  private static final int ASIDE = 8;

  /** By less than this the local interval differs for no reason. */
  private static final double CHANGES = 1.4;

  /** The local interval is worked out at every so many edges. */
  private static final int STRIDE = 4;

  /** Weaker edges do not count for the local interval. */
  private static final double COUNTS = 0.4;

  /** Edges could not follow each other if their times were less certain, in intervals. */
  private static final double MOST_DOUBT = 0.2;

  private static final double BLUNT = 5;
  private static final double STRENGTH_SPREAD = 0.25;
  private static final double MOST_AGAINST = 5.0;

  final double[] times;
  final double[] uncertainties;
  final double[] strengths;

  /** How long the flux stays near each edge's extremum, s; 0 where it is not known. */
  final double[] widths;

  /** Median interval between edges around each, s. */
  final double[] intervals;

  /**
   * The longest of the local intervals around, before and behind each edge, s: at first fire the
   * speed before the edge tells what may happen, in a stall the speed behind it.
   */
  final double[] slowest;

  /** What the strength costs when the edge is taken for a sound tooth, nats. */
  final double[] toothNats;

  private EdgeSeries(
      double[] times, double[] uncertainties, double[] strengths, double[] widths, double[] pace) {
    this.times = times;
    this.widths = widths;
    this.uncertainties = uncertainties;
    this.strengths = strengths;
    this.intervals = pace;
    this.slowest = new double[times.length];
    this.toothNats = new double[times.length];
    for (int i = 0; i < times.length; i++) {
      double before = pace[Math.max(0, i - ASIDE)];
      double behind = pace[Math.min(times.length - 1, i + ASIDE)];
      double aside = Math.max(before, behind);
      slowest[i] = aside > CHANGES * pace[i] ? aside : pace[i];
      toothNats[i] = weakness(strengths[i], 1.0);
    }
  }

  static EdgeSeries of(EdgeTrain train) {
    int n = train.size();
    double[] t = train.times();
    double[] u = new double[n];
    double[] s = new double[n];
    double[] w = new double[n];
    for (int i = 0; i < n; i++) {
      w[i] = train.width(i);
      u[i] = train.uncertainty(i);
      s[i] = train.strength(i);
    }
    double[] intervals = localIntervals(t, s);
    for (int i = 0; i < n; i++) {
      u[i] = Math.min(u[i], MOST_DOUBT * intervals[i]);
    }
    return new EdgeSeries(t, u, s, w, intervals);
  }

  /** Median uncertainty of the edges' times, in local intervals. */
  double medianDoubt() {
    double[] d = doubts();
    Arrays.sort(d);
    return d.length == 0 ? 0 : d[d.length / 2];
  }

  private double[] doubts() {
    double[] d = new double[times.length];
    for (int i = 0; i < d.length; i++) {
      d[i] = uncertainties[i] / intervals[i];
    }
    return d;
  }

  /**
   * Share of the strong edges that are far less certain than those around: the crossing in a wide
   * slot, where the signal only creeps through zero.
   *
   * @param least doubt of a blunt edge, in local intervals
   */
  double bluntShare(double least) {
    int blunt = 0;
    int strong = 0;
    double[] doubts = doubts();
    Window window = new Window(doubts);
    for (int i = 0; i < doubts.length; i++) {
      double usual = window.medianAround(i);
      if (strengths[i] >= COUNTS) {
        strong++;
        blunt += doubts[i] > Math.max(least, BLUNT * usual) ? 1 : 0;
      }
    }
    return strong == 0 ? 0 : blunt / (double) strong;
  }

  int size() {
    return times.length;
  }

  /** What the strength costs when the edge is taken for a tooth that is usually so strong, nats. */
  double toothNats(int i, double expected) {
    return expected == 1 ? toothNats[i] : weakness(strengths[i], expected);
  }

  /**
   * Cost of an edge weaker than it should be.
   *
   * @param strength found
   * @param expected of that tooth
   * @return nats, 0 when it is as strong as expected or stronger
   */
  static double weakness(double strength, double expected) {
    double z = Math.max(0, expected - strength) / STRENGTH_SPREAD;
    return Math.min(0.5 * z * z, MOST_AGAINST);
  }

  private static double[] localIntervals(double[] t, double[] strength) {
    int n = t.length;
    double[] result = new double[n];
    if (n < 2) {
      Arrays.fill(result, 1.0);
      return result;
    }
    double[] strong = new double[n];
    int[] before = new int[n + 1];
    int m = 0;
    for (int i = 0; i < n; i++) {
      before[i] = m;
      if (strength[i] >= COUNTS) {
        strong[m++] = t[i];
      }
    }
    double[] use = m >= n / 4 + 2 ? Arrays.copyOf(strong, m) : t;
    double[] between = new double[use.length - 1];
    for (int i = 0; i < between.length; i++) {
      between[i] = use[i + 1] - use[i];
    }
    Window window = new Window(between);
    for (int i = 0; i < n; i += STRIDE) {
      int centre = use == t ? i : Math.min(before[i], m - 1);
      double v = Math.max(window.medianAround(centre), Double.MIN_NORMAL);
      Arrays.fill(result, i, Math.min(n, i + STRIDE), v);
    }
    return result;
  }

  /**
   * The values within reach of a place, none of them negative. Their median is looked for from the
   * last one, which it seldom is far from. The bits of such numbers are in the numbers' order, and
   * are compared without a branch, since which of two is larger nobody can predict.
   */
  private static final class Window {

    private final long[] values;
    private long median;

    Window(double[] values) {
      this.values = Arrays.stream(values).mapToLong(Double::doubleToRawLongBits).toArray();
    }

    /** The median around a place. */
    double medianAround(int centre) {
      int from = Math.max(0, centre - REACH);
      int to = Math.min(values.length, centre + REACH + 1);
      int middle = (to - from) / 2;
      while (true) {
        long smaller = 0;
        long larger = 0;
        for (int i = from; i < to; i++) {
          smaller += values[i] - median >>> 63;
          larger += median - values[i] >>> 63;
        }
        if (smaller > middle) {
          median = nextBelow(from, to);
        } else if (to - from - larger <= middle) {
          median = nextAbove(from, to);
        } else {
          return Double.longBitsToDouble(median);
        }
      }
    }

    private long nextBelow(int from, int to) {
      long next = 0;
      for (int i = from; i < to; i++) {
        next = Math.max(next, values[i] & values[i] - median >> 63);
      }
      return next;
    }

    private long nextAbove(int from, int to) {
      long next = Long.MAX_VALUE;
      for (int i = from; i < to; i++) {
        next = Math.min(next, values[i] | ~(median - values[i] >> 63) & Long.MAX_VALUE);
      }
      return next;
    }
  }
}
