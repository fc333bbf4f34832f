package toothmark.timing;

import org.apache.commons.math3.distribution.TDistribution;
import org.apache.commons.math3.stat.StatUtils;

/**
 * Fits a {@link Line} to readings at several speeds, with errors that may follow each other.
 *
 * <p>Variances are enlarged by Student's t, so that 1.96 standard uncertainties make a 95 %
 * interval also of few readings (JCGM 100:2008, G.3).
 */
final class LineFit {

  private static final double NORMAL_95 = 1.959964;

  /** Under this relative spread of speed the readings hold no slope. */
  private static final double LEAST_SPREAD = 1e-6;

  /** Variance of a delay of which nothing is known, square microseconds. */
  private static final double UNKNOWN_DELAY_VARIANCE = 1e12;

  /** A nuisance that moves readings less than this does not count, square degrees. */
  private static final double NEGLIGIBLE = 1e-8;

  private final Line line;
  private final CorrelatedFit fit;
  private final boolean sloped;
  private final boolean nuisance;

  private LineFit(CorrelatedFit fit, double centre, boolean sloped, boolean nuisance) {
    this.fit = fit;
    this.sloped = sloped;
    this.nuisance = nuisance;
    int p = 1 + (sloped ? 1 : 0);
    double dof = Math.max(1, fit.effectiveSize() - p);
    double coverage = new TDistribution(dof).inverseCumulativeProbability(0.975) / NORMAL_95;
    double[] b = settled(coefficients());
    Line found =
        sloped
            ? new Line(centre, b[0], b[1], covariance(0, 0), covariance(1, 1), covariance(0, 1))
            : new Line(centre, b[0], 0, covariance(0, 0), UNKNOWN_DELAY_VARIANCE, 0);
    this.line = found.withVarianceTimes(coverage * coverage);
  }

  /**
   * Fits readings in the order in which their errors follow each other.
   *
   * @param rpm speeds, rev/min, at least 3
   * @param degrees readings
   * @param knownVariance variance of the known part of each error, square degrees
   * @return the fit; without a slope in it the delay is 0 and its variance huge
   */
  static LineFit of(double[] rpm, double[] degrees, double[] knownVariance) {
    return of(rpm, degrees, knownVariance, new double[rpm.length]);
  }

  /**
   * Fits readings that one more, half-known thing moves.
   *
   * @param rpm as above
   * @param degrees as above
   * @param knownVariance as above
   * @param nuisance how each reading moves with one standard uncertainty of that thing
   * @return as above
   */
  static LineFit of(double[] rpm, double[] degrees, double[] knownVariance, double[] nuisance) {
    double centre = StatUtils.mean(rpm);
    double spread = Math.sqrt(StatUtils.populationVariance(rpm));
    boolean sloped = rpm.length > 3 && spread > LEAST_SPREAD * centre;
    boolean moved = rpm.length > 8 && StatUtils.populationVariance(nuisance) > NEGLIGIBLE;
    double[][] rows = new double[rpm.length][];
    for (int i = 0; i < rpm.length; i++) {
      double slope = -Line.DEGREES * (rpm[i] - centre);
      rows[i] =
          sloped && moved
              ? new double[] {1, slope, nuisance[i]}
              : sloped ? new double[] {1, slope} : new double[] {1};
    }
    CorrelatedFit fit = CorrelatedFit.of(rows, degrees, knownVariance);
    return new LineFit(fit, centre, sloped, sloped && moved);
  }

  private double[] coefficients() {
    double[] b = new double[1 + (sloped ? 1 : 0) + (nuisance ? 1 : 0)];
    for (int i = 0; i < b.length; i++) {
      b[i] = fit.coefficient(i);
    }
    return b;
  }

  /** Coefficients once the nuisance is known to be 0 with a standard uncertainty of 1. */
  private double[] settled(double[] b) {
    if (!nuisance) {
      return b;
    }
    double gain = 1 / (1 + fit.covariance(2, 2));
    double[] out = b.clone();
    for (int i = 0; i < b.length; i++) {
      out[i] -= fit.covariance(i, 2) * gain * b[2];
    }
    return out;
  }

  private double covariance(int i, int j) {
    double c = fit.covariance(i, j);
    return nuisance
        ? c - fit.covariance(i, 2) * fit.covariance(j, 2) / (1 + fit.covariance(2, 2))
        : c;
  }

  Line line() {
    return line;
  }

  /** How many of its standard uncertainties the nuisance is off. */
  double nuisance() {
    return nuisance ? settled(coefficients())[2] : 0;
  }

  CorrelatedFit.Errors errors() {
    return fit.errors();
  }

  /** How middle and delay move when a vector is added to the readings. */
  double[] project(double[] vector) {
    double[] moved = settled(fit.project(vector));
    return new double[] {moved[0], sloped ? moved[1] : 0};
  }
}
