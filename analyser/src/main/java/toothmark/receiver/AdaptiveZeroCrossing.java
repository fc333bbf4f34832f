package toothmark.receiver;

/**
 * The textbook input for a variable-reluctance sensor: a peak arms it, the next falling zero
 * crossing is the edge.
 *
 * <p>It is armed once the voltage passes L = max(P/3, 0.03 V), where P is the highest voltage
 * between the last two edges and 0 before there are two; from 85 ms after an edge without a new one
 * L is 0.03 V. A third of the last peak and a watchdog of 85 ms are the figures of the MAX9924 to
 * MAX9927 data sheet (19-4283 Rev 4, "Adaptive Peak Threshold"; from memory).
 */
final class AdaptiveZeroCrossing implements InputStage {

  static final double SHARE = 1.0 / 3;
  static final double FLOOR_VOLTS = 0.03;
  static final double WATCHDOG_SECONDS = 0.085;

  private boolean armed;
  private int edges;
  private double edge;
  private double peakBetween;
  private double peakSince;
  private double timeBefore;
  private double before;

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
    armed = armed || volts > FLOOR_VOLTS && volts > level(seconds);
    timeBefore = seconds;
    before = volts;
    return outcome;
  }

  private double level(double seconds) {
    boolean stale = edges > 0 && seconds - edge >= WATCHDOG_SECONDS;
    return stale ? FLOOR_VOLTS : Math.max(SHARE * peakBetween, FLOOR_VOLTS);
  }

  @Override
  public double edgeSeconds() {
    return edge;
  }
}
