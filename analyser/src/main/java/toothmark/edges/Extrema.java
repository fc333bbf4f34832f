package toothmark.edges;

import java.util.Arrays;
import java.util.function.IntToDoubleFunction;

/**
 * Maxima and minima of flux in turn.
 *
 * <p>Position is the index of the last sample that still pushed the flux outwards, so the crossing
 * of the voltage lies between it and the next. Flux is in volts times samples.
 */
final class Extrema {

  private int size;
  private long[] positions;
  private double[] fluxes;
  private boolean firstIsMaximum;

  Extrema() {
    this(256);
  }

  private Extrema(int capacity) {
    positions = new long[capacity];
    fluxes = new double[capacity];
  }

  void add(long position, double flux, boolean maximum) {
    if (size == 0) {
      firstIsMaximum = maximum;
    } else if (maximum != isMaximum(size)) {
      throw new IllegalStateException("maxima and minima must come in turn");
    }
    if (size == positions.length) {
      positions = Arrays.copyOf(positions, size + size / 4);
      fluxes = Arrays.copyOf(fluxes, size + size / 4);
    }
    positions[size] = position;
    fluxes[size] = flux;
    size++;
  }

  int size() {
    return size;
  }

  long position(int i) {
    return positions[i];
  }

  double flux(int i) {
    return fluxes[i];
  }

  boolean isMaximum(int i) {
    return firstIsMaximum == (i % 2 == 0);
  }

  /** Those from one position (inclusive) to another (exclusive). */
  Extrema between(long from, long to) {
    Extrema part = new Extrema();
    int at = Arrays.binarySearch(positions, 0, size, from);
    for (int i = at < 0 ? -at - 1 : at; i < size && positions[i] < to; i++) {
      part.add(positions[i], fluxes[i], isMaximum(i));
    }
    return part;
  }

  /** Swing from an extremum to the next, positive. */
  double swing(int i) {
    return Math.abs(fluxes[i + 1] - fluxes[i]);
  }

  /** Samples from an extremum to the next. */
  long distance(int i) {
    return positions[i + 1] - positions[i];
  }

  /**
   * Keeps the extrema that stand out by the given hysteresis.
   *
   * @param hysteresis at each extremum, in the flux's unit; asked once for each, in order
   * @return maxima and minima in turn, each at least the hysteresis from the next
   */
  Extrema standingOut(IntToDoubleFunction hysteresis) {
    Extrema kept = new Extrema();
    if (size == 0) {
      return kept;
    }
    int candidate = 0;
    double atCandidate = hysteresis.applyAsDouble(0);
    for (int i = 1; i < size; i++) {
      double here = hysteresis.applyAsDouble(i);
      boolean maximum = isMaximum(candidate);
      boolean further = maximum ? fluxes[i] > fluxes[candidate] : fluxes[i] < fluxes[candidate];
      if (further) {
        candidate = i;
        atCandidate = here;
      } else if (isMaximum(i) != maximum
          && Math.abs(fluxes[i] - fluxes[candidate]) >= Math.min(here, atCandidate)) {
        kept.add(positions[candidate], fluxes[candidate], maximum);
        candidate = i;
        atCandidate = here;
      }
    }
    kept.add(positions[candidate], fluxes[candidate], isMaximum(candidate));
    return kept;
  }

  /**
   * The prominence of each extremum: the swing that must be overlooked for it to vanish.
   *
   * <p>A flicker on the flank of a tooth is small itself and leaves the tooth large. Pairs are
   * closed as in rainflow counting (ASTM E1049-85, 5.4.4): a swing not larger than those on both
   * sides is a pair of its own; what never closes has the smaller of the swings beside it.
   *
   * @return one for each extremum, in the flux's unit
   */
  double[] prominences() {
    double[] out = new double[size];
    int[] open = new int[size];
    int n = 0;
    for (int i = 0; i < size; i++) {
      open[n++] = i;
      while (n >= 4 && closes(open, n)) {
        double d = between(open[n - 3], open[n - 2]);
        out[open[n - 3]] = d;
        out[open[n - 2]] = d;
        open[n - 3] = open[n - 1];
        n -= 2;
      }
    }
    for (int k = 0; k < n; k++) {
      double before = k > 0 ? between(open[k - 1], open[k]) : Double.POSITIVE_INFINITY;
      double after = k + 1 < n ? between(open[k], open[k + 1]) : Double.POSITIVE_INFINITY;
      out[open[k]] = Math.min(before, after);
    }
    return out;
  }

  private boolean closes(int[] open, int n) {
    double middle = between(open[n - 3], open[n - 2]);
    return middle <= between(open[n - 4], open[n - 3])
        && middle <= between(open[n - 2], open[n - 1]);
  }

  private double between(int i, int j) {
    return Math.abs(fluxes[i] - fluxes[j]);
  }
}
