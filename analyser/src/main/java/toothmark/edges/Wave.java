package toothmark.edges;

import toothmark.capture.SampledSignal;

/**
 * A voltage to be read as a wave, with what the first pass found out about it.
 *
 * @param signal the samples, hum taken away
 * @param offset level about which it swings, V
 * @param limit where the recorder or an input cut it off, V from the offset; infinite when it did
 *     not. Flux is taken from the voltage cut off alike on both sides, so that it stays bounded
 * @param noise standard deviation of one sample, V
 * @param walkNoise the same for sums of samples: larger than noise when neighbours share theirs
 * @param quantum step of the converter, V
 * @param oversampling samples here for each one recorded
 */
record Wave(
    SampledSignal signal,
    double offset,
    double limit,
    double noise,
    double walkNoise,
    double quantum,
    int oversampling) {

  private static final double CUT_OFF_SHARE = 1e-3;

  static Wave of(SampledSignal signal, SampleStatistics s) {
    double offset = s.offset();
    double limit = Double.POSITIVE_INFINITY;
    if (s.flatHighShare() > CUT_OFF_SHARE) {
      limit = s.max() - offset;
    }
    if (s.flatLowShare() > CUT_OFF_SHARE) {
      limit = Math.min(limit, offset - s.min());
    }
    return new Wave(signal, offset, limit, s.noise(), s.noise(), s.quantum(), 1);
  }

  Wave without(HumTrack hum) {
    return with(new HumFreeSignal(signal, hum), noise, oversampling);
  }

  /**
   * The same at a higher rate, for teeth of a few samples each.
   *
   * @param plausibleNoise of one recorded sample, V, since noise cannot be told from such teeth
   */
  Wave upsampled(double plausibleNoise) {
    return with(new UpsampledSignal(signal), plausibleNoise, UpsampledSignal.FACTOR);
  }

  private Wave with(SampledSignal other, double otherNoise, int factor) {
    double shared = otherNoise * Math.sqrt(factor);
    return new Wave(other, offset, limit, otherNoise, shared, quantum, factor);
  }

  /** The voltage about the offset, cut off alike on both sides. */
  double push(double volts) {
    double v = volts - offset;
    return v > limit ? limit : v < -limit ? -limit : v;
  }
}
