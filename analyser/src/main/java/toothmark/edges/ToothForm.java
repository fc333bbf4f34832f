package toothmark.edges;

import java.util.Arrays;

/**
 * The form of one tooth's wave over several turns, and how far each passing lies off it.
 *
 * <p>All passings are one form s over the crank's angle u, seen as y = a u' s(u) + o: voltage is
 * the rate of change of flux, and the angle at a time follows from the passings around by a
 * parabola. Form, and delay, height a and offset o of each passing, are found in turns by least
 * squares. The delay so has the bound of Cramér and Rao for a known wave but for the form's own
 * noise. That the form may have no more intervals than there are points to a passing matters: a
 * finer one could take up a ripple of one sample's period, which is what a fit to single passings
 * leaves where samples are few.
 */
final class ToothForm {

  /** Most passings of one form. */
  static final int MOST = 32;

  /** Most points to a passing but for one. */
  static final int MOST_POINTS = 36;

  private static final int ROUNDS = 2;

  /** Points this many standard deviations off are weighted down. */
  private static final double WILD = 4;

  /** Passings of this many times the usual variance count less for the form ... */
  private static final double UNLIKE = 4;

  /** ... and not at all from here. */
  private static final double STRANGE = 25;

  /** Off by more than this share of the half window is another tooth, or nothing. */
  private static final double FAR = 0.1;

  /** Delay of each passing, half windows; the form's own zero is where it is. */
  final double[] delay = new double[MOST];

  private final double[][] y = new double[MOST][MOST_POINTS + 1];
  private final double[][] weight = new double[MOST][MOST_POINTS + 1];
  private final int[] points = new int[MOST];
  private final double[] first = new double[MOST];
  private final double[] spacing = new double[MOST];
  private final double[] bend = new double[MOST];
  private final double[] tilt = new double[MOST];
  private final double[] height = new double[MOST];
  private final double[] offset = new double[MOST];
  private final double[] variance = new double[MOST];
  private final double[] squares = new double[MOST];
  private final double[] trust = new double[MOST];
  private final Step step = new Step();
  private final FormSpline form;
  private int size;
  private double scale;

  /**
   * Starts without passings.
   *
   * @param form to work with; several may share one
   */
  ToothForm(FormSpline form) {
    this.form = form;
  }

  void clear() {
    size = 0;
  }

  int size() {
    return size;
  }

  /**
   * Adds a passing; its points are to be filled in.
   *
   * @param count of points; 0 for one that is not to be looked at
   * @param from place of the first, half windows
   * @param apart one from the next, half windows
   * @param speed at the passing, over that of the form
   * @param change of speed: the angle is x + change x²
   * @param growth of the wave's height by other causes: as 1 + growth x
   * @return where the points go
   */
  double[] add(int count, double from, double apart, double speed, double change, double growth) {
    points[size] = count;
    first[size] = from;
    spacing[size] = apart;
    bend[size] = change;
    tilt[size] = 2 * change + growth;
    height[size] = speed;
    offset[size] = 0;
    delay[size] = 0;
    trust[size] = count > 0 ? 1 : 0;
    return y[size++];
  }

  /**
   * Finds form and delays.
   *
   * @return how many passings the form rests on
   */
  int fit() {
    int most = 0;
    for (int m = 0; m < size; m++) {
      most = Math.max(most, points[m]);
      Arrays.fill(weight[m], 0, points[m], 1);
    }
    form.start(most);
    scale = Double.POSITIVE_INFINITY;
    int kept = 0;
    for (int round = 0; round < ROUNDS; round++) {
      layForm();
      for (int m = 0; m < size; m++) {
        if (points[m] > 0) {
          place(m);
        }
      }
      kept = weighPassings();
    }
    return kept;
  }

  private void layForm() {
    form.clear();
    for (int m = 0; m < size; m++) {
      double[] seen = y[m];
      double[] w = weight[m];
      for (int i = 0; trust[m] > 0 && i < points[m]; i++) {
        double x = first[m] + i * spacing[m] - delay[m];
        double u = x * (1 + bend[m] * x);
        if (u >= -1 && u <= 1) {
          double h = height[m] * (1 + tilt[m] * x);
          form.add(u, h, seen[i] - offset[m], trust[m] * w[i]);
        }
      }
    }
    form.solve();
  }

  /** One step of Gauss and Newton for delay, height and offset of a passing. */
  private void place(int m) {
    step.clear();
    double left = 0;
    double limit = WILD * scale;
    for (int i = 0; i < points[m]; i++) {
      double x = first[m] + i * spacing[m] - delay[m];
      double u = x * (1 + bend[m] * x);
      if (u < -1 || u > 1) {
        continue;
      }
      form.at(u);
      double grown = 1 + tilt[m] * x;
      double r = y[m][i] - offset[m] - height[m] * grown * form.value;
      double w = Math.abs(r) > limit ? limit * limit / (r * r) : 1;
      double byTime = grown * (1 + 2 * bend[m] * x) * form.slope + tilt[m] * form.value;
      step.add(-height[m] * byTime, grown * form.value, r, w);
      weight[m][i] = w;
      left += r * r;
    }
    step.solve();
    delay[m] = Math.max(-FAR, Math.min(FAR, delay[m] + step.delay));
    height[m] += step.height;
    offset[m] += step.offset;
    variance[m] = 1 / step.own;
    squares[m] = left / Math.max(1, step.points - 3);
  }

  /** Least squares for a delay beside a height and an offset. */
  private static final class Step {
    private double dd;
    private double dh;
    private double d1;
    private double hh;
    private double h1;
    private double weights;
    private double rd;
    private double rh;
    private double r1;
    private int points;
    private double delay;
    private double height;
    private double offset;

    /** What of the delay's column height and offset cannot explain. */
    private double own;

    void clear() {
      dd = dh = d1 = hh = h1 = weights = rd = rh = r1 = 0;
      points = 0;
    }

    void add(double d, double h, double r, double w) {
      dd += w * d * d;
      dh += w * d * h;
      d1 += w * d;
      hh += w * h * h;
      h1 += w * h;
      weights += w;
      rd += w * d * r;
      rh += w * h * r;
      r1 += w * r;
      points++;
    }

    void solve() {
      double det = hh * weights - h1 * h1;
      double byHeight = (dh * weights - d1 * h1) / det;
      double byOffset = (d1 * hh - dh * h1) / det;
      own = dd - byHeight * dh - byOffset * d1;
      delay = (rd - byHeight * rh - byOffset * r1) / own;
      double h = rh - dh * delay;
      double o = r1 - d1 * delay;
      height = (h * weights - o * h1) / det;
      offset = (o * hh - h * h1) / det;
    }
  }

  private int weighPassings() {
    double[] s = new double[size];
    int sound = 0;
    for (int m = 0; m < size; m++) {
      if (points[m] > 0) {
        s[sound++] = squares[m];
      }
    }
    double usual = SwingScale.quantile(Arrays.copyOf(s, sound), 0.5);
    scale = Math.sqrt(usual);
    int kept = 0;
    for (int m = 0; m < size; m++) {
      boolean like = points[m] > 0 && squares[m] <= STRANGE * usual && Math.abs(delay[m]) < FAR;
      trust[m] = like ? Math.min(1, UNLIKE * usual / squares[m]) : 0;
      kept += like ? 1 : 0;
    }
    return kept;
  }

  /** Whether the form was found to be that of a passing. */
  boolean fits(int m) {
    return trust[m] > 0;
  }

  /**
   * Variance of a passing's delay for a known form, half windows squared.
   *
   * @param noise variance of a point, V squared
   */
  double variance(int m, double noise) {
    return variance[m] * Math.max(noise, trust[m] < 1 ? squares[m] : 0);
  }

  /** Variance of a point, from what the form leaves of all passings, V squared. */
  double noise() {
    double sum = 0;
    double n = -form.freedom();
    for (int m = 0; m < size; m++) {
      if (trust[m] > 0) {
        sum += squares[m] * (points[m] - 3);
        n += points[m] - 3;
      }
    }
    return sum / Math.max(1, n);
  }

  /** How many points the form rests on. */
  int points() {
    int n = 0;
    for (int m = 0; m < size; m++) {
      n += trust[m] > 0 ? points[m] : 0;
    }
    return n;
  }
}
