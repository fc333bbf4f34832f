package toothmark.edges;

import java.util.Arrays;

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
      positions = Arrays.copyOf(positions, size * 2);
      fluxes = Arrays.copyOf(fluxes, size * 2);
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
   * @param hysteresis at each extremum, in the flux's unit; as long as this list
   * @return maxima and minima in turn, each at least the hysteresis from the next
   */
  Extrema standingOut(double[] hysteresis) {
    Extrema kept = new Extrema();
    if (size == 0) {
      return kept;
    }
    int candidate = 0;
    for (int i = 1; i < size; i++) {
      boolean maximum = isMaximum(candidate);
      boolean further = maximum ? fluxes[i] > fluxes[candidate] : fluxes[i] < fluxes[candidate];
      if (further) {
        candidate = i;
      } else if (isMaximum(i) != maximum
          && Math.abs(fluxes[i] - fluxes[candidate])
              >= Math.min(hysteresis[i], hysteresis[candidate])) {
        kept.add(positions[candidate], fluxes[candidate], maximum);
        candidate = i;
      }
    }
    kept.add(positions[candidate], fluxes[candidate], isMaximum(candidate));
    return kept;
  }
}
