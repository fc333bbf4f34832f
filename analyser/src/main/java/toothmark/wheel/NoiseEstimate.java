package toothmark.wheel;

import java.util.Arrays;
import org.apache.commons.math3.util.KthSelector;

/**
 * A first guess of the noise, from the edges alone.
 *
 * <p>The second difference of edge times is free of speed and of steady acceleration. White jitter
 * makes neighbouring second differences anticorrelated (variance 6, lag-one covariance -4), a
 * wandering speed does not; that tells the two apart. A low quantile keeps gaps, strays and lost
 * teeth out.
 */
final class NoiseEstimate {

  private static final int MOST = 20_000;
  private static final double QUANTILE = 0.2;
  private static final double NORMAL_QUANTILE = 0.2533;
  private static final double TRIM = 3.5;
  private static final double LEAST_JITTER = 0.0015;
  private static final double MOST_JITTER = 0.12;
  private static final double STRAY_NATS = 4.0;
  private static final double LOSS_NATS = 4.0;
  private static final double LOSS_GROWTH = 1.5;

  private NoiseEstimate() {}

  /**
   * Estimates the noise of a stretch.
   *
   * @param edges the series
   * @param from first edge
   * @param to end, exclusive
   * @return jitter and roughness in edge intervals, and customary rates of strays and losses
   */
  static NoiseModel of(EdgeSeries edges, int from, int to) {
    int lo = Math.max(from + 1, 1);
    int hi = Math.min(to - 1, lo + MOST);
    if (hi - lo < 4) {
      return new NoiseModel(0.02, 0.05, 1.0, STRAY_NATS, LOSS_NATS, LOSS_GROWTH);
    }
    double[] x = new double[hi - lo];
    for (int i = lo; i < hi; i++) {
      double[] t = edges.times;
      x[i - lo] = (t[i + 1] - 2 * t[i] + t[i - 1]) / edges.intervals[i];
    }
    double sd = lowSpread(x);
    double[] moments = moments(x, TRIM * sd);
    double jitter2 = Math.max(0, (0.7 * moments[0] - moments[1]) / 8.2);
    double wander2 = Math.max(moments[0] - 6 * jitter2, 0.02 * moments[0]);
    double jitter = Math.min(MOST_JITTER, Math.max(LEAST_JITTER, Math.sqrt(jitter2)));
    double reference = reference(edges, lo, hi);
    return new NoiseModel(
        jitter, Math.max(1e-4, Math.sqrt(wander2)), reference, STRAY_NATS, LOSS_NATS, LOSS_GROWTH);
  }

  private static double lowSpread(double[] x) {
    double[] a = new double[x.length];
    for (int i = 0; i < x.length; i++) {
      a[i] = Math.abs(x[i]);
    }
    double low = new KthSelector().select(a, null, (int) (QUANTILE * a.length));
    return Math.max(1e-5, low / NORMAL_QUANTILE);
  }

  /** Variance and lag-one covariance of what is within the limit. */
  private static double[] moments(double[] x, double limit) {
    double square = 0;
    double product = 0;
    int n = 0;
    int pairs = 0;
    for (int i = 0; i < x.length; i++) {
      if (Math.abs(x[i]) < limit) {
        square += x[i] * x[i];
        n++;
        if (i > 0 && Math.abs(x[i - 1]) < limit) {
          product += x[i] * x[i - 1];
          pairs++;
        }
      }
    }
    return new double[] {square / Math.max(1, n), product / Math.max(1, pairs)};
  }

  private static double reference(EdgeSeries edges, int lo, int hi) {
    double[] a = Arrays.copyOfRange(edges.intervals, lo, hi);
    return new KthSelector().select(a, null, a.length / 2);
  }
}
