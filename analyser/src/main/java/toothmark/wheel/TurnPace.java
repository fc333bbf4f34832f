package toothmark.wheel;

import java.util.Arrays;
import org.apache.commons.math3.linear.Array2DRowRealMatrix;
import org.apache.commons.math3.linear.ArrayRealVector;
import org.apache.commons.math3.linear.CholeskyDecomposition;
import org.apache.commons.math3.linear.RealVector;

/**
 * How probable wheels make the intervals of a turn, or of a cycle.
 *
 * <p>The pace is a few waves that the cylinders drive, so the shares of the turn that lie between
 * its edges must come out as the wheel's angles times a smooth pace. How well they do is a marginal
 * likelihood: the waves' amplitudes are normal with variances that fall with their order, the
 * firing order and its multiples strong and the others weak, averaged over engines and strengths
 * (Rasmussen and Williams, Gaussian Processes for Machine Learning (2006), sections 2.7 and 5.2).
 * Over a cycle the waves have half orders of the turn.
 */
final class TurnPace {

  /** How strong the waves may be, of the mean pace. */
  private static final double[] STRENGTHS = {1.2, 0.6, 0.2, 0.06, 0.02};

  /** Firings in a row, be it a turn or a cycle; with one a cycle every cylinder is its own. */
  private static final double[] FIRINGS = {1, 1.5, 2, 3, 4, 5, 6, 8};

  private static final int FEWEST_ORDERS = 12;
  private static final double DECAY = 2.5;
  private static final double OTHER_ORDERS = 0.05;

  /** How far teeth stand out of place, degrees; and in pitches, beside a gap. */
  private static final double OUT_DEGREES = 0.05;

  private static final double OUT_PITCHES = 0.01;

  /** Of an interval's share; without it the shares, whose sum is one, have no density. */
  private static final double LEAST_VARIANCE = Math.pow(0.005 / 360, 2);

  /** Intervals that no wheel explains: any within half of the mean. */
  private static final double ANY_SPREAD = 0.5;

  private static final double HALF_LOG_2PI = 0.5 * Math.log(2 * Math.PI);

  private final double[] shares;
  private final double scatter;
  private final int turns;

  /**
   * A row of intervals.
   *
   * @param shares of the row's time, their sum 1
   * @param scatter of an interval from row to row, over the root of its share
   * @param turns rows of which the shares are the mean
   */
  TurnPace(double[] shares, double scatter, int turns) {
    this.shares = shares;
    this.scatter = scatter;
    this.turns = turns;
  }

  /** How well a wheel fits: nats, and which of its teeth, from 0, the first edge is. */
  record Fit(double nats, int firstTooth, double[] natsByFirstTooth) {}

  /** Whether the row would be two turns of a wheel. */
  boolean isCycleOf(WheelPattern wheel) {
    return 2 * wheel.teeth() == shares.length;
  }

  /** How probable the intervals are if no wheel orders them, nats. */
  double natsOfAny() {
    double mean = 1.0 / shares.length;
    double nats = 0;
    for (double s : shares) {
      double z = (s - mean) / (ANY_SPREAD * mean);
      nats -= HALF_LOG_2PI + Math.log(ANY_SPREAD * mean) + 0.5 * z * z;
    }
    return nats;
  }

  /**
   * Compares with a wheel.
   *
   * @param wheel of as many teeth as the row has edges, or of half as many
   * @return how probable it makes the intervals, over all teeth that the first edge may be, and the
   *     likeliest of those
   */
  Fit fit(WheelPattern wheel) {
    int n = shares.length;
    int turns = isCycleOf(wheel) ? 2 : 1;
    double[] degrees = new double[n + 1];
    for (int k = 0; k < n; k++) {
      int turn = k / wheel.teeth();
      degrees[k] = (360 * turn + wheel.degreesAfterTooth1(k % wheel.teeth() + 1)) / turns;
    }
    degrees[n] = 360;
    double out = Math.max(OUT_DEGREES, OUT_PITCHES * wheel.pitchDegrees()) / turns;
    int starts = wheel.hasReference() ? wheel.teeth() : 1;
    double[] firings = FIRINGS;
    double[][] nats = new double[starts][firings.length * STRENGTHS.length];
    int model = 0;
    for (double each : firings) {
      double[][] ripple = ripple(degrees, each, Math.max(FEWEST_ORDERS, n / 2));
      for (double strength : STRENGTHS) {
        double[][] covariance = noise(degrees, out);
        for (int i = 0; i < n; i++) {
          for (int j = 0; j < n; j++) {
            covariance[i][j] += strength * strength * ripple[i][j];
          }
        }
        CholeskyDecomposition c =
            new CholeskyDecomposition(new Array2DRowRealMatrix(covariance, false), 1e-9, 0);
        for (int start = 0; start < starts; start++) {
          nats[start][model] = density(c, degrees, start);
        }
        model++;
      }
    }
    double[] each = Arrays.stream(nats).mapToDouble(TurnPace::logMean).toArray();
    int best = 0;
    for (int start = 1; start < starts; start++) {
      best = each[start] > each[best] ? start : best;
    }
    return new Fit(logMean(each), best, each);
  }

  private double density(CholeskyDecomposition c, double[] degrees, int start) {
    int n = shares.length;
    double[] off = new double[n];
    for (int k = 0; k < n; k++) {
      int tooth = (start + k) % n;
      off[tooth] = shares[k] - (degrees[tooth + 1] - degrees[tooth]) / 360;
    }
    RealVector v = new ArrayRealVector(off, false);
    double logDet = 0;
    for (int k = 0; k < n; k++) {
      logDet += Math.log(c.getL().getEntry(k, k));
    }
    return -0.5 * v.dotProduct(c.getSolver().solve(v)) - logDet - n * HALF_LOG_2PI;
  }

  private static double logMean(double[] nats) {
    double most = Arrays.stream(nats).max().orElseThrow();
    return most
        + Math.log(Arrays.stream(nats).map(x -> Math.exp(x - most)).average().orElseThrow());
  }

  /** Covariance of the shares by waves of strength 1 at an engine's firing order. */
  private static double[][] ripple(double[] degrees, double firing, int orders) {
    int n = degrees.length - 1;
    double[][] sum = new double[n][n];
    for (int order = 1; order <= orders; order++) {
      boolean main = order % firing == 0;
      double falls = Math.pow(firing / Math.max(order, firing), DECAY);
      double variance = falls * (main ? 1 : OTHER_ORDERS * OTHER_ORDERS);
      double[] cos = new double[n];
      double[] sin = new double[n];
      for (int k = 0; k < n; k++) {
        double a = Math.toRadians(order * degrees[k]);
        double b = Math.toRadians(order * degrees[k + 1]);
        cos[k] = (Math.sin(b) - Math.sin(a)) / (2 * Math.PI * order);
        sin[k] = (Math.cos(a) - Math.cos(b)) / (2 * Math.PI * order);
      }
      for (int i = 0; i < n; i++) {
        for (int j = 0; j < n; j++) {
          sum[i][j] += variance * (cos[i] * cos[j] + sin[i] * sin[j]);
        }
      }
    }
    return sum;
  }

  /** Covariance of the shares by the teeth's places and by what differs from turn to turn. */
  private double[][] noise(double[] degrees, double out) {
    int n = degrees.length - 1;
    double place = Math.pow(out / 360, 2);
    double[][] sum = new double[n][n];
    for (int i = 0; i < n; i++) {
      int next = (i + 1) % n;
      sum[i][i] +=
          LEAST_VARIANCE
              + 2 * place
              + scatter * scatter * (degrees[i + 1] - degrees[i]) / 360 / turns;
      sum[i][next] -= place;
      sum[next][i] -= place;
    }
    return sum;
  }
}
