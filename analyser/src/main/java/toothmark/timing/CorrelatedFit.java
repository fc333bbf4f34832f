package toothmark.timing;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

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
  private static final int FEWEST_FOR_CORRELATION = 12;

  /** The kind of error is learned from no more observations than this. */
  private static final int ENOUGH = 1000;

  /** How much likelier beforehand than any one other way errors are independent. */
  private static final double INDEPENDENT_BEFORE = 8;

  private static final double LEAST_WEIGHT = 2e-3;
  private static final int SCALE_STEPS = 10;
  private static final double GOLDEN = (Math.sqrt(5) - 1) / 2;

  private final double[][] rows;
  private final double[] knownVariance;
  private final List<Way> ways;

  private CorrelatedFit(double[][] rows, double[] knownVariance, List<Way> ways) {
    this.rows = rows;
    this.knownVariance = knownVariance;
    this.ways = ways;
  }

  /**
   * What the errors are like, beside the known part.
   *
   * @param variance of white and wandering part together
   * @param wanderingShare share of the wandering part in it
   * @param correlation of one observation's wandering part with the next, 0 to 1
   */
  record Errors(double variance, double wanderingShare, double correlation) {

    double wandering() {
      return variance * wanderingShare;
    }

    double white() {
      return variance * (1 - wanderingShare);
    }
  }

  /** One way in which errors may follow each other, and what it makes of the observations. */
  private record Way(Errors errors, double weight, LinearFit fit) {}

  /**
   * Fits values = rows times coefficients.
   *
   * @param rows one array for each observation, in the order in which errors follow each other
   * @param values observations
   * @param knownVariance variance of the known part of each error, not negative
   * @return the fit
   */
  static CorrelatedFit of(double[][] rows, double[] values, double[] knownVariance) {
    int from = Math.max(0, (values.length - ENOUGH) / 2);
    int to = Math.min(values.length, from + ENOUGH);
    Search search =
        new Search(
            Arrays.copyOfRange(rows, from, to),
            Arrays.copyOfRange(values, from, to),
            Arrays.copyOfRange(knownVariance, from, to));
    List<Search.Found> found = search.ways(values.length >= FEWEST_FOR_CORRELATION);
    double least = found.stream().mapToDouble(Search.Found::loss).min().orElseThrow();
    double sum = found.stream().mapToDouble(f -> weight(f, least)).sum();
    List<Way> ways = new ArrayList<>();
    for (Search.Found f : found) {
      double weight = weight(f, least) / sum;
      if (weight > LEAST_WEIGHT) {
        LinearFit fit = whitened(rows, values, knownVariance, f.errors());
        ways.add(new Way(f.errors(), weight, fit));
      }
    }
    return new CorrelatedFit(rows, knownVariance, ways);
  }

  private static double weight(Search.Found found, double least) {
    double before = found.errors().wanderingShare() == 0 ? INDEPENDENT_BEFORE : 1;
    return before * Math.exp((least - found.loss()) / 2);
  }

  /** Tries the ways, each with its likeliest variance. */
  private record Search(double[][] rows, double[] values, double[] knownVariance) {

    /** A way with twice its negative logarithm of likelihood. */
    record Found(Errors errors, double loss) {}

    List<Found> ways(boolean correlated) {
      double[] unit = new double[values.length];
      Arrays.fill(unit, 1);
      LinearFit start = LinearFit.of(rows, values, unit);
      int dof = Math.max(1, values.length - rows[0].length);
      double variance = Math.max(start.weightedSquares() / dof, 1e-12);
      List<Found> found = new ArrayList<>();
      found.add(scaled(variance, 0, 0));
      for (double c : correlated ? CORRELATIONS : new double[0]) {
        for (double share : WANDERING_SHARES) {
          found.add(scaled(variance, share, c));
        }
      }
      return found;
    }

    /** The likeliest variance, by golden section over its logarithm. */
    private Found scaled(double variance, double share, double correlation) {
      double low = Math.log(variance * 3e-3);
      double high = Math.log(variance * 4);
      double a = high - GOLDEN * (high - low);
      double b = low + GOLDEN * (high - low);
      double lossA = loss(a, share, correlation);
      double lossB = loss(b, share, correlation);
      for (int i = 0; i < SCALE_STEPS; i++) {
        if (lossA < lossB) {
          high = b;
          b = a;
          lossB = lossA;
          a = high - GOLDEN * (high - low);
          lossA = loss(a, share, correlation);
        } else {
          low = a;
          a = b;
          lossA = lossB;
          b = low + GOLDEN * (high - low);
          lossB = loss(b, share, correlation);
        }
      }
      double best = lossA < lossB ? a : b;
      return new Found(new Errors(Math.exp(best), share, correlation), Math.min(lossA, lossB));
    }

    private double loss(double logVariance, double share, double correlation) {
      Errors e = new Errors(Math.exp(logVariance), share, correlation);
      int p = rows[0].length;
      Whitening w = new Whitening(e, p);
      NormalEquations sums = new NormalEquations(p);
      double[] row = new double[p + 1];
      double logDeterminant = 0;
      double product = 1;
      for (int i = 0; i < values.length; i++) {
        join(rows[i], values[i], row);
        w.next(row, knownVariance[i]);
        sums.add(row, 1 / w.variance);
        product *= w.variance;
        if (product < 1e-100 || product > 1e100) {
          logDeterminant += Math.log(product);
          product = 1;
        }
      }
      logDeterminant += Math.log(product);
      NormalEquations.Solution s = sums.solve();
      return logDeterminant + s.logDeterminant() + s.residualSquares();
    }
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
    return best.errors();
  }

  /** How the coefficients move when a vector is added to the observations. */
  double[] project(double[] vector) {
    double[] moved = new double[rows[0].length];
    double weights = 0;
    for (Way w : ways) {
      double[] b = whitened(rows, vector, knownVariance, w.errors()).coefficients();
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

  /** How many independent observations would carry as much, by the errors' correlation. */
  double effectiveSize() {
    double known = Arrays.stream(knownVariance).average().orElse(0);
    double size = 0;
    double weights = 0;
    for (Way w : ways) {
      double total = known + w.errors().variance();
      double lagOne = w.errors().wandering() * w.errors().correlation() / total;
      size += w.weight() * rows.length * (1 - lagOne) / (1 + lagOne);
      weights += w.weight();
    }
    return size / weights;
  }

  /** Turns observations one by one into such whose errors are independent. */
  private static final class Whitening {

    private final Errors errors;
    private final double[] state;
    private final double keep;
    private double spread;
    private double variance;

    Whitening(Errors errors, int columns) {
      this.errors = errors;
      this.state = new double[columns + 1];
      this.spread = errors.wandering();
      this.keep = errors.correlation() * errors.correlation();
    }

    /** Replaces columns and value by what is new in them; its variance is then known. */
    void next(double[] row, double knownVariance) {
      variance = spread + knownVariance + errors.white();
      double gain = spread / variance;
      for (int j = 0; j < row.length; j++) {
        double innovation = row[j] - state[j];
        state[j] = errors.correlation() * (state[j] + gain * innovation);
        row[j] = innovation;
      }
      spread = keep * spread * (1 - gain) + (1 - keep) * errors.wandering();
    }
  }

  private static void join(double[] row, double value, double[] into) {
    System.arraycopy(row, 0, into, 0, row.length);
    into[row.length] = value;
  }

  private static LinearFit whitened(double[][] x, double[] y, double[] known, Errors errors) {
    int p = x[0].length;
    Whitening w = new Whitening(errors, p);
    double[] row = new double[p + 1];
    double[][] rows = new double[y.length][];
    double[] values = new double[y.length];
    double[] weights = new double[y.length];
    for (int i = 0; i < y.length; i++) {
      join(x[i], y[i], row);
      w.next(row, known[i]);
      rows[i] = Arrays.copyOf(row, p);
      values[i] = row[p];
      weights[i] = 1 / w.variance;
    }
    return LinearFit.of(rows, values, weights);
  }
}
