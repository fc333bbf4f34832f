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

  private final SampledSignal signal;
  private final SampleStatistics statistics;
  private final double offset;
  private final Extrema extrema;
  private final double noise;
  private final SampleWindow window;
  private final CrossingFit fit;
  private double pooledNoise;

  private FluxTiming(
      SampledSignal signal, SampleStatistics statistics, double offset, Extrema extrema) {
    this.signal = signal;
    this.statistics = statistics;
    this.offset = offset;
    this.extrema = extrema;
    this.noise = statistics.noise();
    this.window = new SampleWindow(signal, BUFFER);
    this.fit = new CrossingFit(window, statistics.quantum());
    this.pooledNoise = noise;
  }

  /** Fills the two trains. */
  static CrankEdges of(
      SampledSignal signal, SampleStatistics statistics, double offset, Extrema extrema) {
    return new FluxTiming(signal, statistics, offset, extrema).run();
  }

  private CrankEdges run() {
    EdgeList falling = new EdgeList();
    EdgeList rising = new EdgeList();
    double[] scale = SwingScale.fromSwings(extrema);
    double[] levels = FluxLevels.of(extrema);
    for (int i = 0; i < extrema.size(); i++) {
      EdgeList list = extrema.isMaximum(i) ? falling : rising;
      locate(i);
      double position = fit.position;
      double u = fit.uncertainty(Math.max(pooledNoise, fit.noise / 2));
      list.add(
          signal.timeOf(position), u * signal.intervalSeconds(), strength(i, scale[i]), levels[i]);
    }
    EdgeTrain down = falling.train();
    EdgeTrain up = rising.train();
    return new CrankEdges(
        SensorKind.VARIABLE_RELUCTANCE,
        down,
        up,
        Quality.of(signal, statistics, offset, down.size() >= up.size() ? down : up));
  }

  private void locate(int i) {
    long at = extrema.position(i);
    int sign = extrema.isMaximum(i) ? -1 : 1;
    int half = halfWidth(i);
    boolean found =
        half >= 1 && fit.fit(at + 0.5, half, offset, sign, Math.max(noise, pooledNoise));
    if (found) {
      pooledNoise = 0.9 * pooledNoise + 0.1 * Math.max(noise / 2, fit.noise);
    } else {
      fit.fallBack(at, half, offset);
    }
  }

  /** Samples to each side that the fit may use. */
  private int halfWidth(int i) {
    long at = extrema.position(i);
    long left = i > 0 ? extrema.distance(i - 1) : LONGEST_HALF_WIDTH;
    long right = i + 1 < extrema.size() ? extrema.distance(i) : LONGEST_HALF_WIDTH;
    long reach = Math.min(LONGEST_HALF_WIDTH, Math.max(left, right));
    window.hold(Math.max(0, at - 3 * reach), Math.min(signal.size(), at + 3 * reach + 1));
    double swingLeft = i > 0 ? extrema.swing(i - 1) : Double.POSITIVE_INFINITY;
    double swingRight = i + 1 < extrema.size() ? extrema.swing(i) : Double.POSITIVE_INFINITY;
    long l = halfHeight(at, -1, Math.min(reach, left), Math.min(swingLeft, swingRight));
    long r = halfHeight(at, +1, Math.min(reach, right), Math.min(swingLeft, swingRight));
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
      sum += window.at(j) - offset;
      if (Math.abs(sum) >= swing / 2) {
        return k + 1;
      }
    }
    return Math.max(1, limit / 2);
  }

  /** Shrinks the window so that neither side reaches a flat top. */
  private int unclipped(long at, int half) {
    boolean high = statistics.flatHighShare() > 0;
    boolean low = statistics.flatLowShare() > 0;
    for (int k = 1; k <= half && (high || low); k++) {
      for (long j = at - k; j <= at + k; j += 2L * k) {
        double v = window.at(j);
        if (high && v >= statistics.max() || low && v <= statistics.min()) {
          return Math.max(1, k - 1);
        }
      }
    }
    return half;
  }

  private double strength(int i, double scale) {
    double s = 1;
    if (i > 0) {
      s = Math.min(s, side(i - 1, scale));
    }
    if (i + 1 < extrema.size()) {
      s = Math.min(s, side(i, scale));
    }
    return s;
  }

  private double side(int swing, double scale) {
    double size = extrema.swing(swing);
    double walk = SURE * noise * Math.sqrt(extrema.distance(swing));
    return Math.min(scale > 0 ? size / scale : 0, walk > 0 ? size / walk : 1);
  }
}
