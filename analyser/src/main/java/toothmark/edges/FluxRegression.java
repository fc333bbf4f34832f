package toothmark.edges;

import org.apache.commons.math3.linear.Array2DRowRealMatrix;
import org.apache.commons.math3.linear.ArrayRealVector;
import org.apache.commons.math3.linear.DecompositionSolver;
import org.apache.commons.math3.linear.RealMatrix;
import org.apache.commons.math3.linear.SingularValueDecomposition;

/**
 * Weighted least squares of steps of flux on a hum and its harmonics.
 *
 * <p>Beside the hum stand the teeth, the offset, and a part of the teeth that beats with the same
 * frequency: run-out makes maxima higher and minima lower, hum moves both alike.
 */
final class FluxRegression {

  private static final int NUISANCE = 4;

  private final double unit;
  private final double[] coefficients;
  private final double[] variances;
  private final double left;

  private FluxRegression(
      double unit, double[] coefficients, double[] variances, double squaresLeft) {
    this.unit = unit;
    this.coefficients = coefficients;
    this.variances = variances;
    this.left = squaresLeft;
  }

  /**
   * Fits.
   *
   * @param s steps
   * @param cyclesPerSample frequency of the fundamental
   * @param harmonics how many multiples, at least 1
   */
  static FluxRegression of(FluxSteps s, double cyclesPerSample, int harmonics) {
    int p = NUISANCE + 2 * harmonics;
    double unit = s.unit();
    double[][] normal = new double[p][p];
    double[] right = new double[p];
    double[] row = new double[p];
    double total = 0;
    double count = 0;
    for (int i = 0; i < s.size(); i++) {
      fillRow(row, s, i, cyclesPerSample);
      double w = s.weights[i];
      double d = s.steps[i] / unit;
      total += w * d * d;
      count += w;
      for (int a = 0; a < p; a++) {
        right[a] += w * row[a] * d;
        for (int b = 0; b < p; b++) {
          normal[a][b] += w * row[a] * row[b];
        }
      }
    }
    return solve(unit, normal, right, total, count);
  }

  /** Sets the regressors of one step, in its own unit. */
  private static void fillRow(double[] row, FluxSteps s, int i, double cyclesPerSample) {
    double unit = s.unit();
    double from = 2 * Math.PI * cyclesPerSample * s.from[i];
    double to = 2 * Math.PI * cyclesPerSample * s.to[i];
    double usual = s.usual[i] / unit;
    row[0] = usual;
    row[1] = (to - from);
    row[2] = usual * Math.cos((from + to) / 2);
    row[3] = usual * Math.sin((from + to) / 2);
    for (int k = NUISANCE; k < row.length; k += 2) {
      int h = 1 + (k - NUISANCE) / 2;
      row[k] = Math.cos(h * to) - Math.cos(h * from);
      row[k + 1] = Math.sin(h * to) - Math.sin(h * from);
    }
  }

  private static FluxRegression solve(
      double unit, double[][] normal, double[] right, double total, double count) {
    int p = right.length;
    DecompositionSolver solver =
        new SingularValueDecomposition(new Array2DRowRealMatrix(normal, false)).getSolver();
    double[] x = solver.solve(new ArrayRealVector(right, false)).toArray();
    double left = total;
    for (int a = 0; a < p; a++) {
      left -= x[a] * right[a];
    }
    left = Math.max(0, left);
    RealMatrix inverse = solver.getInverse();
    double[] variances = new double[p];
    for (int a = 0; a < p; a++) {
      double v = inverse.getEntry(a, a) * left / Math.max(1, count - p);
      variances[a] = Math.max(Double.MIN_NORMAL, v);
    }
    return new FluxRegression(unit, x, variances, left);
  }

  /** Weighted sum of squares that the fit leaves, comparable between frequencies. */
  double squaresLeft() {
    return left;
  }

  /** Ratio of a harmonic's flux to its standard uncertainty. */
  double significance(int harmonic) {
    int k = NUISANCE + 2 * (harmonic - 1);
    double c = coefficients[k] * coefficients[k] / variances[k];
    double s = coefficients[k + 1] * coefficients[k + 1] / variances[k + 1];
    return Math.sqrt((c + s) / 2);
  }

  /** Flux of a harmonic's cosine, V samples. */
  double cosine(int harmonic) {
    return unit * coefficients[NUISANCE + 2 * (harmonic - 1)];
  }

  /** Flux of a harmonic's sine, V samples. */
  double sine(int harmonic) {
    return unit * coefficients[NUISANCE + 2 * (harmonic - 1) + 1];
  }
}
