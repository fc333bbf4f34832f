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

  private final double share;
  private final double floorVolts;
  private final double watchdogSeconds;
  private boolean armed;
  private boolean hasEdge;
  private double lastEdge;
  private double peakBetween;
  private double peakSince;
  private double before;

  AdaptiveZeroCrossing(double share, double floorVolts, double watchdogSeconds) {
    this.share = share;
    this.floorVolts = floorVolts;
    this.watchdogSeconds = watchdogSeconds;
  }

  @Override
  public double next(double seconds, double volts) {
    double crossing = 0;
    if (armed && volts <= 0) {
      // The sample before was above zero, since arming needs a positive voltage.
      crossing = before / (before - volts);
      peakBetween = hasEdge ? peakSince : 0;
      peakSince = 0;
      hasEdge = true;
      lastEdge = seconds;
      armed = false;
    }
    peakSince = Math.max(peakSince, volts);
    if (volts > floorVolts && !armed) {
      boolean timedOut = hasEdge && seconds - lastEdge >= watchdogSeconds;
      armed = volts > (timedOut ? floorVolts : Math.max(peakBetween * share, floorVolts));
    }
    before = volts;
    return crossing;
  }
}
