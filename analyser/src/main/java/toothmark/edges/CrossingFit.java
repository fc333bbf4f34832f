package toothmark.edges;

/**
 * Places a zero crossing by a cubic through the samples around it.
 *
 * <p>A cubic over the steep part of a wave has a kernel without second moment, so neither the curve
 * of the wave nor a slow change of its height moves the zero, and over plus and minus 0.3 pitch its
 * standard deviation is 1.3 times the bound of Cramér and Rao for a wave near a sine (Kay,
 * Fundamentals of Statistical Signal Processing, 1993, ch. 3). The window is centred on the zero
 * again until it stays. Where a fourth power would move the zero by more than its noise, as beside
 * a gap, the window is made shorter, after the rule of Lepski (Theory Probab. Appl. 35, 1991,
 * 454-466): the widest window that agrees with the next order.
 *
 * <p>The standard uncertainty takes the noise from differences of successive residuals, which the
 * misfit of a smooth shape hardly enters, and the converter's step, which does not average out when
 * few steps lie in the window.
 */
final class CrossingFit {

  private static final int ROUNDS = 4;

  /** A jump between residuals this many times the mean one is no noise (normal: 3.5 of 60). */
  private static final double OUTLIER = 7.5;

  /** A quartic term moves the zero by less than this many standard deviations, or it matters. */
  private static final double AGREES = 1.9;

  private static final double SHRINK = 0.65;
  private static final int SHORTEST = 4;

  private final Wave wave;
  private final SampleWindow window;
  private final LocalCubic cubic = new LocalCubic();
  private int group;

  /** Fractional sample index of the crossing. */
  double position;

  /** Noise of one sample around it, V. */
  double noise;

  /** Whether all that was seen in the window belongs to the wave: no burst was weighted down. */
  boolean undisturbed;

  private double variance;
  private double extraVariance;

  CrossingFit(Wave wave, SampleWindow window) {
    this.wave = wave;
    this.window = window;
  }

  /**
   * Fits around a first guess.
   *
   * @param guess fractional sample index
   * @param halfWidth samples on each side
   * @param offset what to take off the wave besides its own offset, V
   * @param slopeSign +1 for a rise, -1 for a fall
   * @param usualNoise of one sample, V; residuals far above it are outliers
   * @return whether a crossing of that direction was found within the window
   */
  boolean fit(double guess, int halfWidth, double offset, int slopeSign, double usualNoise) {
    position = guess;
    if (!centre(halfWidth, offset, slopeSign, usualNoise)) {
      return false;
    }
    for (int width = shorter(halfWidth); width >= SHORTEST; width = shorter(width)) {
      double pointNoise = usualNoise / Math.sqrt(group);
      double limit = AGREES * pointNoise * Math.sqrt(cubic.middleVariance());
      double wider = position;
      if (Math.abs(cubic.quarticEffect()) <= limit
          || !centre(width, offset, slopeSign, usualNoise)) {
        position = wider;
        break;
      }
    }
    return true;
  }

  private static int shorter(int width) {
    return (int) (width * SHRINK);
  }

  /** Lays the curve, moves to its zero, and again until the window is centred. */
  private boolean centre(int halfWidth, double offset, int slopeSign, double usualNoise) {
    group =
        Math.max(1, (2 * halfWidth + 2 * LocalCubic.LONGEST_HALF) / (2 * LocalCubic.LONGEST_HALF))
            | 1;
    cubic.setHalf(Math.max(1, halfWidth / group));
    long middle = 0;
    for (int round = 0; round < ROUNDS; round++) {
      middle = Math.round(position);
      long reach = (long) cubic.half() * group + group / 2;
      if (!window.holds(middle - reach, middle + reach + 1)) {
        return false;
      }
      load(middle, offset);
      layCurve(usualNoise / Math.sqrt(group));
      double root = cubic.root();
      if (!(cubic.slope() * slopeSign > 0) || !(Math.abs(root) <= cubic.half())) {
        return false;
      }
      double before = position;
      position = middle + root * group;
      if (Math.round(position) == middle || Math.abs(position - before) < 0.01) {
        break;
      }
    }
    noise = group == 1 ? cubic.residualNoise() : sampleNoise(middle);
    double slope = cubic.slope() / group;
    variance = cubic.middleVariance() / group / (slope * slope);
    extraVariance = quantisation() / (slope * slope);
    return true;
  }

  /**
   * Noise from second differences of the samples, where they are so many to a point that the wave
   * has no part in these; their variance is 6 times that of white noise. They are those that the
   * curve was laid through: around the zero itself fewer may be at hand.
   */
  private double sampleNoise(long middle) {
    long reach = (long) cubic.half() * group;
    long from = middle - reach;
    double sum = 0;
    double before = push(from);
    double now = push(from + 1);
    for (long j = from + 2; j < from + 2 * reach; j++) {
      double after = push(j);
      double d = before - 2 * now + after;
      sum += d * d;
      before = now;
      now = after;
    }
    return Math.sqrt(sum / (6.0 * (2 * reach - 2)));
  }

  private double push(long j) {
    return wave.push(window.at(j));
  }

  /** Loads means of groups of samples, so that a long window costs no more than a short one. */
  private void load(long middle, double offset) {
    int half = cubic.half();
    for (int i = 0; i <= 2 * half; i++) {
      double sum = 0;
      long from = middle + (long) (i - half) * group - group / 2;
      for (int j = 0; j < group; j++) {
        sum += push(from + j);
      }
      cubic.y[i] = sum / group - offset;
    }
  }

  private void layCurve(double pointNoise) {
    cubic.clearWeights();
    cubic.fit();
    undisturbed = !(cubic.isCubic() && cubic.worstJump(pointNoise) > OUTLIER);
    if (!undisturbed) {
      cubic.fitRobustly(pointNoise);
    }
  }

  /**
   * Variance of the mean from the converter's step, V squared: the error of a step's place averages
   * over the steps that lie in the window, not over the samples.
   */
  private double quantisation() {
    double steps = Math.max(1, Math.abs(cubic.rise()) / Math.max(wave.quantum(), 1e-300));
    double averaged = Math.min(steps * steps, (2.0 * cubic.half() + 1) * group);
    return wave.quantum() * wave.quantum() / 12 / averaged;
  }

  /** Takes the straight line between the two samples where no curve could be laid. */
  void fallBack(long extremum, int halfWidth, double offset) {
    long at = Math.min(extremum, wave.signal().size() - 2);
    double before = wave.push(window.at(at)) - offset;
    double after = wave.push(window.at(at + 1)) - offset;
    double share = before == after ? 0.5 : before / (before - after);
    position = at + Math.min(1, Math.max(0, share));
    noise = 0;
    variance = 0;
    // Nothing better is known than that the zero lies within the lobe.
    double lobe = Math.max(1, halfWidth);
    undisturbed = false;
    extraVariance = lobe * lobe / 12;
  }

  /** Standard uncertainty of the position, samples. */
  double uncertainty(double noiseOfOneSample) {
    return Math.sqrt(noiseOfOneSample * noiseOfOneSample * variance + extraVariance);
  }
}
