package toothmark.wheel;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/**
 * How probable wheels make the intervals of a turn, or of a cycle, and the widths of its edges.
 *
 * <p>The pace is a few waves that the cylinders drive, so the shares of the turn that lie between
 * its edges must come out as the wheel's angles times a smooth pace, and the widths of teeth alike
 * as that pace where each stands: a tooth that passes slowly is wide, one beside a gap is not. How
 * well they do is a marginal likelihood. The waves' amplitudes are normal with variances that fall
 * with their order, the firing order and its multiples strong and the others weak, averaged over
 * engines and strengths (Rasmussen and Williams, Gaussian Processes for Machine Learning (2006),
 * sections 2.7 and 5.2); in few edges also about the shape that compression gives, see {@link
 * CompressionShape}. Over a cycle the waves have half orders of the turn.
 */
final class TurnPace {

  /** How strong the waves may be, of the mean pace. */
  private static final double[] STRENGTHS = {1.2, 0.6, 0.2, 0.06, 0.02};

  /** Firings in a row, be it a turn or a cycle; with one a cycle every cylinder is its own. */
  private static final double[] FIRINGS = {1, 1.5, 2, 3, 4, 5, 6, 8};

  private static final int FEWEST_ORDERS = 12;

  /** What is usually left of a wave from one order of the turn to the next. */
  private static final double DECAY = 0.65;

  /** How far teeth stand out of place, degrees; and in pitches, beside a gap. */
  private static final double OUT_DEGREES = 0.05;

  private static final double OUT_PITCHES = 0.01;

  /** Of an interval's share; without it the shares, whose sum is one, have no density. */
  private static final double LEAST_VARIANCE = Math.pow(0.005 / 360, 2);

  /** How unlike teeth are: of their width. */
  private static final double WIDTH_SPREAD = 0.03;

  /** Intervals that no wheel explains: any within half of the mean; and widths. */
  private static final double ANY_SPREAD = 0.5;

  /** What the pace has besides that shape, of its strength. */
  private static final double SHAPELESS = 0.05;

  /** How much stronger or weaker it may be than the next one that is tried. */
  private static final double VARIANCE_OF_SHAPE = Math.pow(CompressionShape.BETWEEN, 2);

  /** How seldom the pace has not that shape. */
  private static final double OTHERWISE = 0.1;

  private static final List<double[]> NO_SHAPE = List.of();

  /** Nats of what cannot be, finite so that means of it are. */
  private static final double IMPOSSIBLE = -1e6;

  private static final double HALF_LOG_2PI = 0.5 * Math.log(2 * Math.PI);

  /** How alike cylinders are and how sharp compressions are. */
  private enum Make {
    USUAL(0.1, DECAY),
    /** On an engine so light that compression nearly stops it. */
    LIGHT(0.05, 0.85);

    /** Strength of waves that are no multiple of the firing order, of those that are. */
    private final double otherOrders;

    /** What is left of a wave from one order of the turn to the next. */
    private final double decay;

    Make(double otherOrders, double decay) {
      this.otherOrders = otherOrders;
      this.decay = decay;
    }
  }

  private final double[] shares;
  private final double scatter;
  private final double[] widths;
  private final double widthScatter;
  private final double seconds;
  private final Map<Integer, List<CompressionShape>> engines = new HashMap<>();

  /**
   * A row of intervals.
   *
   * @param shares of the row's time, their sum 1
   * @param scatter of an interval's mean, over the root of its share
   * @param widths of the edges, their mean 1, as {@link toothmark.edges.EdgeTrain#width}; none
   *     where they are not known
   * @param widthScatter of a width's mean
   * @param seconds a row takes
   */
  TurnPace(double[] shares, double scatter, double[] widths, double widthScatter, double seconds) {
    this.shares = shares;
    this.scatter = scatter;
    this.widths = widths;
    this.widthScatter = widthScatter;
    this.seconds = seconds;
  }

  /** How well a wheel fits: nats, and which of its teeth, from 0, the first edge is. */
  record Fit(double nats, int firstTooth, double[] natsByFirstTooth) {}

  /** Whether the row would be two turns of a wheel. */
  boolean isCycleOf(WheelPattern wheel) {
    return 2 * wheel.teeth() == shares.length;
  }

  /**
   * The row's intervals in slots, each by how fast the teeth at its ends pass.
   *
   * @return one for each interval; none where widths are not known
   */
  int[] stepsByWidths() {
    double[] ratio = new double[widths.length];
    Arrays.setAll(ratio, k -> shares[k] / (widths[k] + widths[(k + 1) % widths.length]));
    double slot = Arrays.stream(ratio).sorted().skip(widths.length / 3).findFirst().orElse(1);
    return Arrays.stream(ratio).mapToInt(r -> (int) Math.max(1, Math.round(r / slot))).toArray();
  }

  /** How probable the intervals are if no wheel orders them, nats. */
  double natsOfAny() {
    return natsOfAny(shares) + natsOfAny(widths);
  }

  private static double natsOfAny(double[] values) {
    double mean = Arrays.stream(values).average().orElse(1);
    double nats = 0;
    for (double v : values) {
      double z = (v - mean) / (ANY_SPREAD * mean);
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
    int starts = wheel.hasReference() ? wheel.teeth() : 1;
    double out = Math.max(OUT_DEGREES, OUT_PITCHES * wheel.pitchDegrees()) / turns;
    double[][] noise = noise(degrees, out);
    double[] each = byWaves(degrees, starts, turns, noise);
    if (CompressionShape.suits(n)) {
      double[] shaped = byCompression(degrees, starts, wheel, noise);
      for (int k = 0; k < starts; k++) {
        double more = Math.max(each[k], shaped[k]);
        double sum =
            OTHERWISE * Math.exp(each[k] - more) + (1 - OTHERWISE) * Math.exp(shaped[k] - more);
        each[k] = more + Math.log(sum);
      }
    }
    int best = 0;
    for (int start = 1; start < starts; start++) {
      best = each[start] > each[best] ? start : best;
    }
    return new Fit(logMean(each), best, each);
  }

  /** Nats by first tooth if the pace is any waves. */
  private double[] byWaves(double[] degrees, int starts, int turns, double[][] noise) {
    List<double[]> nats = new ArrayList<>();
    for (double firings : FIRINGS) {
      for (Make make : Make.values()) {
        double decay = Math.pow(make.decay, 1.0 / turns);
        double[][] ripple = ripple(degrees, firings, make.otherOrders, decay);
        for (double strength : STRENGTHS) {
          double[][] l = triangle(noise, strength, ripple);
          nats.add(densities(l, degrees, starts, NO_SHAPE));
        }
      }
    }
    return logMeans(nats, 0);
  }

  /** Nats by first tooth if it is what compressions make of it, and little else. */
  private double[] byCompression(
      double[] degrees, int starts, WheelPattern wheel, double[][] noise) {
    int turns = isCycleOf(wheel) ? 2 : 1;
    List<CompressionShape> engines = engines(wheel.hasReference() ? turns : 0);
    double decay = Math.pow(DECAY, 1.0 / turns);
    List<double[]> nats = new ArrayList<>();
    double weight = 0;
    for (CompressionShape c : engines) {
      double[][] ripple = ripple(degrees, c.firings, Make.USUAL.otherOrders, decay);
      double[][] l = triangle(noise, SHAPELESS * c.strength, ripple);
      double[] found = densities(l, degrees, starts, c.of(degrees, widths.length));
      nats.add(Arrays.stream(found).map(x -> x + c.nats).toArray());
      weight += Math.exp(c.nats) / engines.size();
    }
    return logMeans(nats, Math.log(weight));
  }

  /** Engines for a row of so many turns of the crank; 0 where it may be any part of one. */
  private List<CompressionShape> engines(int turns) {
    return engines.computeIfAbsent(
        turns,
        t -> t == 0 ? CompressionShape.ofFiring(seconds) : CompressionShape.ofTurns(t, seconds));
  }

  /** Logs of the means over the rows, less a constant. */
  private static double[] logMeans(List<double[]> nats, double less) {
    double[] each = new double[nats.get(0).length];
    Arrays.setAll(each, k -> logMean(nats.stream().mapToDouble(x -> x[k]).toArray()) - less);
    return each;
  }

  /** The Cholesky triangle of what noise and waves make of shares and widths. */
  private static double[][] triangle(double[][] noise, double strength, double[][] ripple) {
    int size = noise.length;
    double[][] l = new double[size][size];
    for (int i = 0; i < size; i++) {
      for (int j = 0; j <= i; j++) {
        double rest = noise[i][j] + strength * strength * ripple[i][j];
        for (int k = 0; k < j; k++) {
          rest -= l[i][k] * l[j][k];
        }
        l[i][j] = i == j ? Math.sqrt(rest) : rest / l[j][j];
      }
    }
    return l;
  }

  /** Log density of shares and widths with the first edge as each of the first teeth. */
  private double[] densities(double[][] l, double[] degrees, int starts, List<double[]> shapes) {
    double logDet = 0;
    for (int k = 0; k < l.length; k++) {
      logDet += Math.log(l[k][k]);
    }
    shapes.forEach(shape -> solve(l, shape));
    double[] squares = shapes.stream().mapToDouble(shape -> dot(shape, shape)).toArray();
    double[] nats = new double[starts];
    for (int start = 0; start < starts; start++) {
      nats[start] = exponent(l, degrees, start, shapes, squares) - logDet - l.length * HALF_LOG_2PI;
    }
    return nats;
  }

  /**
   * The exponent, averaged over shapes and how strong each is. Widths are paces in a unit that is
   * not known: with u as the true one, what is off is off + u times the widths, and u is averaged
   * out (Laplace's way for its power).
   */
  private double exponent(
      double[][] l, double[] degrees, int start, List<double[]> shapes, double[] squares) {
    int n = shares.length;
    double[] off = new double[l.length];
    double[] perUnit = new double[l.length];
    for (int k = 0; k < n; k++) {
      int tooth = (start + k) % n;
      off[tooth] = shares[k] - (degrees[tooth + 1] - degrees[tooth]) / 360;
      if (widths.length > 0) {
        off[n + tooth] = -1;
        perUnit[n + tooth] = widths[k];
      }
    }
    solve(l, off);
    solve(l, perUnit);
    double square = dot(off, off);
    double along = dot(off, perUnit);
    double precision = dot(perUnit, perUnit);
    double[] each = new double[shapes.size()];
    for (int i = 0; i < each.length; i++) {
      double[] shape = shapes.get(i);
      double over = dot(off, shape) - squares[i];
      double unit = dot(perUnit, shape);
      double free = VARIANCE_OF_SHAPE / (1 + VARIANCE_OF_SHAPE * squares[i]);
      double rest = square - 2 * over - squares[i] - free * over * over;
      double tilt = along - unit - free * over * unit;
      each[i] =
          exponent(rest, tilt, precision - free * unit * unit)
              + 0.5 * Math.log(free / VARIANCE_OF_SHAPE);
    }
    return shapes.isEmpty() ? exponent(square, along, precision) : logMean(each);
  }

  private double exponent(double square, double along, double precision) {
    if (widths.length == 0) {
      return -0.5 * square;
    }
    double unit = -along / precision;
    return unit <= 0
        ? IMPOSSIBLE
        : -0.5 * (square + unit * along)
            + (widths.length - 1) * Math.log(unit)
            + HALF_LOG_2PI
            - 0.5 * Math.log(precision);
  }

  /** Solves l x = y for a lower triangle, x in the place of y. */
  private static void solve(double[][] l, double[] y) {
    for (int i = 0; i < y.length; i++) {
      double sum = y[i];
      for (int j = 0; j < i; j++) {
        sum -= l[i][j] * y[j];
      }
      y[i] = sum / l[i][i];
    }
  }

  private static double dot(double[] a, double[] b) {
    double sum = 0;
    for (int i = 0; i < a.length; i++) {
      sum += a[i] * b[i];
    }
    return sum;
  }

  private static double logMean(double[] nats) {
    double most = Arrays.stream(nats).max().orElseThrow();
    return most
        + Math.log(Arrays.stream(nats).map(x -> Math.exp(x - most)).average().orElseThrow());
  }

  /** Covariance of shares and widths by waves of strength 1 at an engine's firing order. */
  private double[][] ripple(double[] degrees, double firing, double others, double decay) {
    int n = shares.length;
    int size = n + widths.length;
    int orders = Math.max(FEWEST_ORDERS, n / 2);
    double[][] sum = new double[size][size];
    for (int order = 1; order <= orders; order++) {
      double falls = Math.pow(decay, Math.max(0, order - firing));
      double amplitude = falls * (order % firing == 0 ? 1 : others);
      double[] cos = new double[size];
      double[] sin = new double[size];
      for (int k = 0; k < n; k++) {
        double a = Math.toRadians(order * degrees[k]);
        double b = Math.toRadians(order * degrees[k + 1]);
        cos[k] = (Math.sin(b) - Math.sin(a)) / (2 * Math.PI * order);
        sin[k] = (Math.cos(a) - Math.cos(b)) / (2 * Math.PI * order);
        if (size > n) {
          cos[n + k] = Math.cos(a);
          sin[n + k] = Math.sin(a);
        }
      }
      for (int i = 0; i < size; i++) {
        for (int j = 0; j < size; j++) {
          sum[i][j] += amplitude * amplitude * (cos[i] * cos[j] + sin[i] * sin[j]);
        }
      }
    }
    return sum;
  }

  /** Covariance by the teeth's places and widths and by what differs from turn to turn. */
  private double[][] noise(double[] degrees, double out) {
    int n = shares.length;
    int size = n + widths.length;
    double place = Math.pow(out / 360, 2);
    double[][] sum = new double[size][size];
    for (int i = 0; i < n; i++) {
      int next = (i + 1) % n;
      double varies = scatter * scatter;
      sum[i][i] += LEAST_VARIANCE + 2 * place + varies * (degrees[i + 1] - degrees[i]) / 360;
      sum[i][next] -= place;
      sum[next][i] -= place;
    }
    for (int i = n; i < size; i++) {
      sum[i][i] = WIDTH_SPREAD * WIDTH_SPREAD + widthScatter * widthScatter;
    }
    return sum;
  }
}
