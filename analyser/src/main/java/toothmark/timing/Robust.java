package toothmark.timing;

import java.util.Arrays;
import org.apache.commons.math3.stat.descriptive.rank.Median;

/** Estimates that a minority of wild values does not move. */
final class Robust {

  /** Makes the median absolute deviation of a normal distribution its standard deviation. */
  private static final double MAD_TO_SIGMA = 1.4826;

  private static final int ABSOLUTE_STEPS = 40;

  private Robust() {}

  static double median(double[] values) {
    return new Median().evaluate(values);
  }

  /** Standard deviation about zero by the median of absolute values. */
  static double sigma(double[] residuals) {
    return MAD_TO_SIGMA * median(Arrays.stream(residuals).map(Math::abs).toArray());
  }

  /**
   * Coefficients of least absolute residuals, by reweighted least squares (Schlossmacher, J. Am.
   * Stat. Assoc. 68 (1973) 857, doi:10.1080/01621459.1973.10481436).
   *
   * @param rows one array for each observation
   * @param values observations
   * @param floor residuals below this count as this
   * @return the fit of the last step
   */
  static LinearFit leastAbsolute(double[][] rows, double[] values, double floor) {
    double[] weights = new double[values.length];
    Arrays.fill(weights, 1);
    LinearFit fit = LinearFit.of(rows, values, weights);
    for (int step = 0; step < ABSOLUTE_STEPS; step++) {
      double[] r = fit.residuals();
      for (int i = 0; i < r.length; i++) {
        weights[i] = 1 / Math.max(Math.abs(r[i]), floor);
      }
      fit = LinearFit.of(rows, values, weights);
    }
    return fit;
  }
}
