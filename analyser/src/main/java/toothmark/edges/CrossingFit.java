package toothmark.edges;

/**
 * The zero of a cubic laid by least squares through samples around a crossing.
 *
 * <p>A cubic over the steep part of a wave has a kernel without second moment, so neither the curve
 * of the wave nor a slow change of its height moves the zero, and over plus and minus 0.3 pitch its
 * variance is 1.3 times (in standard deviation) the bound of Cramér and Rao for a wave near a sine
 * (Kay, Fundamentals of Statistical Signal Processing, 1993, ch. 3). The window is centred on the
 * zero again until it stays.
 *
 * <p>The standard uncertainty takes the noise from differences of successive residuals, which the
 * misfit of a smooth shape hardly enters, and the converter's step, which does not average out when
 * few steps lie in the window.
 */
final class CrossingFit {

  private static final int ROUNDS = 4;
  private static final int LONGEST = 256;
  private static final double OUTLIER = 5.0;
  private static final int ROBUST_ROUNDS = 6;

  private final SampleWindow window;
  private final double quantum;
  private final double[] y = new double[LONGEST + 1];
  private final double[] weight = new double[LONGEST + 1];
  private final double[] c = new double[4];
  private int half;
  private int group;

  double position;
  double noise;
  private double variance;
  private double extraVariance;

  CrossingFit(SampleWindow window, double quantum) {
    this.window = window;
    this.quantum = quantum;
  }

  /**
   * Fits around a first guess.
   *
   * @param guess fractional sample index
   * @param halfWidth samples on each side
   * @param offset level whose crossing is wanted, V
   * @param slopeSign +1 for a rise, -1 for a fall
   * @param usualNoise of one sample, V; residuals far above it are outliers
   * @return whether a crossing of that direction was found within the window
   */
  boolean fit(double guess, int halfWidth, double offset, int slopeSign, double usualNoise) {
    position = guess;
    group = Math.max(1, (2 * halfWidth + LONGEST) / LONGEST) | 1;
    half = Math.max(halfWidth >= 3 ? 3 : 1, halfWidth / group);
    for (int round = 0; round < ROUNDS; round++) {
      long centre = Math.round(position);
      long reach = (long) half * group + group / 2;
      if (!window.holds(centre - reach, centre + reach + 1)) {
        return false;
      }
      load(centre, offset);
      solve();
      rejectOutliers(usualNoise);
      double root = root();
      if (!(c[1] * slopeSign > 0) || !(Math.abs(root) <= half)) {
        return false;
      }
      double before = position;
      position = centre + root * group;
      if (Math.round(position) == centre || Math.abs(position - before) < 0.01) {
        break;
      }
    }
    noise = residualNoise();
    variance = variance();
    extraVariance = quantisation();
    return true;
  }

  /** Takes the straight line between the two samples where no curve could be laid. */
  void fallBack(long at, int halfWidth, double offset) {
    double before = window.at(at) - offset;
    double after = window.at(at + 1) - offset;
    double share = before == after ? 0.5 : before / (before - after);
    position = at + Math.min(1, Math.max(0, share));
    noise = 0;
    variance = 0;
    // Nothing better is known than that the zero lies within the lobe.
    extraVariance = square(Math.max(1, halfWidth)) / 12;
  }

  /** Loads means of groups of samples, so that a long window costs no more than a short one. */
  private void load(long centre, double offset) {
    for (int i = -half; i <= half; i++) {
      double sum = 0;
      long from = centre + (long) i * group - group / 2;
      for (int j = 0; j < group; j++) {
        sum += window.at(from + j);
      }
      y[i + half] = sum / group - offset;
      weight[i + half] = 1;
    }
  }

  private void solve() {
    double m0 = 0;
    double m2 = 0;
    double m4 = 0;
    double m6 = 0;
    double s0 = 0;
    double s1 = 0;
    double s2 = 0;
    double s3 = 0;
    for (int i = -half; i <= half; i++) {
      double x = (double) i / half;
      double xx = x * x;
      double v = y[i + half];
      m0++;
      m2 += xx;
      m4 += xx * xx;
      m6 += xx * xx * xx;
      s0 += v;
      s1 += x * v;
      s2 += xx * v;
      s3 += xx * x * v;
    }
    if (half < 3) {
      c[0] = s0 / m0;
      c[1] = s1 / m2;
      c[2] = 0;
      c[3] = 0;
      return;
    }
    double even = m0 * m4 - m2 * m2;
    double odd = m2 * m6 - m4 * m4;
    c[0] = (m4 * s0 - m2 * s2) / even;
    c[2] = (m0 * s2 - m2 * s0) / even;
    c[1] = (m6 * s1 - m4 * s3) / odd;
    c[3] = (m2 * s3 - m4 * s1) / odd;
  }

  private double value(int i) {
    double x = (double) i / half;
    return c[0] + x * (c[1] + x * (c[2] + x * c[3]));
  }

  /** Zero nearest the centre, in groups from the centre. */
  private double root() {
    double x = -c[0] / c[1];
    for (int k = 0; k < 8; k++) {
      double f = c[0] + x * (c[1] + x * (c[2] + x * c[3]));
      double d = c[1] + x * (2 * c[2] + x * 3 * c[3]);
      if (!(d * c[1] > 0)) {
        return -c[0] / c[1] * half;
      }
      x -= f / d;
    }
    return x * half;
  }

  private double residualNoise() {
    double sum = 0;
    double n = 0;
    for (int i = 1 - half; i <= half; i++) {
      double w = Math.min(weight[i + half], weight[i - 1 + half]);
      double d = (y[i + half] - value(i)) - (y[i - 1 + half] - value(i - 1));
      sum += w * d * d;
      n += w;
    }
    // Four parameters take four of the points' freedom.
    double freedom = Math.max(1, n - (half < 3 ? 1 : 3));
    return Math.sqrt(sum / (2 * freedom)) * Math.sqrt(group);
  }

  /** Variance of the position in samples squared for a noise of 1 V a sample. */
  private double variance() {
    double m0 = 0;
    double m2 = 0;
    double m4 = 0;
    for (int i = -half; i <= half; i++) {
      double w = weight[i + half];
      double xx = (double) i * i / ((double) half * half);
      m0 += w;
      m2 += w * xx;
      m4 += w * xx * xx;
    }
    double kernel = half < 3 ? 1 / m0 : m4 / (m0 * m4 - m2 * m2);
    return kernel / group * square(1 / slope());
  }

  /** Slope at the zero, V a sample. */
  private double slope() {
    return Math.abs(c[1]) / ((double) half * group);
  }

  /** Variance of the position from the converter's step, samples squared. */
  private double quantisation() {
    double steps = Math.max(1, 2 * Math.abs(c[1] + c[3]) / Math.max(quantum, 1e-300));
    double averaged = Math.min(steps, (2.0 * half + 1) * group);
    return quantum * quantum / 12 / averaged * square(1 / slope());
  }

  /** Standard uncertainty of the position, samples. */
  double uncertainty(double noiseOfOneSample) {
    return Math.sqrt(noiseOfOneSample * noiseOfOneSample * variance + extraVariance);
  }

  private static double square(double x) {
    return x * x;
  }

  private void rejectOutliers(double usualNoise) {
    if (half < 3) {
      return;
    }
    double worst = 0;
    double sum = 0;
    for (int i = -half; i <= half; i++) {
      double r = Math.abs(y[i + half] - value(i));
      worst = Math.max(worst, r);
      sum += r;
    }
    double scale = Math.max(usualNoise / Math.sqrt(group), sum / (2 * half + 1));
    if (worst > OUTLIER * scale) {
      RobustCubic.fit(y, weight, half, usualNoise / Math.sqrt(group), c, ROBUST_ROUNDS);
    }
  }
}
