package toothmark.timing;

import java.util.Arrays;
import java.util.OptionalDouble;
import java.util.stream.IntStream;

/** What a controller logged on its own clock: speed, commanded advance and, if it did, load. */
public final class ControllerLog {

  private final double[] times;
  private final double[] rpms;
  private final double[] advances;
  private final double[] loads;

  /**
   * Builds a log without loads; the arrays are copied.
   *
   * @param timeSeconds as below
   * @param rpm as below
   * @param advanceDegrees as below
   */
  public ControllerLog(double[] timeSeconds, double[] rpm, double[] advanceDegrees) {
    this(timeSeconds, rpm, advanceDegrees, new double[0]);
  }

  /**
   * Builds a log; the arrays are copied.
   *
   * @param timeSeconds on the controller's clock, s, rising
   * @param rpm speed, rev/min
   * @param advanceDegrees commanded advance, degrees before TDC; none when it was not logged
   * @param load in whatever unit the controller has, not a number where it is not known; none when
   *     it was not logged
   * @throws IllegalArgumentException if the lengths differ or the times do not rise
   */
  public ControllerLog(double[] timeSeconds, double[] rpm, double[] advanceDegrees, double[] load) {
    int rows = timeSeconds.length;
    if (rpm.length != rows
        || advanceDegrees.length != rows && advanceDegrees.length > 0
        || load.length != rows && load.length > 0) {
      throw new IllegalArgumentException("a controller log needs arrays of one length");
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
    this.loads = load.clone();
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
   * Whether commanded advance was logged.
   *
   * @return false when it must be known from elsewhere
   */
  public boolean hasAdvance() {
    return advances.length > 0;
  }

  /**
   * Whether load was logged.
   *
   * @return true when it is known in one row or more
   */
  public boolean hasLoad() {
    return !Arrays.stream(loads).allMatch(Double::isNaN);
  }

  /**
   * Commanded advance in a row.
   *
   * @param row from 0
   * @return degrees before TDC
   * @throws IndexOutOfBoundsException when it was not logged
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
    return between(advances, timeSeconds);
  }

  /**
   * Load between rows.
   *
   * @param timeSeconds on the controller's clock, s
   * @return in whatever unit the controller has; empty outside the log and beside rows without it
   */
  public OptionalDouble loadAt(double timeSeconds) {
    return hasLoad() ? between(loads, timeSeconds) : OptionalDouble.empty();
  }

  private OptionalDouble between(double[] values, double timeSeconds) {
    int i = Arrays.binarySearch(times, timeSeconds);
    int above = i >= 0 ? i : -i - 1;
    if (i < 0 && (above == 0 || above == times.length)) {
      return OptionalDouble.empty();
    }
    double value = values[above];
    if (i < 0) {
      double share = (timeSeconds - times[above - 1]) / (times[above] - times[above - 1]);
      value = values[above - 1] + share * (values[above] - values[above - 1]);
    }
    return Double.isNaN(value) ? OptionalDouble.empty() : OptionalDouble.of(value);
  }

  /**
   * The log with the advance that a table commands at its speeds and loads; not a number where the
   * load is not known.
   *
   * @throws IllegalArgumentException if it holds no loads
   */
  ControllerLog commandedBy(IgnitionTable table) {
    if (!hasLoad()) {
      throw new IllegalArgumentException("a controller log without loads reads no ignition table");
    }
    double[] degrees =
        IntStream.range(0, size())
            .mapToDouble(
                i -> Double.isNaN(loads[i]) ? Double.NaN : table.advance(rpms[i], loads[i]))
            .toArray();
    return new ControllerLog(times, rpms, degrees, loads);
  }

  /** The rows from one to before another. */
  ControllerLog rows(int fromInclusive, int toExclusive) {
    return new ControllerLog(
        Arrays.copyOfRange(times, fromInclusive, toExclusive),
        Arrays.copyOfRange(rpms, fromInclusive, toExclusive),
        range(advances, fromInclusive, toExclusive),
        range(loads, fromInclusive, toExclusive));
  }

  private static double[] range(double[] values, int fromInclusive, int toExclusive) {
    return values.length == 0 ? values : Arrays.copyOfRange(values, fromInclusive, toExclusive);
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
