package toothmark.receiver;

/**
 * An input with two fixed levels: above the upper it is armed, the fall through the lower is the
 * edge.
 *
 * <p>With levels alike about zero it is a comparator with hysteresis, such as the NCV1124 (data
 * sheet: 160 mV to each side, typically; no adaptation); with equal levels a plain threshold.
 */
final class ThresholdInput implements InputStage {

  private final double upper;
  private final double lower;
  private boolean armed;
  private double edge;
  private double timeBefore;
  private double before;

  /**
   * Builds a stage.
   *
   * @param upper level above which it is armed, V
   * @param lower level whose fall is the edge, V; not above the upper
   */
  ThresholdInput(double upper, double lower) {
    this.upper = upper;
    this.lower = lower;
  }

  @Override
  public Outcome next(double seconds, double volts) {
    Outcome outcome = Outcome.QUIET;
    if (armed && volts <= lower) {
      edge = timeBefore + (before - lower) / (before - volts) * (seconds - timeBefore);
      armed = false;
      outcome = Outcome.EDGE;
    }
    armed = armed || volts > upper;
    timeBefore = seconds;
    before = volts;
    return outcome;
  }

  @Override
  public double edgeSeconds() {
    return edge;
  }
}
