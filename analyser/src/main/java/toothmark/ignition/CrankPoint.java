package toothmark.ignition;

import java.util.Optional;
import toothmark.rotation.AngleTimeline;
import toothmark.units.Interval;

/**
 * Where the crank was at an instant, and how it moved.
 *
 * @param degreesAfterTooth1 unrolled, as in {@link toothmark.rotation.AngleTimeline}
 * @param rpm speed at the instant, rev/min
 * @param rpmPerSecond acceleration, over the revolution around the instant, rev/min each second; 0
 *     where less than a revolution is known
 */
public record CrankPoint(double degreesAfterTooth1, double rpm, double rpmPerSecond) {

  private static final double DEGREES_PER_SECOND_TO_RPM = 1 / 6.0;

  /**
   * Looks up an instant.
   *
   * @param timeSeconds s
   * @param timeline the crank's angle
   * @return where the crank was; empty where its angle is not known
   */
  public static Optional<CrankPoint> at(double timeSeconds, AngleTimeline timeline) {
    if (!timeline.covers(timeSeconds)) {
      return Optional.empty();
    }
    double rpm = timeline.rpmAt(timeSeconds);
    return Optional.of(
        new CrankPoint(
            timeline.degreesAt(timeSeconds), rpm, acceleration(timeSeconds, rpm, timeline)));
  }

  /** From the second difference of the angle over half a revolution to either side. */
  private static double acceleration(double time, double rpm, AngleTimeline timeline) {
    Interval span = timeline.span();
    double half = 30.0 / rpm;
    if (span.seconds() <= 2 * half) {
      return 0;
    }
    double first = span.startInclusive() + half;
    double t = Math.max(first, Math.min(span.endExclusive() - half, time));
    double early = Math.max(span.startInclusive(), t - half);
    double late = Math.min(span.endExclusive(), t + half);
    if (!timeline.covers(early) || !timeline.covers(t) || !timeline.covers(late)) {
      return 0;
    }
    double before = timeline.degreesAt(early);
    double after = timeline.degreesAt(late);
    double second = after - 2 * timeline.degreesAt(t) + before;
    return second / (half * half) * DEGREES_PER_SECOND_TO_RPM;
  }
}
