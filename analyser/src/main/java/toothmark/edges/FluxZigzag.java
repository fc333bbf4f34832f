package toothmark.edges;

import toothmark.capture.SampledSignal;

/**
 * Integrates a voltage to flux and lists every extremum that stands out from the noise.
 *
 * <p>The voltage of a coil is the derivative of its flux (Faraday), so a zero crossing is an
 * extremum of flux, and the swing of flux from slot to tooth does not depend on speed. The
 * hysteresis here is low on purpose; {@link FluxEdges} prunes the list once it knows the swing of
 * the neighbourhood.
 */
final class FluxZigzag {

  private static final int BLOCK = 1 << 16;

  /** A reversal below this many standard deviations of one sample is noise walking. */
  private static final double NOISE_FLOOR = 6.0;

  private final Wave wave;
  private final double hysteresis;
  private final Extrema found = new Extrema();
  private double flux;
  private double high = Double.NEGATIVE_INFINITY;
  private double low = Double.POSITIVE_INFINITY;
  private long highAt;
  private long lowAt;
  private int heading;

  private FluxZigzag(Wave wave) {
    this.wave = wave;
    this.hysteresis = NOISE_FLOOR * wave.walkNoise();
  }

  /**
   * Runs over the whole signal in blocks.
   *
   * @return extrema in turn, without the ends of the record
   */
  static Extrema of(Wave wave) {
    FluxZigzag z = new FluxZigzag(wave);
    SampledSignal signal = wave.signal();
    double[] block = new double[(int) Math.min(BLOCK, signal.size())];
    for (long first = 0; first < signal.size(); first += block.length) {
      int n = (int) Math.min(block.length, signal.size() - first);
      signal.read(first, block, n);
      z.add(block, n, first);
    }
    return z.found;
  }

  private void add(double[] v, int n, long first) {
    double f = flux;
    for (int i = 0; i < n; i++) {
      f += wave.push(v[i]);
      if (f > high) {
        high = f;
        highAt = first + i;
      }
      if (f < low) {
        low = f;
        lowAt = first + i;
      }
      if (heading >= 0 && high - f >= hysteresis) {
        turn(high, highAt, true);
        low = f;
        lowAt = first + i;
      } else if (heading <= 0 && f - low >= hysteresis) {
        turn(low, lowAt, false);
        high = f;
        highAt = first + i;
      }
    }
    flux = f;
  }

  private void turn(double extreme, long at, boolean maximum) {
    heading = maximum ? -1 : 1;
    if (at > 0) {
      found.add(at, extreme, maximum);
    }
    high = maximum ? Double.POSITIVE_INFINITY : Double.NEGATIVE_INFINITY;
    low = maximum ? Double.POSITIVE_INFINITY : Double.NEGATIVE_INFINITY;
  }
}
