package toothmark.findings;

import java.util.Arrays;
import toothmark.edges.EdgeTrain;

/**
 * How much the edges of one direction jitter, from their own times alone.
 *
 * <p>The fourth difference of five edges in a row, over their mean interval, is free of speed and
 * of any course of it that three intervals describe, so that compression hardly shows in it even
 * while cranking. Its standard deviation is root 70 times that of one edge. What a tooth out of
 * place adds is the same in every turn, so each is compared with that of a turn before.
 */
final class EdgeScatter {

  /** Further than this from the mean of the four an interval is not one pitch. */
  private static final double ONE_PITCH = 0.3;

  /** Sum of the squares of 1, -4, 6, -4 and 1. */
  private static final double GAIN_SQUARED = 70;

  private static final double FROM_MEDIAN = 1.4826;
  private static final int FEWEST = 20;

  private EdgeScatter() {}

  /**
   * Scatter of an edge as a share of a pitch.
   *
   * @param train edges of one direction
   * @param teeth of the wheel
   * @return standard deviation; 0 where there are too few edges to tell
   */
  static double pitches(EdgeTrain train, int teeth) {
    double[] bend = bends(train);
    double[] d = new double[bend.length];
    int n = 0;
    for (int i = teeth; i < bend.length; i++) {
      double change = bend[i] - bend[i - teeth];
      if (!Double.isNaN(change)) {
        d[n++] = Math.abs(change);
      }
    }
    double[] sorted = Arrays.copyOf(d, n);
    Arrays.sort(sorted);
    return n < FEWEST ? 0 : FROM_MEDIAN * sorted[n / 2] / Math.sqrt(2 * GAIN_SQUARED);
  }

  /** Fourth difference at each edge, pitches; NaN where the edges around are not a pitch apart. */
  private static double[] bends(EdgeTrain train) {
    double[] bend = new double[train.size()];
    Arrays.fill(bend, Double.NaN);
    for (int i = 2; i + 2 < train.size(); i++) {
      double mean = (train.time(i + 2) - train.time(i - 2)) / 4;
      if (onePitchEach(train, i - 2, mean)) {
        double beside = train.time(i - 1) + train.time(i + 1);
        double outer = train.time(i - 2) + train.time(i + 2);
        bend[i] = (outer - 4 * beside + 6 * train.time(i)) / mean;
      }
    }
    return bend;
  }

  private static boolean onePitchEach(EdgeTrain train, int first, double mean) {
    for (int i = first; i < first + 4; i++) {
      if (Math.abs(train.time(i + 1) - train.time(i) - mean) > ONE_PITCH * mean) {
        return false;
      }
    }
    return true;
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
