package toothmark.edges;

/**
 * Where the form of a wave passes zero: where the even part about there, a quartic by least
 * squares, passes through nothing.
 *
 * <p>The odd part, steep as it may be beside a narrow tooth, has no say, so the window may be wide.
 * It starts with 0.7 of the form to either side and is made narrower as far as the zero moves by
 * more than its noise (the rule of Lepski, see {@link CrossingFit}), by degrees, since a choice
 * that noise can turn would itself be noise.
 */
final class FormZero {

  private static final double WIDEST = 0.7;
  private static final double NARROWER = 0.7;
  private static final double NARROWEST = 0.15;
  private static final int ROUNDS = 2;
  private static final int EACH_SIDE = 8;

  /** A step of this many standard deviations is taken by half. */
  private static final double MOVED = 1.5;

  /** Variance of the middle of a quartic over points of unit variance, times their number. */
  private static final double QUARTIC = 225.0 / 64;

  private static final double[] WEIGHTS = weights();

  private final FormSpline form;

  /** Place on the form, half windows. */
  final double zero;

  /** Variance of that. */
  final double variance;

  /**
   * Finds it.
   *
   * @param form the form, near zero in the middle
   * @param noise variance of the form from a single point
   * @param points that the form rests on
   */
  FormZero(FormSpline form, double noise, int points) {
    this.form = form;
    double z = zero(WIDEST, 0);
    double v = variance(z, noise / (points * WIDEST));
    for (double w = WIDEST * NARROWER; w > NARROWEST; w *= NARROWER) {
      double next = zero(w, z);
      double there = variance(next, noise / (points * w));
      double t = (next - z) * (next - z) / (MOVED * MOVED * there);
      double share = t * t < Double.POSITIVE_INFINITY ? t * t / (1 + t * t) : 1;
      z += share * (next - z);
      v += share * (there - v);
    }
    zero = z;
    variance = v;
  }

  /** What the points in a window make of the even part's middle, for the variance of their mean. */
  private double variance(double z, double mean) {
    form.at(z);
    return QUARTIC * mean / (form.slope * form.slope);
  }

  private double zero(double width, double from) {
    double z = from;
    for (int round = 0; round < ROUNDS; round++) {
      double middle = 0;
      for (int i = -EACH_SIDE; i <= EACH_SIDE; i++) {
        form.at(z + width * i / EACH_SIDE);
        middle += WEIGHTS[Math.abs(i)] * form.value;
      }
      form.at(z);
      z -= middle / form.slope;
      if (!(Math.abs(z) < 1 - width)) {
        return from;
      }
    }
    return z;
  }

  /** Weights by which points from -1 to 1 make the middle of a quartic. */
  private static double[] weights() {
    double[] m = new double[5];
    for (int i = -EACH_SIDE; i <= EACH_SIDE; i++) {
      double xx = (double) i * i / (EACH_SIDE * EACH_SIDE);
      double p = 1;
      for (int k = 0; k < 5; k++) {
        m[k] += p;
        p *= xx;
      }
    }
    double c0 = m[2] * m[4] - m[3] * m[3];
    double c2 = m[2] * m[3] - m[1] * m[4];
    double c4 = m[1] * m[3] - m[2] * m[2];
    double det = m[0] * c0 + m[1] * c2 + m[2] * c4;
    double[] w = new double[EACH_SIDE + 1];
    for (int i = 0; i <= EACH_SIDE; i++) {
      double xx = (double) i * i / (EACH_SIDE * EACH_SIDE);
      w[i] = (c0 + xx * (c2 + xx * c4)) / det;
    }
    return w;
  }
}
