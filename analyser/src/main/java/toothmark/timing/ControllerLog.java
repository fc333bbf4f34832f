package toothmark.timing;

import java.util.Arrays;
import java.util.OptionalDouble;

/** What a controller logged on its own clock: speed and commanded advance. */
public final class ControllerLog {

  private final double[] times;
  private final double[] rpms;
  private final double[] advances;

  /**
   * Builds a log; the arrays are copied.
   *
   * @param timeSeconds on the controller's clock, s, rising
   * @param rpm speed, rev/min
   * @param advanceDegrees commanded advance, degrees before TDC
   * @throws IllegalArgumentException if the lengths differ or the times do not rise
   */
  public ControllerLog(double[] timeSeconds, double[] rpm, double[] advanceDegrees) {
    if (rpm.length != timeSeconds.length || advanceDegrees.length != timeSeconds.length) {
      throw new IllegalArgumentException("a controller log needs three arrays of one length");
    }
    for (int i = 1; i < timeSeconds.length; i++) {
      if (!(timeSeconds[i] > timeSeconds[i - 1])) {
        throw new IllegalArgumentException(
            "the times of a controller log must rise, got "
                + timeSeconds[i]
                + " s after "
                + timeSeconds[i - 1]
                + " s in row "
                + (i + 1));
      }
    }
    this.times = timeSeconds.clone();
    this.rpms = rpm.clone();
    this.advances = advanceDegrees.clone();
  }

  /**
   * How many rows there are.
   *
   * @return 0 or more
   */
  public int size() {
    return times.length;
  }

  /**
   * Time of a row.
   *
   * @param row from 0
   * @return s, on the controller's clock
   */
  public double time(int row) {
    return times[row];
  }

  /**
   * Speed in a row.
   *
   * @param row from 0
   * @return rev/min
   */
  public double rpm(int row) {
    return rpms[row];
  }

  /**
   * Commanded advance in a row.
   *
   * @param row from 0
   * @return degrees before TDC
   */
  public double advance(int row) {
    return advances[row];
  }

  /**
   * Commanded advance between rows.
   *
   * @param timeSeconds on the controller's clock, s
   * @return degrees before TDC; empty outside the log
   */
  public OptionalDouble advanceAt(double timeSeconds) {
    int i = Arrays.binarySearch(times, timeSeconds);
    if (i >= 0) {
      return OptionalDouble.of(advances[i]);
    }
    int above = -i - 1;
    if (above == 0 || above == times.length) {
      return OptionalDouble.empty();
    }
    double share = (timeSeconds - times[above - 1]) / (times[above] - times[above - 1]);
    return OptionalDouble.of(advances[above - 1] + share * (advances[above] - advances[above - 1]));
  }

  /** The rows from one to before another. */
  ControllerLog rows(int fromInclusive, int toExclusive) {
    return new ControllerLog(
        Arrays.copyOfRange(times, fromInclusive, toExclusive),
        Arrays.copyOfRange(rpms, fromInclusive, toExclusive),
        Arrays.copyOfRange(advances, fromInclusive, toExclusive));
  }

  /** Median step from row to row, s. */
  double intervalSeconds() {
    double[] steps = new double[times.length - 1];
    for (int i = 0; i < steps.length; i++) {
      steps[i] = times[i + 1] - times[i];
    }
    return Robust.median(steps);
  }
}
