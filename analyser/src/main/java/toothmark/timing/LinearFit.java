package toothmark.timing;

import org.apache.commons.math3.linear.Array2DRowRealMatrix;
import org.apache.commons.math3.linear.ArrayRealVector;
import org.apache.commons.math3.linear.MatrixUtils;
import org.apache.commons.math3.linear.QRDecomposition;
import org.apache.commons.math3.linear.RealMatrix;

/**
 * Weighted linear least squares by Householder QR, with columns brought to one scale first.
 *
 * <p>Weights are reciprocal variances; a row of prior knowledge is a row like any other.
 */
final class LinearFit {

  private final double[] coefficients;
  private final RealMatrix unscaledCovariance;
  private final double[] residuals;
  private final double weightedSquares;

  private LinearFit(
      double[] coefficients, RealMatrix unscaledCovariance, double[] residuals, double squares) {
    this.coefficients = coefficients;
    this.unscaledCovariance = unscaledCovariance;
    this.residuals = residuals;
    this.weightedSquares = squares;
  }

  /**
   * Fits y = X b.
   *
   * @param rows X, one array for each observation; more rows than columns or as many
   * @param values y
   * @param weights reciprocal variances, not negative
   * @return the fit
   * @throws org.apache.commons.math3.linear.SingularMatrixException if the columns depend on each
   *     other
   */
  static LinearFit of(double[][] rows, double[] values, double[] weights) {
    int n = rows.length;
    int p = rows[0].length;
    double[] scale = columnNorms(rows, weights);
    double[][] x = new double[n][p];
    double[] y = new double[n];
    for (int i = 0; i < n; i++) {
      double root = Math.sqrt(weights[i]);
      y[i] = root * values[i];
      for (int j = 0; j < p; j++) {
        x[i][j] = root * rows[i][j] / scale[j];
      }
    }
    QRDecomposition qr = new QRDecomposition(new Array2DRowRealMatrix(x, false), 1e-13);
    double[] b = qr.getSolver().solve(new ArrayRealVector(y, false)).toArray();
    RealMatrix inverse = inverseOfUpper(qr.getR().getSubMatrix(0, p - 1, 0, p - 1));
    RealMatrix covariance = inverse.multiply(inverse.transpose());
    for (int j = 0; j < p; j++) {
      b[j] /= scale[j];
      for (int k = 0; k < p; k++) {
        covariance.setEntry(j, k, covariance.getEntry(j, k) / scale[j] / scale[k]);
      }
    }
    return withResiduals(rows, values, weights, b, covariance);
  }

  private static LinearFit withResiduals(
      double[][] rows, double[] values, double[] weights, double[] b, RealMatrix covariance) {
    double[] residuals = new double[values.length];
    double squares = 0;
    for (int i = 0; i < values.length; i++) {
      residuals[i] = values[i] - dot(rows[i], b);
      squares += weights[i] * residuals[i] * residuals[i];
    }
    return new LinearFit(b, covariance, residuals, squares);
  }

  private static double[] columnNorms(double[][] rows, double[] weights) {
    double[] norms = new double[rows[0].length];
    for (int j = 0; j < norms.length; j++) {
      for (int i = 0; i < rows.length; i++) {
        norms[j] += weights[i] * rows[i][j] * rows[i][j];
      }
      norms[j] = norms[j] > 0 ? Math.sqrt(norms[j]) : 1;
    }
    return norms;
  }

  private static RealMatrix inverseOfUpper(RealMatrix r) {
    RealMatrix inverse = MatrixUtils.createRealIdentityMatrix(r.getRowDimension());
    for (int j = 0; j < r.getRowDimension(); j++) {
      var column = inverse.getColumnVector(j);
      MatrixUtils.solveUpperTriangularSystem(r, column);
      inverse.setColumnVector(j, column);
    }
    return inverse;
  }

  static double dot(double[] a, double[] b) {
    double sum = 0;
    for (int i = 0; i < a.length; i++) {
      sum += a[i] * b[i];
    }
    return sum;
  }

  double coefficient(int index) {
    return coefficients[index];
  }

  double[] coefficients() {
    return coefficients.clone();
  }

  /** Covariance of two coefficients when the weights are true reciprocal variances. */
  double covariance(int a, int b) {
    return unscaledCovariance.getEntry(a, b);
  }

  double[] residuals() {
    return residuals.clone();
  }

  /** Sum of weighted squared residuals. */
  double weightedSquares() {
    return weightedSquares;
  }
}
