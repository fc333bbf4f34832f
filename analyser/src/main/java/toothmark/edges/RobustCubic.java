package toothmark.edges;

import java.util.Arrays;

/**
 * A cubic laid through points of which some are wild, such as a spark burst across a crossing.
 *
 * <p>Iteratively reweighted least squares: least absolute deviations first, then Tukey's bisquare
 * (Holland and Welsch, Commun. Stat. A 6(9), 1977, 813-827), with the median absolute residual as
 * scale.
 */
final class RobustCubic {

  private static final double BISQUARE = 4.685;
  private static final int ROUNDS = 6;
  private static final double MAD_TO_SIGMA = 1.4826;

  private RobustCubic() {}

  /**
   * Fits y at i / half for i from -half to half.
   *
   * @param weight set to the final weights, 0 to 1
   * @param leastScale the noise of the points; the scale never goes below it
   * @param c coefficients from constant to cube, replaced
   */
  static void fit(double[] y, double[] weight, int half, double leastScale, double[] c) {
    int n = 2 * half + 1;
    double[] residual = new double[n];
    for (int round = 0; round < ROUNDS; round++) {
      residuals(y, half, c, residual);
      double scale = Math.max(leastScale, MAD_TO_SIGMA * medianOfMagnitudes(residual));
      boolean absolute = round < ROUNDS / 2;
      for (int i = 0; i < n; i++) {
        double r = Math.abs(residual[i]) / scale;
        double u = r / BISQUARE;
        weight[i] = absolute ? 1 / Math.max(1, r) : u < 1 ? (1 - u * u) * (1 - u * u) : 0;
      }
      solve(y, weight, half, c);
    }
  }

  private static void residuals(double[] y, int half, double[] c, double[] residual) {
    for (int i = -half; i <= half; i++) {
      double x = (double) i / half;
      residual[i + half] = y[i + half] - (c[0] + x * (c[1] + x * (c[2] + x * c[3])));
    }
  }

  private static double medianOfMagnitudes(double[] values) {
    double[] m = values.clone();
    for (int i = 0; i < m.length; i++) {
      m[i] = Math.abs(m[i]);
    }
    Arrays.sort(m);
    return m[m.length / 2];
  }

  private static void solve(double[] y, double[] weight, int half, double[] c) {
    double[] moments = new double[7];
    double[] right = new double[4];
    for (int i = -half; i <= half; i++) {
      double x = (double) i / half;
      double p = weight[i + half];
      for (int k = 0; k < 7; k++) {
        moments[k] += p;
        if (k < 4) {
          right[k] += p * y[i + half];
        }
        p *= x;
      }
    }
    double[][] rows = new double[4][5];
    for (int r = 0; r < 4; r++) {
      System.arraycopy(moments, r, rows[r], 0, 4);
      rows[r][4] = right[r];
    }
    eliminate(rows);
    for (int r = 3; r >= 0; r--) {
      double sum = rows[r][4];
      for (int k = r + 1; k < 4; k++) {
        sum -= rows[r][k] * c[k];
      }
      c[r] = sum / rows[r][r];
    }
  }

  /** Normal equations are positive definite, so the pivots stand on the diagonal. */
  private static void eliminate(double[][] rows) {
    for (int p = 0; p < 4; p++) {
      for (int r = p + 1; r < 4; r++) {
        double factor = rows[r][p] / rows[p][p];
        for (int k = p; k < 5; k++) {
          rows[r][k] -= factor * rows[p][k];
        }
      }
    }
  }
}
