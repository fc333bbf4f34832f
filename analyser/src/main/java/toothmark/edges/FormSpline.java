package toothmark.edges;

import java.util.Arrays;

/**
 * A smooth curve over -1 to 1 by least squares: uniform cubic B-splines whose coefficients' third
 * differences are taken for normal (Eilers and Marx, Statistical Science 11, 1996, 89-121), with
 * the variance that they and the points show (Schall, Biometrika 78, 1991, 719-727).
 */
final class FormSpline {

  /** The twelfth harmonic of a tooth is still followed. */
  private static final int MOST_INTERVALS = 32;

  private static final int FEWEST_INTERVALS = 6;

  private static final int MOST = MOST_INTERVALS + 3;
  private static final int BAND = 4;
  private static final int MOMENTS = 7;
  private static final double[] DIFFERENCE = {-1, 3, -3, 1};

  /** The four splines over an interval by powers of the place in it. */
  private static final double[][] BASIS = {
    {1 / 6.0, -3 / 6.0, 3 / 6.0, -1 / 6.0},
    {4 / 6.0, 0, -6 / 6.0, 3 / 6.0},
    {1 / 6.0, 3 / 6.0, 3 / 6.0, -3 / 6.0},
    {0, 0, 0, 1 / 6.0}
  };

  private static final int MOST_ROUNDS = 6;

  /** Change of the smoothness, as a factor, that ends the search. */
  private static final double SETTLED = 1.3;

  private static final double LEAST = 1e-9;

  /** Of the places of an interval's points, and the same with what was seen there. */
  private final double[][] moments = new double[MOST_INTERVALS][MOMENTS];

  private final double[][] seen = new double[MOST_INTERVALS][BAND];

  /** The curve over each interval by powers of the place in it. */
  private final double[][] pieces = new double[MOST_INTERVALS][BAND];

  private final double[][] rows = new double[MOST][BAND];
  private final double[] right = new double[MOST];
  private final double[] c = new double[MOST];
  private final double[][] factors = new double[MOST][BAND];
  private final double[][] inverse = new double[MOST][BAND];
  private int intervals;
  private int size;
  private double smoothness;
  private double squares;
  private double points;
  private double freedom;

  /** Value of the curve at the place asked for last. */
  double value;

  /** Its slope there. */
  double slope;

  /**
   * Starts a new curve.
   *
   * @param most intervals that it may have
   */
  void start(int most) {
    intervals = Math.max(FEWEST_INTERVALS, Math.min(MOST_INTERVALS, most));
    size = intervals + 3;
    smoothness = 0;
    clear();
  }

  /** Takes all points out. */
  void clear() {
    for (int i = 0; i < intervals; i++) {
      Arrays.fill(moments[i], 0);
      Arrays.fill(seen[i], 0);
    }
    squares = 0;
    points = 0;
  }

  /** How many numbers the curve has in effect. */
  double freedom() {
    return freedom;
  }

  private double place(double u) {
    return (u + 1) * intervals / 2;
  }

  private int interval(double place) {
    return Math.max(0, Math.min(intervals - 1, (int) place));
  }

  /**
   * Adds a point.
   *
   * @param u place, -1 to 1
   * @param height factor of the curve there
   * @param y what was seen
   * @param weight 0 to 1
   */
  void add(double u, double height, double y, double weight) {
    double place = place(u);
    int i = interval(place);
    double t = place - i;
    double w = weight * height;
    double[] m = moments[i];
    double p = w * height;
    for (int k = 0; k < MOMENTS; k++) {
      m[k] += p;
      p *= t;
    }
    double[] r = seen[i];
    p = w * y;
    for (int k = 0; k < BAND; k++) {
      r[k] += p;
      p *= t;
    }
    squares += weight * y * y;
    points += weight;
  }

  /** Lays the curve through what was added. */
  void solve() {
    assemble();
    double trace = 0;
    for (int i = 0; i < size; i++) {
      trace += rows[i][0];
    }
    double least = LEAST * trace / size;
    smoothness = Math.max(smoothness, least);
    for (int round = 0; round < MOST_ROUNDS; round++) {
      factorise();
      substitute();
      invert();
      freedom = overlap(inverse);
      double noise = Math.max(0, left()) / Math.max(1, points - freedom);
      double next = Math.max(least, noise * Math.max(0.5, freedom - 3) / roughness());
      double change = next / smoothness;
      smoothness = next;
      if (change < SETTLED && change > 1 / SETTLED) {
        break;
      }
    }
    cut();
  }

  /** Normal equations of the splines from the moments. */
  private void assemble() {
    for (int i = 0; i < size; i++) {
      Arrays.fill(rows[i], 0);
      right[i] = 0;
    }
    for (int i = 0; i < intervals; i++) {
      for (int a = 0; a < BAND; a++) {
        right[i + a] += product(BASIS[a], seen[i], 0);
        for (int b = a; b < BAND; b++) {
          double sum = 0;
          for (int k = 0; k < BAND; k++) {
            sum += BASIS[b][k] * product(BASIS[a], moments[i], k);
          }
          rows[i + a][b - a] += sum;
        }
      }
    }
  }

  private static double product(double[] basis, double[] values, int from) {
    return basis[0] * values[from]
        + basis[1] * values[from + 1]
        + basis[2] * values[from + 2]
        + basis[3] * values[from + 3];
  }

  private void cut() {
    for (int i = 0; i < intervals; i++) {
      for (int k = 0; k < BAND; k++) {
        double sum = 0;
        for (int a = 0; a < BAND; a++) {
          sum += BASIS[a][k] * c[i + a];
        }
        pieces[i][k] = sum;
      }
    }
  }

  /** Normal equations with the penalty as L D L', banded. */
  private void factorise() {
    for (int i = 0; i < size; i++) {
      System.arraycopy(rows[i], 0, factors[i], 0, BAND);
    }
    for (int i = 0; i + 3 < size; i++) {
      for (int a = 0; a < BAND; a++) {
        for (int b = a; b < BAND; b++) {
          factors[i + a][b - a] += smoothness * DIFFERENCE[a] * DIFFERENCE[b];
        }
      }
    }
    for (int i = 0; i < size; i++) {
      double pivot = factors[i][0];
      for (int k = 1; k < BAND && i + k < size; k++) {
        double f = factors[i][k] / pivot;
        for (int j = k; j < BAND; j++) {
          factors[i + k][j - k] -= f * factors[i][j];
        }
      }
      for (int k = 1; k < BAND; k++) {
        factors[i][k] /= pivot;
      }
    }
  }

  private void substitute() {
    System.arraycopy(right, 0, c, 0, size);
    for (int i = 0; i < size; i++) {
      for (int k = 1; k < BAND && i + k < size; k++) {
        c[i + k] -= factors[i][k] * c[i];
      }
    }
    for (int i = size - 1; i >= 0; i--) {
      c[i] /= factors[i][0];
      for (int k = 1; k < BAND && i + k < size; k++) {
        c[i] -= factors[i][k] * c[i + k];
      }
    }
  }

  /** The band of the inverse (Takahashi, Fagan and Chin 1973). */
  private void invert() {
    for (int i = size - 1; i >= 0; i--) {
      for (int k = BAND - 1; k >= 0; k--) {
        double sum = k == 0 ? 1 / factors[i][0] : 0;
        for (int j = 1; j < BAND && i + j < size; j++) {
          int low = Math.min(i + j, i + k);
          sum -= factors[i][j] * (i + k < size ? inverse[low][Math.abs(j - k)] : 0);
        }
        inverse[i][k] = sum;
      }
    }
  }

  /** Trace of the product of the normal equations with another banded matrix. */
  private double overlap(double[][] other) {
    double sum = 0;
    for (int i = 0; i < size; i++) {
      sum += rows[i][0] * other[i][0];
      for (int k = 1; k < BAND && i + k < size; k++) {
        sum += 2 * rows[i][k] * other[i][k];
      }
    }
    return sum;
  }

  /** Sum of squares that the curve leaves. */
  private double left() {
    double sum = squares;
    for (int i = 0; i < size; i++) {
      double row = rows[i][0] * c[i];
      for (int k = 1; k < BAND && i + k < size; k++) {
        row += 2 * rows[i][k] * c[i + k];
      }
      sum += c[i] * (row - 2 * right[i]);
    }
    return sum;
  }

  private double roughness() {
    double sum = 1e-300;
    for (int i = 0; i + 3 < size; i++) {
      double d = c[i + 3] - c[i] + 3 * (c[i + 1] - c[i + 2]);
      sum += d * d;
    }
    return sum;
  }

  /** Works out value and slope at a place, -1 to 1. */
  void at(double u) {
    double place = place(u);
    int i = interval(place);
    double t = place - i;
    double[] p = pieces[i];
    value = p[0] + t * (p[1] + t * (p[2] + t * p[3]));
    slope = (p[1] + t * (2 * p[2] + t * 3 * p[3])) * intervals / 2;
  }
}
