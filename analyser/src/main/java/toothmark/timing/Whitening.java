package toothmark.timing;

/**
 * Turns observations one by one into such whose errors are independent, by a scalar Kalman filter,
 * the same one for values and columns (Harvey and Phillips, Biometrika 66 (1979) 49,
 * doi:10.1093/biomet/66.1.49).
 */
final class Whitening {

  private final CorrelatedFit.Errors errors;
  private final double[] state;
  private final double keep;
  private double spread;
  private double variance;

  Whitening(CorrelatedFit.Errors errors, int columns) {
    this.errors = errors;
    this.state = new double[columns + 1];
    this.spread = errors.wandering();
    this.keep = errors.correlation() * errors.correlation();
  }

  /**
   * Replaces columns and value by what is new in them; its variance is then known. What wanders is
   * the part before it grows.
   */
  void next(double[] row, double known, double growth) {
    double size = errors.growth(growth);
    double root = Math.sqrt(size);
    double own = known / size + errors.white();
    double gain = spread / (spread + own);
    variance = size * (spread + own);
    for (int j = 0; j < row.length; j++) {
      double innovation = row[j] / root - state[j];
      state[j] = errors.correlation() * (state[j] + gain * innovation);
      row[j] = root * innovation;
    }
    spread = keep * spread * (1 - gain) + (1 - keep) * errors.wandering();
  }

  /** Variance of what is new in the last observation. */
  double variance() {
    return variance;
  }

  /** An observation as {@link #next} takes it: its columns, then its value. */
  static void join(double[] row, double value, double[] into) {
    System.arraycopy(row, 0, into, 0, row.length);
    into[row.length] = value;
  }
}
