package toothmark.edges;

/**
 * Teeth of a few samples each: whether a record holds such, and what then takes its place.
 *
 * <p>Below about ten samples a tooth a cubic no longer fits between the samples, and the wave
 * itself looks like noise to a difference filter. Then the record is taken at eight times its rate.
 */
final class CoarseSampling {

  /** Below this many samples a tooth (at the fastest tenth) the record is coarse. */
  private static final double SAMPLES_A_TOOTH = 10;

  private static final double FASTEST = 0.1;

  /** Noise above this share of the whole is perhaps a wave of few samples. */
  private static final double NOISE_SHARE = 0.3;

  /** Noise assumed where it cannot be told, as a share of the whole. */
  private static final double PLAUSIBLE_NOISE = 0.03;

  /** Teeth follow each other more evenly than this (median change from one pitch to the next). */
  private static final double EVEN = 0.2;

  private CoarseSampling() {}

  /**
   * The record at a higher rate if that shows teeth which it holds coarsely.
   *
   * @param wave as recorded
   * @param extrema what was found in it
   * @param s its statistics
   * @return a finer wave, or the same one
   */
  static Wave refine(Wave wave, Extrema extrema, SampleStatistics s) {
    boolean few = extrema.size() > 3 && quantileOfPitch(extrema, FASTEST) < SAMPLES_A_TOOTH;
    if (!few && s.noise() < NOISE_SHARE * s.standardDeviation()) {
      return wave;
    }
    Wave fine = wave.upsampled(Math.min(s.noise(), PLAUSIBLE_NOISE * s.standardDeviation()));
    return few || isCoarseTeeth(FluxEdges.find(fine)) ? fine : wave;
  }

  private static boolean isCoarseTeeth(Extrema fine) {
    if (fine.size() < 4) {
      return false;
    }
    double[] pitch = pitches(fine);
    double[] change = new double[Math.max(1, pitch.length - 2)];
    for (int i = 0; i + 2 < pitch.length; i++) {
      change[i] = Math.abs(pitch[i + 2] - pitch[i]) / pitch[i];
    }
    return quantileOfPitch(fine, 0.5) < SAMPLES_A_TOOTH * UpsampledSignal.FACTOR
        && SwingScale.quantile(change, 0.5) < EVEN;
  }

  private static double quantileOfPitch(Extrema e, double share) {
    return SwingScale.quantile(pitches(e), share);
  }

  private static double[] pitches(Extrema e) {
    double[] pitch = new double[Math.max(0, e.size() - 2)];
    for (int i = 0; i < pitch.length; i++) {
      pitch[i] = e.position(i + 2) - e.position(i);
    }
    return pitch;
  }
}
