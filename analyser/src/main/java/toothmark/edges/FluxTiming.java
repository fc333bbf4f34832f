package toothmark.edges;

import toothmark.capture.SampledSignal;

/** Times each extremum of flux by the zero of the voltage, and weighs it. */
final class FluxTiming {

  private static final int BUFFER = 1 << 17;
  private static final int LONGEST_HALF_WIDTH = 1 << 14;

  /** Share of the distance from the zero to the half-height of the lobe that the fit covers. */
  private static final double WINDOW = 1.2;

  /** A swing this many standard deviations above what noise walks in the same time is sure. */
  private static final double SURE = 6.0;

  /** A neighbour this many times farther than the other is behind a silence. */
  private static final double FAR = 6.0;

  private static final double DRIFT = 0.02;

  /** Noise this many times the neighbours' is a burst, and counts for its own edge. */
  private static final double UNUSUAL = 1.5;

  /** A burst must not count more than this for its neighbours. */
  private static final double BURST = 2.0;

  /** Below so many samples a tooth its second harmonic is folded ... */
  private static final double FOLDED_BELOW = 5.0;

  private static final double WHOLLY_FOLDED_BELOW = 3.8;

  /** ... which moves a crossing by this share of the pitch, for a wave of usual shape. */
  private static final double FOLDED_SHARE = 0.025;

  private final Wave wave;
  private final SampledSignal signal;
  private final Extrema extrema;
  private final double[] tilts;
  private final SampleWindow window;
  private final CrossingFit fit;
  private double pooledNoise;

  private FluxTiming(Wave wave, Extrema extrema) {
    this.wave = wave;
    this.signal = wave.signal();
    this.extrema = extrema;
    this.tilts = FluxLevels.tilts(extrema);
    this.window = new SampleWindow(signal, BUFFER);
    this.fit = new CrossingFit(wave, window);
    this.pooledNoise = wave.noise();
  }

  /** Times all extrema: maxima are the falling train, minima the rising one. */
  static FluxTrains of(Wave wave, Extrema extrema) {
    return new FluxTiming(wave, extrema).run();
  }

  /** The two trains. */
  record FluxTrains(EdgeTrain falling, EdgeTrain rising) {}

  private FluxTrains run() {
    int half = extrema.size() / 2 + 1;
    EdgeList falling = new EdgeList(half);
    EdgeList rising = new EdgeList(half);
    double[] scale = SwingScale.fromSwings(extrema);
    double[] levels = FluxLevels.of(extrema);
    double[] prominences = extrema.prominences();
    Passings passings = new Passings(extrema.size());
    for (int i = 0; i < extrema.size(); i++) {
      locate(i, passings);
    }
    FormTiming.refine(wave, passings);
    for (int i = 0; i < extrema.size(); i++) {
      EdgeList list = extrema.isMaximum(i) ? falling : rising;
      double u = Math.hypot(passings.uncertainty[i], aliasing(i));
      list.add(
          signal.timeOf(between(i, passings.position[i])),
          u * signal.intervalSeconds(),
          strength(i, prominences[i], scale[i]),
          levels[i],
          swing(i) * signal.intervalSeconds(),
          passings.width[i] * signal.intervalSeconds());
    }
    return new FluxTrains(falling.train(), rising.train());
  }

  /** Edges stay in order: none lies beyond the next extremum. */
  private double between(int i, double position) {
    long from = i > 0 ? extrema.position(i - 1) : 0;
    long to = i + 1 < extrema.size() ? extrema.position(i + 1) : signal.size() - 1;
    return Math.max(from, Math.min(to, position));
  }

  private double uncertainty() {
    if (wave.oversampling() > 1) {
      // Points between the samples repeat the samples' noise.
      return fit.uncertainty(wave.noise()) * Math.sqrt(wave.oversampling());
    }
    return fit.uncertainty(fit.noise > UNUSUAL * pooledNoise ? fit.noise : pooledNoise);
  }

  /** Doubt from what was folded below half the sampling rate, samples. */
  private double aliasing(int i) {
    int at = Math.max(0, Math.min(i - 1, extrema.size() - 3));
    double pitch = extrema.size() < 3 ? 0 : extrema.position(at + 2) - extrema.position(at);
    double samples = pitch / wave.oversampling();
    double folded = (FOLDED_BELOW - samples) / (FOLDED_BELOW - WHOLLY_FOLDED_BELOW);
    return FOLDED_SHARE * pitch * Math.max(0, Math.min(1, folded));
  }

  private void locate(int i, Passings passings) {
    long at = extrema.position(i);
    int sign = extrema.isMaximum(i) ? -1 : 1;
    int half = halfWidth(i, passings);
    double offset = offset(i);
    boolean found =
        half >= 1 && fit.fit(at + 0.5, half, offset, sign, Math.max(wave.noise(), pooledNoise));
    if (found && !Double.isNaN(fit.position)) {
      double seen = Math.min(fit.noise, BURST * pooledNoise);
      pooledNoise = 0.9 * pooledNoise + 0.1 * Math.max(wave.noise() / 2, seen);
    } else {
      fit.fallBack(at, half, Double.isNaN(offset) ? 0 : offset);
    }
    passings.swing[i] = i + 1 < extrema.size() ? extrema.swing(i) : 0;
    passings.position[i] = between(i, fit.position);
    passings.uncertainty[i] = uncertainty();
    passings.reach[i] = fit.undisturbed ? half : 0;
    passings.offset[i] = Double.isNaN(offset) ? 0 : offset;
  }

  /**
   * What tilts the flux locally, V, where it is more than run-out or a gap can make it: faded in
   * around 2 % of the wave's height.
   */
  private double offset(int i) {
    if (extrema.size() < 2 || tilts[i] == 0) {
      return 0;
    }
    int to = Math.min(i, extrema.size() - 2);
    double height = Math.PI / 2 * extrema.swing(to) / extrema.distance(to);
    double share = tilts[i] / (DRIFT * height);
    double fade = share * share * share * share;
    return Double.isInfinite(fade) ? tilts[i] : tilts[i] * fade / (1 + fade);
  }

  /** Samples to each side that the fit may use; notes how wide the wave is. */
  private int halfWidth(int i, Passings passings) {
    long at = extrema.position(i);
    long left = i > 0 ? extrema.distance(i - 1) : LONGEST_HALF_WIDTH;
    long right = i + 1 < extrema.size() ? extrema.distance(i) : LONGEST_HALF_WIDTH;
    long reach = Math.min(LONGEST_HALF_WIDTH, Math.max(left, right));
    window.hold(Math.max(0, at - 3 * reach), Math.min(signal.size(), at + 3 * reach + 1));
    double swingLeft = i > 0 ? extrema.swing(i - 1) : Double.POSITIVE_INFINITY;
    double swingRight = i + 1 < extrema.size() ? extrema.swing(i) : Double.POSITIVE_INFINITY;
    long l = halfHeight(at, -1, Math.min(reach, left), Math.min(swingLeft, swingRight));
    long r = halfHeight(at, +1, Math.min(reach, right), Math.min(swingLeft, swingRight));
    passings.width[i] = i > 0 && i + 1 < extrema.size() ? l + r : 0;
    int half = (int) Math.max(1, Math.round(WINDOW * Math.min(l, r)));
    long room = Math.min(at, signal.size() - 2 - at) - 2;
    return unclipped(at, (int) Math.min(half, Math.max(0, room)));
  }

  /** How far from the extremum the flux has lost half of the swing. */
  private long halfHeight(long at, int step, long limit, double swing) {
    double sum = 0;
    long first = step > 0 ? at + 1 : at;
    for (long k = 0; k < limit; k++) {
      long j = first + step * k;
      if (j < 0 || j >= signal.size()) {
        return k;
      }
      sum += wave.push(window.at(j));
      if (Math.abs(sum) >= swing / 2) {
        return k + 1;
      }
    }
    return Math.max(1, limit / 2);
  }

  /** Shrinks the window so that neither side reaches a flat top. */
  private int unclipped(long at, int half) {
    if (Double.isInfinite(wave.limit())) {
      return half;
    }
    double limit = wave.limit() - 1e-6 * wave.limit();
    for (int k = 1; k <= half; k++) {
      if (Math.abs(wave.push(window.at(at - k))) >= limit
          || Math.abs(wave.push(window.at(at + k))) >= limit) {
        return Math.max(1, k - 1);
      }
    }
    return half;
  }

  private double strength(int i, double prominence, double scale) {
    return Math.min(scale > 0 ? Math.min(1, prominence / scale) : 0, aboveNoise(i));
  }

  /** The smaller of the swings on both sides over what noise would have walked. */
  private double aboveNoise(int i) {
    long left = i > 0 ? extrema.distance(i - 1) : Long.MAX_VALUE;
    long right = i + 1 < extrema.size() ? extrema.distance(i) : Long.MAX_VALUE;
    // Noise walks far in a long time; beside a silence the tooth has only its own.
    double longest = FAR * Math.min(left, right);
    double least = 1;
    for (int k = Math.max(0, i - 1); k <= i && k + 1 < extrema.size(); k++) {
      double time = Math.min(longest, extrema.distance(k));
      double walk = SURE * wave.walkNoise() * Math.sqrt(time);
      least = walk > 0 ? Math.min(least, extrema.swing(k) / walk) : least;
    }
    return least;
  }

  /** Mean of the swings on both sides, V samples. */
  private double swing(int i) {
    if (extrema.size() < 2) {
      return 0;
    }
    double left = extrema.swing(Math.max(0, i - 1));
    double right = extrema.swing(Math.min(i, extrema.size() - 2));
    return (left + right) / 2;
  }
}
