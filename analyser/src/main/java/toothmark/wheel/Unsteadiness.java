package toothmark.wheel;

import java.util.Arrays;
import toothmark.edges.EdgeTrain;

/** How unsteadily edges follow each other. */
final class Unsteadiness {

  /** Weaker edges are flickers and left out. */
  private static final double FLICKER = 0.3;

  private Unsteadiness() {}

  /**
   * Median size of the second difference of the logarithm of the interval.
   *
   * @param train edges
   * @return 0 for a steady or steadily changing train; infinite for fewer than four edges
   */
  static double of(EdgeTrain train) {
    double[] t = new double[train.size()];
    int m = 0;
    for (int i = 0; i < t.length; i++) {
      if (train.strength(i) >= FLICKER) {
        t[m++] = train.time(i);
      }
    }
    int n = m - 3;
    if (n < 1) {
      return Double.POSITIVE_INFINITY;
    }
    double[] d = new double[n];
    for (int i = 0; i < n; i++) {
      double a = Math.log(t[i + 1] - t[i]);
      double b = Math.log(t[i + 2] - t[i + 1]);
      double c = Math.log(t[i + 3] - t[i + 2]);
      d[i] = Math.abs(a - 2 * b + c);
    }
    Arrays.sort(d);
    return d[n / 2];
  }
}
