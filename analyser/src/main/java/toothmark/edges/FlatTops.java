package toothmark.edges;

/**
 * Counts samples that stand in runs of equal ones at the highest or lowest value.
 *
 * <p>A new extreme starts the count again, so one pass is enough.
 */
final class FlatTops {

  private static final int FLAT_RUN = 3;

  private double top = Double.NEGATIVE_INFINITY;
  private double bottom = Double.POSITIVE_INFINITY;
  private long highRun;
  private long lowRun;
  private long high;
  private long low;

  /** Adds samples from (inclusive) to (exclusive), of which the extremes are known. */
  void add(double[] v, int from, int to, double min, double max) {
    if (max < top && min > bottom) {
      highRun = 0;
      lowRun = 0;
      return;
    }
    for (int i = from; i < to; i++) {
      add(v[i]);
    }
  }

  private void add(double v) {
    if (v > top) {
      top = v;
      highRun = 0;
      high = 0;
    }
    if (v < bottom) {
      bottom = v;
      lowRun = 0;
      low = 0;
    }
    highRun = v == top ? highRun + 1 : 0;
    lowRun = v == bottom ? lowRun + 1 : 0;
    high += newlyFlat(highRun);
    low += newlyFlat(lowRun);
  }

  private static long newlyFlat(long run) {
    return run < FLAT_RUN ? 0 : run == FLAT_RUN ? FLAT_RUN : 1;
  }

  long high() {
    return high;
  }

  long low() {
    return low;
  }
}
