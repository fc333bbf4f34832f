package toothmark.timing;

/** Least squares for a few columns by Cholesky's method: fast, for use inside a search. */
final class NormalEquations {

  private final int columns;
  private final double[][] products;

  NormalEquations(int columns) {
    this.columns = columns;
    this.products = new double[columns + 1][columns + 1];
  }

  static NormalEquations of(double[][] rows, double[] values) {
    NormalEquations n = new NormalEquations(rows[0].length);
    double[] both = new double[rows[0].length + 1];
    for (int i = 0; i < rows.length; i++) {
      System.arraycopy(rows[i], 0, both, 0, rows[i].length);
      both[rows[i].length] = values[i];
      n.add(both, 1);
    }
    return n;
  }

  /**
   * Adds an observation.
   *
   * @param row its columns, then its value
   * @param weight reciprocal variance
   */
  void add(double[] row, double weight) {
    for (int j = 0; j <= columns; j++) {
      double left = weight * row[j];
      double[] sums = products[j];
      for (int k = 0; k <= j; k++) {
        sums[k] += left * row[k];
      }
    }
  }

  /** What the sums say; they are used up by it. */
  Solution solve() {
    double log = 0;
    for (int j = 0; j <= columns; j++) {
      for (int k = 0; k <= j; k++) {
        double sum = products[j][k];
        for (int m = 0; m < k; m++) {
          sum -= products[j][m] * products[k][m];
        }
        products[j][k] = k < j ? sum / products[k][k] : j < columns ? Math.sqrt(sum) : sum;
      }
      log += j < columns ? 2 * Math.log(products[j][j]) : 0;
    }
    return new Solution(log, Math.max(0, products[columns][columns]));
  }

  /**
   * What a search needs to know.
   *
   * @param logDeterminant logarithm of the determinant of X'X
   * @param residualSquares sum of squared residuals
   */
  record Solution(double logDeterminant, double residualSquares) {}
}
