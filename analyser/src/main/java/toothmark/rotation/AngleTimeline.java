package toothmark.rotation;

import java.util.Arrays;
import java.util.List;
import toothmark.units.Interval;

/**
 * The crank's angle as a function of time.
 *
 * <p>Angles are unrolled degrees after tooth 1 of revolution 0, so that tooth 1 of revolution r
 * passes at 360 r. Between its knots the angle is interpolated; outside them it is not defined.
 */
public final class AngleTimeline {

  private final double[] times;
  private final double[] degrees;
  private final double[] rates;
  private final List<Interval> unknown;

  /**
   * Builds a timeline; the arrays are copied.
   *
   * @param times s, strictly rising, at least two
   * @param degrees unrolled angle at each, strictly rising
   * @param degreesPerSecond slope at each, positive
   * @param unknown spans between knots in which the angle is not known, in time order
   */
  public AngleTimeline(
      double[] times, double[] degrees, double[] degreesPerSecond, List<Interval> unknown) {
    if (times.length < 2
        || times.length != degrees.length
        || times.length != degreesPerSecond.length) {
      throw new IllegalArgumentException(
          "an angle timeline needs three arrays of one length, two knots or more");
    }
    this.times = times.clone();
    this.degrees = degrees.clone();
    this.rates = degreesPerSecond.clone();
    this.unknown = List.copyOf(unknown);
  }

  /**
   * Builds a timeline without unknown spans.
   *
   * @param times s, strictly rising, at least two
   * @param degrees unrolled angle at each, strictly rising
   * @param degreesPerSecond slope at each, positive
   */
  public AngleTimeline(double[] times, double[] degrees, double[] degreesPerSecond) {
    this(times, degrees, degreesPerSecond, List.of());
  }

  /**
   * From the first knot to the last.
   *
   * @return s
   */
  public Interval span() {
    return new Interval(times[0], times[times.length - 1]);
  }

  /**
   * Whether the angle is known at an instant.
   *
   * @param timeSeconds s
   * @return true between the first and the last knot, outside unknown spans
   */
  public boolean covers(double timeSeconds) {
    return coversAll(timeSeconds, timeSeconds);
  }

  /**
   * Angle at an instant.
   *
   * @param timeSeconds s, between the first and the last knot
   * @return unrolled degrees after tooth 1 of revolution 0
   * @throws IllegalArgumentException if the instant is before the first knot or after the last
   */
  public double degreesAt(double timeSeconds) {
    int i = segment(timeSeconds);
    double h = times[i + 1] - times[i];
    double u = (timeSeconds - times[i]) / h;
    double a = degrees[i];
    double b = degrees[i + 1];
    double u2 = u * u;
    double u3 = u2 * u;
    return (2 * u3 - 3 * u2 + 1) * a
        + (u3 - 2 * u2 + u) * h * rates[i]
        + (3 * u2 - 2 * u3) * b
        + (u3 - u2) * h * rates[i + 1];
  }

  /**
   * Speed at an instant.
   *
   * @param timeSeconds s, between the first and the last knot
   * @return rev/min
   * @throws IllegalArgumentException if the instant is before the first knot or after the last
   */
  public double rpmAt(double timeSeconds) {
    int i = segment(timeSeconds);
    double u = (timeSeconds - times[i]) / (times[i + 1] - times[i]);
    return (rates[i] + u * (rates[i + 1] - rates[i])) / 6.0;
  }

  /**
   * Whether the angle turned from one instant to another is known.
   *
   * @param from s
   * @param to s, not before
   * @return true when both are covered and no unknown span lies between
   */
  public boolean coversAll(double from, double to) {
    if (!(from >= times[0] && to <= times[times.length - 1])) {
      return false;
    }
    int low = 0;
    int high = unknown.size();
    while (low < high) { // to the first that ends later
      int middle = (low + high) / 2;
      boolean ended = unknown.get(middle).endExclusive() <= from;
      low = ended ? middle + 1 : low;
      high = ended ? high : middle;
    }
    return low == unknown.size() || unknown.get(low).startInclusive() >= to;
  }

  /**
   * Speed at an instant, or at the nearest one at which the angle is known.
   *
   * @param timeSeconds s
   * @return rev/min; NaN in a span within which the angle is not known
   */
  public double rpmNear(double timeSeconds) {
    double t = Math.max(times[0], Math.min(timeSeconds, times[times.length - 1]));
    return covers(t) ? rpmAt(t) : Double.NaN;
  }

  private int segment(double timeSeconds) {
    if (!(timeSeconds >= times[0] && timeSeconds <= times[times.length - 1])) {
      throw new IllegalArgumentException(
          "the crank angle is known from "
              + times[0]
              + " s to "
              + times[times.length - 1]
              + " s, not at "
              + timeSeconds
              + " s");
    }
    int i = Arrays.binarySearch(times, timeSeconds);
    i = i < 0 ? -i - 2 : i;
    return Math.min(i, times.length - 2);
  }
}
