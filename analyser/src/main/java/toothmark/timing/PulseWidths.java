package toothmark.timing;

import org.apache.commons.math3.stat.descriptive.SummaryStatistics;

/**
 * What a channel's pulses keep from turn to turn: their width in angle, as metal that passes a
 * sensor does, or their length in time, as the charge of a coil does.
 *
 * @param scatterInAngle standard deviation of the widths in degrees, as a share of their mean
 * @param scatterInTime the same of their lengths in seconds
 */
public record PulseWidths(double scatterInAngle, double scatterInTime) {

  private static final int ENOUGH = 5;

  /**
   * One scatter must be so many times the other: a recorder's steps add to both alike, and where
   * they are much of either, or the speed keeps, the two can't be told apart.
   */
  private static final double CLEARLY = 2;

  /**
   * Looks at pulses.
   *
   * @param degrees width of each, degrees; NaN where it is not known
   * @param rpm speed at each, rev/min
   * @return their scatter; NaN where fewer than five widths are known
   */
  public static PulseWidths of(double[] degrees, double[] rpm) {
    SummaryStatistics angle = new SummaryStatistics();
    SummaryStatistics time = new SummaryStatistics();
    for (int i = 0; i < degrees.length; i++) {
      if (!Double.isNaN(degrees[i])) {
        angle.addValue(degrees[i]);
        time.addValue(degrees[i] / rpm[i]);
      }
    }
    return angle.getN() < ENOUGH
        ? new PulseWidths(Double.NaN, Double.NaN)
        : new PulseWidths(share(angle), share(time));
  }

  private static double share(SummaryStatistics of) {
    return of.getStandardDeviation() / of.getMean();
  }

  /**
   * Whether they clearly keep their width in angle.
   *
   * @return false where that can't be told
   */
  public boolean keepAngle() {
    return CLEARLY * scatterInAngle < scatterInTime;
  }

  /**
   * Whether they clearly keep their length in time.
   *
   * @return false where that can't be told
   */
  public boolean keepTime() {
    return CLEARLY * scatterInTime < scatterInAngle;
  }
}
