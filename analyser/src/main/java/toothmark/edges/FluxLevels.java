package toothmark.edges;

import java.util.Arrays;

/**
 * The height of each extremum of flux on the scale of its neighbours: a typical maximum is 1, a
 * typical minimum 0.
 *
 * <p>Slow tilt, from an offset or a recorder's coupling capacitor, is taken out first: over one
 * tooth the flux comes back to where it was, so the median rise from an extremum to the next of its
 * kind is tilt. The minimum in the gap of a missing tooth then stands well below 0 where teeth are
 * maxima, and the maximum in the gap well above 1 where leads are swapped.
 *
 * <p>Medians are taken at every few extrema and serve those around, since they hardly change.
 */
final class FluxLevels {

  private static final int SAME_KIND_EACH_SIDE = 6;
  private static final int LEVEL_STRIDE = 4;

  /** Over this many pitches to each side run-out has come round and cancels on usual wheels. */
  private static final int TILT_EACH_SIDE = 36;

  private static final int TILT_STRIDE = 12;

  private final Extrema e;
  private final double[] near = new double[4 * TILT_EACH_SIDE + 4];

  private FluxLevels(Extrema e) {
    this.e = e;
  }

  static double[] of(Extrema e) {
    FluxLevels l = new FluxLevels(e);
    double[] out = new double[e.size()];
    for (int from = 0; from < out.length; from += LEVEL_STRIDE) {
      int to = Math.min(out.length, from + LEVEL_STRIDE);
      l.fill(out, from, to);
    }
    return out;
  }

  private void fill(double[] out, int from, int to) {
    int at = (from + to) / 2;
    double slope = tilt(at, SAME_KIND_EACH_SIDE);
    double same = typical(at, at, slope);
    double other = e.size() < 2 ? same : typical(at, at + 1, slope);
    double high = e.isMaximum(at) ? same : other;
    double low = e.isMaximum(at) ? other : same;
    for (int i = from; i < to && high > low; i++) {
      double flux = e.flux(i) - slope * (e.position(i) - e.position(at));
      out[i] = (flux - low) / (high - low);
    }
  }

  /** Median rise of flux for each sample, that is, the local mean of the voltage, V. */
  static double[] tilts(Extrema e) {
    FluxLevels l = new FluxLevels(e);
    double[] out = new double[e.size()];
    for (int from = 0; from < out.length; from += TILT_STRIDE) {
      int to = Math.min(out.length, from + TILT_STRIDE);
      int at = (from + to) / 2;
      // Alike on both sides, so that a change of tilt does not pull; never less than a few.
      int room = Math.max(SAME_KIND_EACH_SIDE, Math.min(at, e.size() - 1 - at) / 2);
      Arrays.fill(out, from, to, l.tilt(at, Math.min(TILT_EACH_SIDE, room)));
    }
    return out;
  }

  private double tilt(int at, int eachSide) {
    int n = 0;
    int from = Math.max(0, at - 2 * eachSide);
    int to = Math.min(e.size() - 3, at + 2 * eachSide - 2);
    // A third of many serves as well; an odd stride takes both kinds.
    int stride = eachSide > SAME_KIND_EACH_SIDE ? 3 : 1;
    for (int i = from; i <= to; i += stride) {
      near[n++] = (e.flux(i + 2) - e.flux(i)) / (e.position(i + 2) - e.position(i));
    }
    return median(n);
  }

  /** Median height, brought to the place of {@code at}, of extrema of the kind of {@code kind}. */
  private double typical(int at, int kind, double slope) {
    int n = 0;
    for (int k = -SAME_KIND_EACH_SIDE; k <= SAME_KIND_EACH_SIDE; k++) {
      int i = kind + 2 * k;
      if (i >= 0 && i < e.size()) {
        near[n++] = e.flux(i) - slope * (e.position(i) - e.position(at));
      }
    }
    return median(n);
  }

  private double median(int n) {
    Arrays.sort(near, 0, n);
    return n == 0 ? 0 : (near[(n - 1) / 2] + near[n / 2]) / 2;
  }
}
