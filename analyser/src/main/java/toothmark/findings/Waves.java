package toothmark.findings;

import java.util.Arrays;
import org.apache.commons.math3.linear.Array2DRowRealMatrix;
import org.apache.commons.math3.linear.ArrayRealVector;
import org.apache.commons.math3.linear.QRDecomposition;
import org.apache.commons.math3.linear.RealVector;
import toothmark.wheel.WheelPattern;

/**
 * A robust fit of a constant and of one and two waves a turn to one value for each tooth.
 *
 * <p>Teeth far from the fit are left out of it (biweight, Beaton and Tukey, Technometrics 16 (1974)
 * 147-185), so that a bent tooth does not look like run-out.
 */
final class Waves {

  private static final int ROUNDS = 20;

  /** Two more than there are unknowns. */
  private static final int FEWEST = 7;

  /** Tuning of the biweight for 95 % efficiency. */
  private static final double BIWEIGHT = 4.685;

  private static final double FROM_MEDIAN = 1.4826;

  private final RealVector beta;
  private final double[] residuals;
  private final double scale;

  private Waves(RealVector beta, double[] residuals, double scale) {
    this.beta = beta;
    this.residuals = residuals;
    this.scale = scale;
  }

  static Waves fit(WheelPattern pattern, double[] y, double leastScale) {
    double[] weight = firstWeights(pattern);
    Waves w = solve(pattern, y, weight);
    for (int round = 0; round < ROUNDS; round++) {
      double c = BIWEIGHT * Math.max(leastScale, w.scale);
      for (int i = 0; i < y.length; i++) {
        double z = w.residuals[i] / c;
        weight[i] = Math.abs(z) < 1 ? (1 - z * z) * (1 - z * z) : 0;
      }
      w = solve(pattern, y, weight);
    }
    return w;
  }

  /** Without the teeth beside a gap, where the field is another, if there are enough others. */
  private static double[] firstWeights(WheelPattern pattern) {
    double[] others = new double[pattern.teeth()];
    for (int i = 0; i < others.length; i++) {
      others[i] = RimForm.besideUneven(pattern, i + 1) ? 0 : 1;
    }
    if (Arrays.stream(others).sum() < FEWEST) {
      Arrays.fill(others, 1);
    }
    return others;
  }

  private static Waves solve(WheelPattern pattern, double[] y, double[] weight) {
    double[][] x = new double[y.length][];
    double[] v = new double[y.length];
    for (int i = 0; i < y.length; i++) {
      double root = Math.sqrt(weight[i]) + 1e-9;
      x[i] = row(pattern.degreesAfterTooth1(i + 1));
      for (int j = 0; j < x[i].length; j++) {
        x[i][j] *= root;
      }
      v[i] = y[i] * root;
    }
    RealVector beta =
        new QRDecomposition(new Array2DRowRealMatrix(x, false))
            .getSolver()
            .solve(new ArrayRealVector(v, false));
    double[] residuals = new double[y.length];
    for (int i = 0; i < y.length; i++) {
      RealVector row = new ArrayRealVector(row(pattern.degreesAfterTooth1(i + 1)), false);
      residuals[i] = y[i] - beta.dotProduct(row);
    }
    return new Waves(beta, residuals, scale(residuals));
  }

  private static double[] row(double degrees) {
    double a = Math.toRadians(degrees);
    return new double[] {1, Math.cos(a), Math.sin(a), Math.cos(2 * a), Math.sin(2 * a)};
  }

  private static double scale(double[] residuals) {
    double[] size = Arrays.stream(residuals).map(Math::abs).sorted().toArray();
    return FROM_MEDIAN * size[size.length / 2];
  }

  /** What the fit leaves of a tooth's value. */
  double residual(int tooth) {
    return residuals[tooth - 1];
  }

  /** Standard deviation of what the fit leaves, from its median. */
  double scale() {
    return scale;
  }

  /** Where the wave of one a turn is highest, degrees after tooth 1. */
  double phase() {
    return Math.toDegrees(Math.atan2(beta.getEntry(2), beta.getEntry(1)));
  }

  /** Amplitude of the wave of one a turn, or with 3 of that of two. */
  double amplitude(int first) {
    return Math.hypot(beta.getEntry(first), beta.getEntry(first + 1));
  }
}
