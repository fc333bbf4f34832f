package toothmark.receiver;

/**
 * The textbook input for a variable-reluctance sensor: a peak arms it, the next falling zero
 * crossing is the edge.
 *
 * <p>It is armed once the voltage passes L = max(share P, floor), where P is the highest voltage
 * between the last two edges and 0 before there are two; from the watchdog's time after an edge
 * without a new one L is the floor. A third of the last peak and a watchdog of 85 ms are the
 * figures of the MAX9924 to MAX9927 data sheet (19-4283 Rev 4, "Adaptive Peak Threshold"; from
 * memory).
 */
final class AdaptiveZeroCrossing implements InputStage {

  private final double share;
  private final double floorVolts;
  private final double watchdogSeconds;
  private boolean armed;
  private int edges;
  private double edge;
  private double peakBetween;
  private double peakSince;
  private double timeBefore;
  private double before;

  /**
   * Builds a stage.
   *
   * @param share of the last peak at which it arms
   * @param floorVolts it never arms below this, V
   * @param watchdogSeconds silence after which only the floor counts, s
   */
  AdaptiveZeroCrossing(double share, double floorVolts, double watchdogSeconds) {
    this.share = share;
    this.floorVolts = floorVolts;
    this.watchdogSeconds = watchdogSeconds;
  }

  @Override
  public Outcome next(double seconds, double volts) {
    Outcome outcome = Outcome.QUIET;
    if (armed && volts <= 0) {
      // The sample before was above zero: arming needs that, and any zero since would have fired.
      edge = timeBefore + before / (before - volts) * (seconds - timeBefore);
      peakBetween = edges > 0 ? peakSince : 0;
      peakSince = 0;
      edges++;
      armed = false;
      outcome = Outcome.EDGE;
    }
    peakSince = Math.max(peakSince, volts);
    armed = armed || volts > floorVolts && volts > level(seconds);
    timeBefore = seconds;
    before = volts;
    return outcome;
  }

  private double level(double seconds) {
    boolean stale = edges > 0 && seconds - edge >= watchdogSeconds;
    return stale ? floorVolts : Math.max(share * peakBetween, floorVolts);
  }

  @Override
  public double edgeSeconds() {
    return edge;
  }
}
