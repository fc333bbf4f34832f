package toothmark.edges;

/**
 * A cubic by least squares through evenly spaced points, symmetrical about the middle one.
 *
 * <p>Points lie at x = i / half for i from -half to half. With fewer than seven points it is a
 * straight line.
 */
final class LocalCubic {

  /** Most points to each side. */
  static final int LONGEST_HALF = 36;

  private static final int CUBIC_FROM = 3;
  private static final int NEWTON_STEPS = 8;

  final double[] y = new double[2 * LONGEST_HALF + 1];
  final double[] weight = new double[2 * LONGEST_HALF + 1];
  private final double[] c = new double[4];
  private int half;
  private double inverse;
  private double m0;
  private double m2;
  private double m4;
  private double m6;
  private double m8;
  private double quarticSum;

  /** Sets how many points lie to each side of the middle one. */
  void setHalf(int points) {
    if (points == half) {
      return;
    }
    half = points;
    inverse = 1.0 / half;
    m0 = 2.0 * half + 1;
    m2 = 0;
    m4 = 0;
    m6 = 0;
    m8 = 0;
    for (int i = 1; i <= half; i++) {
      double xx = (double) i * i / ((double) half * half);
      m2 += 2 * xx;
      m4 += 2 * xx * xx;
      m6 += 2 * xx * xx * xx;
      m8 += 2 * xx * xx * xx * xx;
    }
  }

  int half() {
    return half;
  }

  boolean isCubic() {
    return half >= CUBIC_FROM;
  }

  /** Fits with all weights 1. */
  void fit() {
    double s0 = y[half];
    double s1 = 0;
    double s2 = 0;
    double s3 = 0;
    double s4 = 0;
    for (int i = 1; i <= half; i++) {
      double x = i * inverse;
      double xx = x * x;
      double sum = y[half + i] + y[half - i];
      double difference = y[half + i] - y[half - i];
      s0 += sum;
      s1 += x * difference;
      s2 += xx * sum;
      s3 += xx * x * difference;
      s4 += xx * xx * sum;
    }
    if (!isCubic()) {
      set(s0 / m0, s1 / m2, 0, 0);
      return;
    }
    double even = m0 * m4 - m2 * m2;
    double odd = m2 * m6 - m4 * m4;
    set(
        (m4 * s0 - m2 * s2) / even,
        (m6 * s1 - m4 * s3) / odd,
        (m0 * s2 - m2 * s0) / even,
        (m2 * s3 - m4 * s1) / odd);
    quarticSum = s4 - c[0] * m4 - c[2] * m6;
  }

  /** Fits with weights that take out wild points. */
  void fitRobustly(double noise) {
    RobustCubic.fit(y, weight, half, noise, c);
    quarticSum = 0;
  }

  void clearWeights() {
    java.util.Arrays.fill(weight, 0, 2 * half + 1, 1);
  }

  private void set(double c0, double c1, double c2, double c3) {
    c[0] = c0;
    c[1] = c1;
    c[2] = c2;
    c[3] = c3;
  }

  double value(int i) {
    double x = i * inverse;
    return c[0] + x * (c[1] + x * (c[2] + x * c[3]));
  }

  /** Slope at the middle for each point. */
  double slope() {
    return c[1] / half;
  }

  /** From one end to the other along the odd part. */
  double rise() {
    return 2 * (c[1] + c[3]);
  }

  /** Zero nearest the middle, in points from it; not a number when the curve has none near. */
  double root() {
    double x = -c[0] / c[1];
    for (int k = 0; k < NEWTON_STEPS; k++) {
      double f = c[0] + x * (c[1] + x * (c[2] + x * c[3]));
      double d = c[1] + x * (2 * c[2] + x * 3 * c[3]);
      if (!(d * c[1] > 0)) {
        return -c[0] / c[1] * half;
      }
      double step = f / d;
      x -= step;
      if (Math.abs(step) < 1e-9) {
        break;
      }
    }
    return x * half;
  }

  /** Variance of the value at the middle for points of unit variance. */
  double middleVariance() {
    double w0 = 0;
    double w2 = 0;
    double w4 = 0;
    for (int i = -half; i <= half; i++) {
      double w = weight[i + half];
      double xx = (double) i * i / ((double) half * half);
      w0 += w;
      w2 += w * xx;
      w4 += w * xx * xx;
    }
    return isCubic() ? w4 / (w0 * w4 - w2 * w2) : 1 / w0;
  }

  /** How much the value at the middle would change with a quartic term. */
  double quarticEffect() {
    if (half < CUBIC_FROM + 1) {
      return 0;
    }
    // The quartic made orthogonal to 1 and x^2: x^4 - a - b x^2.
    double even = m0 * m4 - m2 * m2;
    double a = (m4 * m4 - m2 * m6) / even;
    double b = (m0 * m6 - m2 * m4) / even;
    double norm = m8 - a * m4 - b * m6;
    return -a * quarticSum / norm;
  }

  /** Standard deviation of the points from differences of successive residuals. */
  double residualNoise() {
    double sum = 0;
    double n = 0;
    double before = y[0] - value(-half);
    for (int i = 1 - half; i <= half; i++) {
      double w = Math.min(weight[i + half], weight[i - 1 + half]);
      double now = y[i + half] - value(i);
      sum += w * (now - before) * (now - before);
      n += w;
      before = now;
    }
    double freedom = Math.max(1, n - (isCubic() ? 3 : 1));
    return Math.sqrt(sum / (2 * freedom));
  }

  /**
   * Largest jump from one residual to the next, over the mean jump or what noise makes of it,
   * whichever is larger. The misfit of a smooth wave has no jumps, a burst has.
   */
  double worstJump(double noise) {
    double worst = 0;
    double sum = 0;
    double before = y[0] - value(-half);
    for (int i = 1 - half; i <= half; i++) {
      double now = y[i + half] - value(i);
      double jump = Math.abs(now - before);
      worst = Math.max(worst, jump);
      sum += jump;
      before = now;
    }
    return worst / Math.max(Math.max(noise, 1e-300), sum / (m0 - 1));
  }
}
