package toothmark.receiver;

/**
 * How far the peak before each tooth rises over the level that arms the reference circuit.
 *
 * <p>The level is that of {@link AdaptiveZeroCrossing}: a share of the last peak that armed it, the
 * floor at least, and the floor alone after the watchdog's time without an edge. It passes no edges
 * on.
 */
final class ArmingMargins implements InputStage {

  private final double[] toothTimes;
  private final double[] margins;
  private int tooth;
  private double peak;
  private double lastPeak;
  private double lastArmed = Double.NEGATIVE_INFINITY;

  /**
   * Prepares for one run.
   *
   * @param toothTimes when teeth passed, s, rising
   */
  ArmingMargins(double[] toothTimes) {
    this.toothTimes = toothTimes;
    this.margins = new double[toothTimes.length];
  }

  @Override
  public Outcome next(double seconds, double volts) {
    while (tooth < toothTimes.length && seconds > toothTimes[tooth]) {
      pass(toothTimes[tooth]);
    }
    peak = Math.max(peak, volts);
    return Outcome.QUIET;
  }

  private void pass(double seconds) {
    boolean stale = seconds - lastArmed >= Conditioner.WATCHDOG_SECONDS;
    double level =
        Math.max(stale ? 0 : Conditioner.ARMING_SHARE * lastPeak, Conditioner.FLOOR_VOLTS);
    margins[tooth] = peak / level;
    if (peak > level) {
      lastPeak = peak;
      lastArmed = seconds;
    }
    peak = 0;
    tooth++;
  }

  @Override
  public double edgeSeconds() {
    throw new IllegalStateException("it passes no edges on");
  }

  /** Peak over level for each tooth; 0 for one after the end of the record. */
  double[] margins() {
    return margins.clone();
  }
}
