package toothmark.edges;

/**
 * A sum of sines at whole multiples of one frequency.
 *
 * <p>Immutable; position is counted in samples, so that no precision is lost far from time zero.
 */
final class Harmonics {

  /** Samples after which the phasor is set anew, so that rounding does not add up. */
  private static final int RESTART = 1 << 14;

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

  /**
   * The integral at a position, up to a constant; a sample counts from half before to half after.
   */
  double flux(double position) {
    double sum = 0;
    for (int k = 0; k < cosines.length; k++) {
      double turn = 2 * Math.PI * (k + 1) * cyclesPerSample;
      sum += (cosines[k] * Math.sin(turn * position) - sines[k] * Math.cos(turn * position)) / turn;
    }
    return sum;
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

  /**
   * Takes the sum away by turning a phasor from one sample to the next.
   *
   * @param from first index in v, inclusive
   * @param to last index in v, exclusive
   * @param first position of v[0] in the record
   */
  void subtract(double[] v, int from, int to, long first) {
    for (int k = 0; k < cosines.length; k++) {
      if (cosines[k] != 0 || sines[k] != 0) {
        double turn = 2 * Math.PI * (k + 1) * cyclesPerSample;
        double start = turn * (first + from);
        for (int i = from; i < to; i += RESTART) {
          subtract(v, i, Math.min(to, i + RESTART), k, start + turn * (i - from));
        }
      }
    }
  }

  private void subtract(double[] v, int from, int to, int k, double angle) {
    double turn = 2 * Math.PI * (k + 1) * cyclesPerSample;
    double cosTurn = Math.cos(turn);
    double sinTurn = Math.sin(turn);
    double c = Math.cos(angle);
    double s = Math.sin(angle);
    for (int i = from; i < to; i++) {
      v[i] -= cosines[k] * c + sines[k] * s;
      double next = c * cosTurn - s * sinTurn;
      s = s * cosTurn + c * sinTurn;
      c = next;
    }
  }
}
