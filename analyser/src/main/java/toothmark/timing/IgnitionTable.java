package toothmark.timing;

import java.util.Arrays;
import java.util.OptionalDouble;
import toothmark.rotation.AngleTimeline;

/**
 * An ignition table at one load: advance by speed, straight lines between its columns and level
 * beyond them.
 */
public final class IgnitionTable implements CommandedAdvance {

  private final double[] rpm;
  private final double[] degrees;

  /**
   * Builds a table; the arrays are copied.
   *
   * @param rpm speeds of the columns, rev/min, rising, at least one
   * @param degrees advance in each, degrees before TDC
   * @throws IllegalArgumentException if the lengths differ or the speeds do not rise
   */
  public IgnitionTable(double[] rpm, double[] degrees) {
    for (int i = 1; i < rpm.length; i++) {
      if (!(rpm[i] > rpm[i - 1])) {
        throw new IllegalArgumentException(
            "the speeds of an ignition table must rise: " + Arrays.toString(rpm));
      }
    }
    if (rpm.length == 0 || rpm.length != degrees.length) {
      throw new IllegalArgumentException(
          "an ignition table needs one advance for each speed, got "
              + rpm.length
              + " speeds and "
              + degrees.length
              + " advances");
    }
    this.rpm = rpm.clone();
    this.degrees = degrees.clone();
  }

  @Override
  public OptionalDouble at(double timeSeconds, AngleTimeline timeline, double leadDegrees) {
    return OptionalDouble.of(advance(ScheduledSpeed.rpm(timeSeconds, timeline, leadDegrees)));
  }

  /**
   * The advance at a speed.
   *
   * @param speedRpm rev/min
   * @return degrees before TDC
   */
  public double advance(double speedRpm) {
    int i = Arrays.binarySearch(rpm, speedRpm);
    if (i >= 0) {
      return degrees[i];
    }
    int above = -i - 1;
    if (above == 0 || above == rpm.length) {
      return degrees[Math.min(above, rpm.length - 1)];
    }
    double share = (speedRpm - rpm[above - 1]) / (rpm[above] - rpm[above - 1]);
    return degrees[above - 1] + share * (degrees[above] - degrees[above - 1]);
  }
}
