package toothmark.timing;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.apache.commons.math3.analysis.solvers.BrentSolver;
import org.apache.commons.math3.distribution.TDistribution;

/**
 * Generalised least squares where errors follow each other: a first-order autoregressive part, a
 * white part, and a known part of its own size at each observation.
 *
 * <p>Errors are whitened by a scalar Kalman filter, the same one for values and columns (Harvey and
 * Phillips, Biometrika 66 (1979) 49, doi:10.1093/biomet/66.1.49). How they follow each other is not
 * known; a grid of ways is tried, and the answers are averaged, each weighing as much as its
 * restricted likelihood (Patterson and Thompson, Biometrika 58 (1971) 545,
 * doi:10.1093/biomet/58.3.545). So the uncertainty holds that of the errors' own kind.
 */
final class CorrelatedFit {

  /** Beyond the last an error that wanders cannot be told from a trend. */
  private static final double[] CORRELATIONS = {0.3, 0.6, 0.8, 0.9, 0.95, 0.98};

  private static final double[] WANDERING_SHARES = {0.2, 0.4, 0.6, 0.8, 1};
  private static final double[] GROWING_SHARES = {0, 0.5, 1};
  private static final int FEWEST_FOR_CORRELATION = 12;

  /** The kind of error is learned from no more observations than this. */
  private static final int ENOUGH = 1000;

  /** How much likelier than any one other way errors are independent beforehand: even chances. */
  private static final double INDEPENDENT_BEFORE = CORRELATIONS.length * WANDERING_SHARES.length;

  /** Coefficients that are doubted are as they are known, or as good as 0. */
  private static final double[] DOUBTFUL_WEIGHTS = {1, 1e8};

  /** Chance of the former beforehand. */
  private static final double DOUBTFUL_BEFORE = 0.1;

  private static final double LEAST_WEIGHT = 2e-3;
  private static final int SCALE_STEPS = 10;
  private static final double NORMAL_95 = 1.959964;

  /** Standard deviations within which 95 % lie even with one degree of freedom: 12.7. */
  private static final double MOST_COVERAGE = 13;

  private static final int MOST_STEPS = 100;
  private static final double GOLDEN = (Math.sqrt(5) - 1) / 2;

  private final double[][] rows;
  private final Sizes sizes;
  private final List<Way> ways;
  private final int open;

  private CorrelatedFit(double[][] rows, Sizes sizes, List<Way> ways, int open) {
    this.rows = rows;
    this.sizes = sizes;
    this.ways = ways;
    this.open = open;
  }

  /**
   * What is known of the coefficients beforehand.
   *
   * @param open how many come first, of which nothing is known
   * @param half how many come next, each known to be 0 with a standard uncertainty of 1
   * @param doubtful how many come last, each the same unless all of them are 0, as they mostly are
   */
  record Known(int open, int half, int doubtful) {

    private int columns() {
      return open + half + doubtful;
    }
  }

  /**
   * How large the errors are from one observation to the next.
   *
   * @param known variance of the known part of each error, not negative
   * @param growth how the variance of the unknown part may change from one to the next, positive, 1
   *     on average: that of a time, seen as an angle, grows with the square of speed
   */
  record Sizes(double[] known, double[] growth) {

    Sizes range(int from, int to) {
      return new Sizes(Arrays.copyOfRange(known, from, to), Arrays.copyOfRange(growth, from, to));
    }
  }

  /**
   * What the errors are like, beside the known part.
   *
   * @param variance of white and wandering part together
   * @param wanderingShare share of the wandering part in it
   * @param correlation of one observation's wandering part with the next, 0 to 1
   * @param growingShare share of it that grows as the {@link Sizes} say
   */
  record Errors(double variance, double wanderingShare, double correlation, double growingShare) {

    /** The variance at an observation over that on average. */
    double growth(double growth) {
      return 1 - growingShare + growingShare * growth;
    }

    double wandering() {
      return variance * wanderingShare;
    }

    double white() {
      return variance * (1 - wanderingShare);
    }

    Errors ofVariance(double other) {
      return new Errors(other, wanderingShare, correlation, growingShare);
    }
  }

  /**
   * One way in which it may be.
   *
   * @param errors how errors follow each other
   * @param priors weight of what is known of each coefficient beforehand
   */
  private record Supposed(Errors errors, Priors priors) {}

  /** Weights of what is known beforehand, reciprocal variances; 0 where nothing is. */
  private static final class Priors {

    private final double[] weights;
    private final double logDeterminant;
    private final double chance;

    Priors(Known known, double ofDoubtful) {
      weights = new double[known.columns()];
      Arrays.fill(weights, known.open(), weights.length, 1);
      Arrays.fill(weights, known.open() + known.half(), weights.length, ofDoubtful);
      logDeterminant = known.doubtful() * Math.log(ofDoubtful);
      chance = ofDoubtful == 1 ? DOUBTFUL_BEFORE : 1 - DOUBTFUL_BEFORE;
    }
  }

  /** A way with what it makes of the observations. */
  private record Way(Supposed way, double weight, LinearFit fit) {}

  /**
   * Fits values = rows times coefficients.
   *
   * @param rows one array for each observation, in the order in which errors follow each other
   * @param values observations
   * @param sizes of their errors
   * @return the fit
   */
  static CorrelatedFit of(double[][] rows, double[] values, Sizes sizes) {
    return of(rows, values, sizes, new Known(rows[0].length, 0, 0));
  }

  /**
   * Fits values = rows times coefficients, some of which are half known.
   *
   * @param rows as above
   * @param values as above
   * @param sizes as above
   * @param known what is known of the coefficients; it counts as rows like any other
   * @return the fit
   */
  static CorrelatedFit of(double[][] rows, double[] values, Sizes sizes, Known known) {
    int from = Math.max(0, (values.length - ENOUGH) / 2);
    int to = Math.min(values.length, from + ENOUGH);
    Search search =
        new Search(
            Arrays.copyOfRange(rows, from, to),
            Arrays.copyOfRange(values, from, to),
            sizes.range(from, to),
            known);
    List<Search.Found> found = search.ways(values.length >= FEWEST_FOR_CORRELATION);
    double least = found.stream().mapToDouble(Search.Found::loss).min().orElseThrow();
    double sum = found.stream().mapToDouble(f -> weight(f, least)).sum();
    List<Way> ways = new ArrayList<>();
    for (Search.Found f : found) {
      double weight = weight(f, least) / sum;
      if (weight > LEAST_WEIGHT) {
        ways.add(new Way(f.way(), weight, whitened(rows, values, sizes, f.way())));
      }
    }
    return new CorrelatedFit(rows, sizes, ways, known.open());
  }

  private static double weight(Search.Found found, double least) {
    double before = found.way().errors().wanderingShare() == 0 ? INDEPENDENT_BEFORE : 1;
    return before * found.way().priors().chance * Math.exp((least - found.loss()) / 2);
  }

  /** Tries the ways, each with its likeliest variance. */
  private record Search(double[][] rows, double[] values, Sizes sizes, Known known) {

    /** A way with twice its negative logarithm of likelihood. */
    record Found(Supposed way, double loss) {}

    List<Found> ways(boolean correlated) {
      double[] unit = new double[values.length];
      Arrays.fill(unit, 1);
      double[][] open =
          Arrays.stream(rows).map(r -> Arrays.copyOf(r, known.open())).toArray(double[][]::new);
      LinearFit start = LinearFit.of(open, values, unit);
      int dof = Math.max(1, values.length - known.open());
      double variance = Math.max(start.weightedSquares() / dof, 1e-12);
      List<Supposed> ways = new ArrayList<>();
      for (double doubtful : known.doubtful() > 0 ? DOUBTFUL_WEIGHTS : new double[] {1}) {
        Priors priors = new Priors(known, doubtful);
        for (double growing : GROWING_SHARES) {
          ways.add(new Supposed(new Errors(variance, 0, 0, growing), priors));
          for (double c : correlated ? CORRELATIONS : new double[0]) {
            for (double share : WANDERING_SHARES) {
              ways.add(new Supposed(new Errors(variance, share, c, growing), priors));
            }
          }
        }
      }
      return ways.parallelStream().map(this::scaled).toList();
    }

    /** The likeliest variance, by golden section over its logarithm. */
    private Found scaled(Supposed of) {
      Errors errors = of.errors();
      Priors priors = of.priors();
      double low = Math.log(errors.variance() * 3e-3);
      double high = Math.log(errors.variance() * 4);
      double a = high - GOLDEN * (high - low);
      double b = low + GOLDEN * (high - low);
      double lossA = loss(errors.ofVariance(Math.exp(a)), priors);
      double lossB = loss(errors.ofVariance(Math.exp(b)), priors);
      for (int i = 0; i < SCALE_STEPS; i++) {
        if (lossA < lossB) {
          high = b;
          b = a;
          lossB = lossA;
          a = high - GOLDEN * (high - low);
          lossA = loss(errors.ofVariance(Math.exp(a)), priors);
        } else {
          low = a;
          a = b;
          lossA = lossB;
          b = low + GOLDEN * (high - low);
          lossB = loss(errors.ofVariance(Math.exp(b)), priors);
        }
      }
      double best = lossA < lossB ? a : b;
      Supposed way = new Supposed(errors.ofVariance(Math.exp(best)), priors);
      return new Found(way, Math.min(lossA, lossB));
    }

    private double loss(Errors e, Priors priors) {
      int p = rows[0].length;
      Whitening w = new Whitening(e, p);
      NormalEquations sums = new NormalEquations(p);
      double[] row = new double[p + 1];
      double logDeterminant = 0;
      double product = 1;
      for (int i = 0; i < values.length; i++) {
        Whitening.join(rows[i], values[i], row);
        w.next(row, sizes.known[i], sizes.growth[i]);
        sums.add(row, 1 / w.variance());
        product *= w.variance();
        if (product < 1e-100 || product > 1e100) {
          logDeterminant += Math.log(product);
          product = 1;
        }
      }
      logDeterminant += Math.log(product);
      for (int k = known.open(); k < p; k++) {
        sums.add(prior(k, p), priors.weights[k]);
      }
      NormalEquations.Solution s = sums.solve();
      return logDeterminant + s.logDeterminant() - priors.logDeterminant + s.residualSquares();
    }
  }

  int columns() {
    return rows[0].length;
  }

  double coefficient(int index) {
    double sum = 0;
    double weights = 0;
    for (Way w : ways) {
      sum += w.weight() * w.fit().coefficient(index);
      weights += w.weight();
    }
    return sum / weights;
  }

  /** Of the fit in each way and between the ways. */
  double covariance(int a, int b) {
    double meanA = coefficient(a);
    double meanB = coefficient(b);
    double sum = 0;
    double weights = 0;
    for (Way w : ways) {
      double between = (w.fit().coefficient(a) - meanA) * (w.fit().coefficient(b) - meanB);
      sum += w.weight() * (w.fit().covariance(a, b) + between);
      weights += w.weight();
    }
    return sum / weights;
  }

  /** The likeliest kind of error. */
  Errors errors() {
    Way best = ways.get(0);
    for (Way w : ways) {
      best = w.weight() > best.weight() ? w : best;
    }
    return best.way().errors();
  }

  /** How the coefficients move when a vector is added to the observations. */
  double[] project(double[] vector) {
    double[] moved = new double[rows[0].length];
    double weights = 0;
    for (Way w : ways) {
      double[] b = whitened(rows, vector, sizes, w.way()).coefficients();
      for (int j = 0; j < b.length; j++) {
        moved[j] += w.weight() * b[j];
      }
      weights += w.weight();
    }
    for (int j = 0; j < moved.length; j++) {
      moved[j] /= weights;
    }
    return moved;
  }

  /**
   * By how much 1.96 standard uncertainties of a coefficient have to be enlarged to make the
   * interval that holds it with 95 % probability: more than one where Student's t of few
   * observations counts (JCGM 100:2008, G.3), less where a few unlikely ways with much uncertainty
   * make most of the variance.
   */
  double coverage(int index) {
    double sigma = Math.sqrt(covariance(index, index));
    double half =
        new BrentSolver(1e-4 * sigma)
            .solve(MOST_STEPS, h -> probabilityWithin(h, index) - 0.95, 0, MOST_COVERAGE * sigma);
    return half / (NORMAL_95 * sigma);
  }

  private double probabilityWithin(double half, int index) {
    double mean = coefficient(index);
    double known = Arrays.stream(sizes.known).average().orElse(0);
    double sum = 0;
    double weights = 0;
    for (Way w : ways) {
      double apart = w.fit().coefficient(index) - mean;
      double sigma = Math.sqrt(w.fit().covariance(index, index));
      TDistribution t = student(freedom(w.way().errors(), known));
      double upper = t.cumulativeProbability((half - apart) / sigma);
      sum += w.weight() * (upper - t.cumulativeProbability((-half - apart) / sigma));
      weights += w.weight();
    }
    return sum / weights;
  }

  /** Without a source of random numbers, which would take longer to make than all else. */
  private static TDistribution student(double freedom) {
    return new TDistribution(null, freedom, TDistribution.DEFAULT_INVERSE_ABSOLUTE_ACCURACY);
  }

  /**
   * Degrees of freedom: as many as independent observations would carry as much, by the errors'
   * correlation, less the coefficients that are found from them.
   */
  private double freedom(Errors errors, double known) {
    double lagOne = errors.wandering() * errors.correlation() / (known + errors.variance());
    return Math.max(1, rows.length * (1 - lagOne) / (1 + lagOne) - open);
  }

  /** A row that knows a coefficient to be 0, its value joined. */
  private static double[] prior(int coefficient, int columns) {
    double[] row = new double[columns + 1];
    row[coefficient] = 1;
    return row;
  }

  private static LinearFit whitened(double[][] x, double[] y, Sizes sizes, Supposed way) {
    int p = x[0].length;
    int n = y.length;
    Whitening w = new Whitening(way.errors(), p);
    double[] row = new double[p + 1];
    double[][] rows = new double[n + p][];
    double[] values = new double[n + p];
    double[] weights = new double[n + p];
    for (int i = 0; i < n; i++) {
      Whitening.join(x[i], y[i], row);
      w.next(row, sizes.known[i], sizes.growth[i]);
      rows[i] = Arrays.copyOf(row, p);
      values[i] = row[p];
      weights[i] = 1 / w.variance();
    }
    for (int k = 0; k < p; k++) {
      rows[n + k] = Arrays.copyOf(prior(k, p), p);
      weights[n + k] = way.priors().weights[k];
    }
    return LinearFit.of(rows, values, weights);
  }
}
