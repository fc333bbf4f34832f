package toothmark.timing;

/** Least squares for a few columns by Cholesky's method: fast, for use inside a search. */
final class NormalEquations {

  private final double logDeterminant;
  private final double residualSquares;

  private NormalEquations(double logDeterminant, double residualSquares) {
    this.logDeterminant = logDeterminant;
    this.residualSquares = residualSquares;
  }

  static NormalEquations of(double[][] rows, double[] values) {
    int p = rows[0].length;
    double[][] a = new double[p + 1][p + 1];
    for (int i = 0; i < rows.length; i++) {
      for (int j = 0; j <= p; j++) {
        double left = j < p ? rows[i][j] : values[i];
        for (int k = 0; k <= j; k++) {
          a[j][k] += left * (k < p ? rows[i][k] : values[i]);
        }
      }
    }
    double log = 0;
    for (int j = 0; j <= p; j++) {
      for (int k = 0; k <= j; k++) {
        double sum = a[j][k];
        for (int m = 0; m < k; m++) {
          sum -= a[j][m] * a[k][m];
        }
        a[j][k] = k < j ? sum / a[k][k] : j < p ? Math.sqrt(sum) : sum;
      }
      log += j < p ? 2 * Math.log(a[j][j]) : 0;
    }
    return new NormalEquations(log, Math.max(0, a[p][p]));
  }

  /** Logarithm of the determinant of X'X. */
  double logDeterminant() {
    return logDeterminant;
  }

  /** Sum of squared residuals. */
  double residualSquares() {
    return residualSquares;
  }
}
