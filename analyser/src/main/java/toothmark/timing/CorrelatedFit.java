package toothmark.timing;

import org.apache.commons.math3.analysis.MultivariateFunction;
import org.apache.commons.math3.optim.InitialGuess;
import org.apache.commons.math3.optim.MaxEval;
import org.apache.commons.math3.optim.PointValuePair;
import org.apache.commons.math3.optim.SimpleValueChecker;
import org.apache.commons.math3.optim.nonlinear.scalar.GoalType;
import org.apache.commons.math3.optim.nonlinear.scalar.ObjectiveFunction;
import org.apache.commons.math3.optim.nonlinear.scalar.noderiv.NelderMeadSimplex;
import org.apache.commons.math3.optim.nonlinear.scalar.noderiv.SimplexOptimizer;

/**
 * Generalised least squares where errors follow each other: a first-order autoregressive part, a
 * white part, and a known part of its own size at each observation.
 *
 * <p>Errors are whitened by a scalar Kalman filter, the same one for values and columns, and the
 * three free numbers are those of greatest restricted likelihood (Patterson and Thompson,
 * Biometrika 58 (1971) 545, doi:10.1093/biomet/58.3.545; Harvey and Phillips, Biometrika 66 (1979)
 * 49, doi:10.1093/biomet/66.1.49).
 */
final class CorrelatedFit {

  /** Beyond this an error that wanders cannot be told from a trend. */
  private static final double LARGEST_CORRELATION = 0.98;

  private static final int FEWEST_FOR_CORRELATION = 12;
  private static final int MOST_EVALUATIONS = 600;

  private final double[][] rows;
  private final double[] knownVariance;
  private final Errors errors;
  private final LinearFit fit;

  private CorrelatedFit(double[][] rows, double[] knownVariance, Errors errors, LinearFit fit) {
    this.rows = rows;
    this.knownVariance = knownVariance;
    this.errors = errors;
    this.fit = fit;
  }

  /**
   * What the errors are like, beside the known part.
   *
   * @param white variance of the white part
   * @param wandering stationary variance of the autoregressive part
   * @param correlation of one observation's wandering part with the next, 0 to 1
   */
  record Errors(double white, double wandering, double correlation) {

    /** From unbounded numbers, so that a search need not know the bounds. */
    private static Errors of(double[] free) {
      double c = LARGEST_CORRELATION / (1 + Math.exp(-free[2]));
      return new Errors(Math.exp(free[0]), Math.exp(free[1]), c);
    }
  }

  /**
   * Fits values = rows times coefficients.
   *
   * @param rows one array for each observation, in the order in which errors follow each other
   * @param values observations
   * @param knownVariance variance of the known part of each error, not negative
   * @return the fit
   */
  static CorrelatedFit of(double[][] rows, double[] values, double[] knownVariance) {
    double[] unit = new double[values.length];
    java.util.Arrays.fill(unit, 1);
    LinearFit start = LinearFit.of(rows, values, unit);
    int dof = Math.max(1, values.length - rows[0].length);
    double variance = Math.max(start.weightedSquares() / dof, 1e-12);
    MultivariateFunction loss =
        values.length < FEWEST_FOR_CORRELATION
            ? free -> loss(rows, values, knownVariance, whiteOnly(free))
            : free -> loss(rows, values, knownVariance, Errors.of(free));
    double[] best = search(loss, Math.log(variance / 2));
    Errors errors = values.length < FEWEST_FOR_CORRELATION ? whiteOnly(best) : Errors.of(best);
    Whitened w = Whitened.of(rows, values, knownVariance, errors);
    return new CorrelatedFit(rows, knownVariance, errors, w.fit());
  }

  private static Errors whiteOnly(double[] free) {
    return new Errors(Math.exp(free[0]), 0, 0);
  }

  private static double[] search(MultivariateFunction loss, double logVariance) {
    PointValuePair best = null;
    for (double correlation : new double[] {-1.5, 2.0}) {
      PointValuePair found =
          new SimplexOptimizer(new SimpleValueChecker(1e-9, 1e-5))
              .optimize(
                  new MaxEval(MOST_EVALUATIONS),
                  new ObjectiveFunction(loss),
                  GoalType.MINIMIZE,
                  new InitialGuess(new double[] {logVariance, logVariance - 1, correlation}),
                  new NelderMeadSimplex(new double[] {1, 1, 1}));
      best = best == null || found.getValue() < best.getValue() ? found : best;
    }
    return best.getPoint();
  }

  /** Twice the negative logarithm of the restricted likelihood. */
  private static double loss(
      double[][] rows, double[] values, double[] knownVariance, Errors errors) {
    Whitened w = Whitened.of(rows, values, knownVariance, errors);
    return w.minusTwiceLogLikelihood();
  }

  double coefficient(int index) {
    return fit.coefficient(index);
  }

  double covariance(int a, int b) {
    return fit.covariance(a, b);
  }

  Errors errors() {
    return errors;
  }

  /** How the coefficients move when a vector is added to the observations. */
  double[] project(double[] vector) {
    return Whitened.of(rows, vector, knownVariance, errors).fit().coefficients();
  }

  /** How many independent observations would carry as much, by the errors' correlation. */
  double effectiveSize() {
    double known = 0;
    for (double v : knownVariance) {
      known += v / knownVariance.length;
    }
    double total = known + errors.white + errors.wandering;
    double lagOne = errors.wandering * errors.correlation / total;
    return rows.length * (1 - lagOne) / (1 + lagOne);
  }

  /** Observations whose errors are independent and of variance one. */
  private static final class Whitened {

    private final double[][] rows;
    private final double[] values;
    private double logDeterminant;

    private Whitened(int n, int p) {
      rows = new double[n][p];
      values = new double[n];
    }

    static Whitened of(double[][] x, double[] y, double[] knownVariance, Errors e) {
      int p = x[0].length;
      Whitened w = new Whitened(y.length, p);
      double[] state = new double[p + 1];
      double spread = e.wandering;
      for (int i = 0; i < y.length; i++) {
        double variance = spread + knownVariance[i] + e.white;
        double root = Math.sqrt(variance);
        double gain = spread / variance;
        for (int j = 0; j <= p; j++) {
          double innovation = (j < p ? x[i][j] : y[i]) - state[j];
          state[j] = e.correlation * (state[j] + gain * innovation);
          w.put(i, j, innovation / root);
        }
        w.logDeterminant += Math.log(variance);
        double left = spread * (1 - gain);
        spread = e.correlation * e.correlation * (left - e.wandering) + e.wandering;
      }
      return w;
    }

    private void put(int i, int j, double value) {
      if (j < rows[i].length) {
        rows[i][j] = value;
      } else {
        values[i] = value;
      }
    }

    LinearFit fit() {
      double[] unit = new double[values.length];
      java.util.Arrays.fill(unit, 1);
      return LinearFit.of(rows, values, unit);
    }

    /** By the normal equations: the search needs many of these, and not to the last digit. */
    double minusTwiceLogLikelihood() {
      NormalEquations n = NormalEquations.of(rows, values);
      return logDeterminant + n.logDeterminant() + n.residualSquares();
    }
  }
}
