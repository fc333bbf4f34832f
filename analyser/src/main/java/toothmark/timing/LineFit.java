package toothmark.timing;

import java.util.stream.IntStream;
import org.apache.commons.math3.stat.StatUtils;

/**
 * Fits a {@link Line} to readings at several speeds, with errors that may follow each other.
 *
 * <p>Variances are those of which 1.96 standard uncertainties make a 95 % interval, also of few
 * readings and where it is doubtful how errors follow each other (JCGM 100:2008, G.3).
 */
final class LineFit {

  /** Under this relative spread of speed the readings hold no slope. */
  private static final double LEAST_SPREAD = 1e-6;

  /** Fewer readings show nothing of what else may move them. */
  private static final int FEWEST_FOR_NUISANCES = 9;

  /** Variance of a delay of which nothing is known, square microseconds. */
  private static final double UNKNOWN_DELAY_VARIANCE = 1e12;

  private final Line line;
  private final CorrelatedFit fit;
  private final CorrelatedFit.Sizes sizes;
  private final int own;

  private LineFit(CorrelatedFit fit, CorrelatedFit.Sizes sizes, double centre, int own) {
    this.fit = fit;
    this.sizes = sizes;
    this.own = own;
    double coverage = fit.coverage(own - 1);
    double middle = fit.coefficient(0);
    double variance = fit.covariance(0, 0);
    Line found =
        own == 1
            ? new Line(centre, middle, 0, variance, UNKNOWN_DELAY_VARIANCE, 0)
            : new Line(
                centre,
                middle,
                fit.coefficient(1),
                variance,
                fit.covariance(1, 1),
                fit.covariance(0, 1));
    this.line = found.withVarianceTimes(coverage * coverage);
  }

  /**
   * Fits readings in the order in which their errors follow each other.
   *
   * @param rpm speeds, rev/min, at least 3
   * @param degrees readings
   * @param knownVariance variance of the known part of each error, square degrees
   * @param nuisances half-known things that move the readings: for each, how each reading moves
   *     with one standard uncertainty of it
   * @return the fit; without a slope in it the delay is 0 and its variance huge
   */
  static LineFit of(double[] rpm, double[] degrees, double[] knownVariance, double[]... nuisances) {
    double centre = StatUtils.mean(rpm);
    double spread = Math.sqrt(StatUtils.populationVariance(rpm));
    int own = rpm.length > 3 && spread > LEAST_SPREAD * centre ? 2 : 1;
    int more = own == 2 && rpm.length >= FEWEST_FOR_NUISANCES ? nuisances.length : 0;
    double[][] rows = new double[rpm.length][own + more];
    double[] growth = new double[rpm.length];
    for (int i = 0; i < rpm.length; i++) {
      rows[i][0] = 1;
      if (own == 2) {
        rows[i][1] = -Line.DEGREES * (rpm[i] - centre);
      }
      for (int k = 0; k < more; k++) {
        rows[i][own + k] = nuisances[k][i];
      }
      growth[i] = rpm[i] * rpm[i] / (centre * centre + spread * spread);
    }
    CorrelatedFit.Sizes sizes = new CorrelatedFit.Sizes(knownVariance, growth);
    int doubtful = Math.max(0, more - GapReadings.LOOKS);
    CorrelatedFit.Known known = new CorrelatedFit.Known(own, more - doubtful, doubtful);
    return new LineFit(CorrelatedFit.of(rows, degrees, sizes, known), sizes, centre, own);
  }

  Line line() {
    return line;
  }

  /** By how many of its standard uncertainties each nuisance is off; none where it cannot show. */
  double[] nuisances() {
    return IntStream.range(own, fit.columns()).mapToDouble(fit::coefficient).toArray();
  }

  /** Covariance of two nuisances, counted from 0. */
  double nuisanceCovariance(int a, int b) {
    return fit.covariance(own + a, own + b);
  }

  CorrelatedFit.Errors errors() {
    return fit.errors();
  }

  /** Variance of each reading's whole error, in the likeliest way. */
  double[] variances() {
    CorrelatedFit.Errors e = fit.errors();
    return IntStream.range(0, sizes.known().length)
        .mapToDouble(i -> sizes.known()[i] + e.variance() * e.growth(sizes.growth()[i]))
        .toArray();
  }

  /** How middle and delay move when a vector is added to the readings. */
  double[] project(double[] vector) {
    double[] moved = fit.project(vector);
    return new double[] {moved[0], own == 2 ? moved[1] : 0};
  }
}
