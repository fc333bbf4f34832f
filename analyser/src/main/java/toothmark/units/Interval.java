package toothmark.units;

/**
 * A half-open span of time.
 *
 * @param startInclusive first instant inside, s
 * @param endExclusive first instant after, s; not before the start
 */
public record Interval(double startInclusive, double endExclusive) {

  /**
   * Checks the order.
   *
   * @throws IllegalArgumentException if the end is before the start or either is not a number
   */
  public Interval {
    if (!(endExclusive >= startInclusive)) {
      throw new IllegalArgumentException(
          "an interval must not end before it starts: " + startInclusive + " to " + endExclusive);
    }
  }

  /**
   * How long it lasts.
   *
   * @return seconds, not negative
   */
  public double seconds() {
    return endExclusive - startInclusive;
  }

  /**
   * Whether an instant lies inside.
   *
   * @param timeSeconds instant, s
   * @return true from the start on and before the end
   */
  public boolean contains(double timeSeconds) {
    return timeSeconds >= startInclusive && timeSeconds < endExclusive;
  }
}
