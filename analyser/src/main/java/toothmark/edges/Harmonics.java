package toothmark.edges;

import java.util.Optional;

/**
 * A sum of sines at whole multiples of one frequency.
 *
 * <p>Immutable; position is counted in samples, so that no precision is lost far from time zero.
 */
final class Harmonics {

  private static final Harmonics NONE = new Harmonics(0, new double[0], new double[0]);

  private final double cyclesPerSample;
  private final double[] cosines;
  private final double[] sines;

  private Harmonics(double cyclesPerSample, double[] cosines, double[] sines) {
    this.cyclesPerSample = cyclesPerSample;
    this.cosines = cosines;
    this.sines = sines;
  }

  static Harmonics none() {
    return NONE;
  }

  /**
   * Builds a sum.
   *
   * @param cyclesPerSample of the fundamental
   * @param cosines height of each multiple's cosine, from the fundamental on
   * @param sines likewise
   */
  static Harmonics of(double cyclesPerSample, double[] cosines, double[] sines) {
    return new Harmonics(cyclesPerSample, cosines.clone(), sines.clone());
  }

  /** Adds another sum of a frequency so near that both keep step over the record. */
  Harmonics plus(Harmonics other) {
    if (this == NONE) {
      return other;
    }
    int n = Math.max(cosines.length, other.cosines.length);
    double[] c = java.util.Arrays.copyOf(cosines, n);
    double[] s = java.util.Arrays.copyOf(sines, n);
    for (int k = 0; k < other.cosines.length; k++) {
      c[k] += other.cosines[k];
      s[k] += other.sines[k];
    }
    return new Harmonics(other.cyclesPerSample, c, s);
  }

  boolean isNone() {
    return cosines.length == 0;
  }

  double cyclesPerSample() {
    return cyclesPerSample;
  }

  /** Peak of the fundamental. */
  double amplitude() {
    return isNone() ? 0 : Math.hypot(cosines[0], sines[0]);
  }

  /** In the terms of a result; empty when there is none. */
  Optional<Hum> asHum(double intervalSeconds) {
    return isNone()
        ? Optional.empty()
        : Optional.of(new Hum(cyclesPerSample / intervalSeconds, amplitude()));
  }

  /** Takes the sum away from samples {@code first} on, by turning a phasor from one to the next. */
  void subtract(double[] v, int n, long first) {
    for (int k = 0; k < cosines.length; k++) {
      if (cosines[k] != 0 || sines[k] != 0) {
        subtract(v, n, first, k);
      }
    }
  }

  private void subtract(double[] v, int n, long first, int k) {
    double turn = 2 * Math.PI * (k + 1) * cyclesPerSample;
    double cosTurn = Math.cos(turn);
    double sinTurn = Math.sin(turn);
    double c = Math.cos(turn * first);
    double s = Math.sin(turn * first);
    for (int i = 0; i < n; i++) {
      v[i] -= cosines[k] * c + sines[k] * s;
      double next = c * cosTurn - s * sinTurn;
      s = s * cosTurn + c * sinTurn;
      c = next;
    }
  }
}
