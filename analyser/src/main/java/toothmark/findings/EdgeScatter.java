package toothmark.findings;

import java.util.Arrays;
import toothmark.edges.EdgeTrain;

/**
 * How much the edges of one direction jitter, from their own times alone.
 *
 * <p>The second difference of three edges in a row, over the mean of their two intervals, is free
 * of speed and nearly so of steady acceleration. Its standard deviation is root 6 times that of one
 * edge.
 */
final class EdgeScatter {

  /** Further apart than this the two intervals are not both one pitch. */
  private static final double ONE_PITCH = 0.3;

  private static final double FROM_MEDIAN = 1.4826;
  private static final int FEWEST = 20;

  private EdgeScatter() {}

  /**
   * Scatter of an edge as a share of a pitch.
   *
   * @return standard deviation; 0 where there are too few edges to tell
   */
  static double pitches(EdgeTrain train) {
    double[] d = new double[Math.max(0, train.size() - 2)];
    int n = 0;
    for (int i = 1; i + 1 < train.size(); i++) {
      double before = train.time(i) - train.time(i - 1);
      double after = train.time(i + 1) - train.time(i);
      double change = 2 * (after - before) / (after + before);
      if (Math.abs(change) < ONE_PITCH) {
        d[n++] = change;
      }
    }
    if (n < FEWEST) {
      return 0;
    }
    double[] sorted = Arrays.copyOf(d, n);
    Arrays.sort(sorted);
    double middle = sorted[n / 2];
    double[] away = Arrays.stream(sorted).map(x -> Math.abs(x - middle)).sorted().toArray();
    return FROM_MEDIAN * away[n / 2] / Math.sqrt(6);
  }

  /**
   * Time from each edge to the next of the other train, as a share of its own interval.
   *
   * @return the median, 0 to 1; 0 where there are too few edges
   */
  static double pulse(EdgeTrain from, EdgeTrain to) {
    double[] share = new double[from.size()];
    int n = 0;
    int j = 0;
    for (int i = 0; i + 1 < from.size(); i++) {
      while (j < to.size() && to.time(j) <= from.time(i)) {
        j++;
      }
      if (j < to.size() && to.time(j) < from.time(i + 1)) {
        share[n++] = (to.time(j) - from.time(i)) / (from.time(i + 1) - from.time(i));
      }
    }
    double[] sorted = Arrays.copyOf(share, n);
    Arrays.sort(sorted);
    return n < FEWEST ? 0 : sorted[n / 2];
  }
}
