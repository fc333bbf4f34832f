package toothmark.receiver;

/**
 * The textbook input for a switching sensor: low below 40 % and high above 60 % of the way from the
 * low to the high level; the edge is where the line between samples crosses 50 %.
 */
final class TwoLevelInput implements InputStage {

  private static final double LOW_SHARE = 0.4;
  private static final double HIGH_SHARE = 0.6;

  private final double lowThreshold;
  private final double middle;
  private final double highThreshold;
  private boolean high;
  private boolean started;
  private double crossing;
  private double edge;
  private double timeBefore;
  private double before;

  /**
   * Builds a stage.
   *
   * @param low usual low level, V
   * @param high usual high level, V
   */
  TwoLevelInput(double low, double high) {
    this.lowThreshold = low + LOW_SHARE * (high - low);
    this.middle = (low + high) / 2;
    this.highThreshold = low + HIGH_SHARE * (high - low);
  }

  @Override
  public Outcome next(double seconds, double volts) {
    if (started && before > middle && volts <= middle) {
      crossing = timeBefore + (before - middle) / (before - volts) * (seconds - timeBefore);
    }
    started = true;
    timeBefore = seconds;
    before = volts;
    if (high && volts < lowThreshold) {
      high = false;
      edge = crossing;
      return Outcome.EDGE;
    }
    high = high || volts > highThreshold;
    return Outcome.QUIET;
  }

  @Override
  public double edgeSeconds() {
    return edge;
  }
}
