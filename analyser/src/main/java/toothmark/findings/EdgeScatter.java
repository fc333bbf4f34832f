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
}
