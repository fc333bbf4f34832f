package toothmark.timing;

import toothmark.rotation.AngleTimeline;
import toothmark.units.Interval;

/**
 * The speed that a controller had when it scheduled a spark.
 *
 * <p>It looks up the advance before it starts to charge, from a speed measured over the turn before
 * that; so the speed that counts lies some way back. How far is not known from outside: the middle
 * of half a revolution is taken, and a standard uncertainty of its place carried.
 */
final class ScheduledSpeed {

  /**
   * Usual way back from a spark to the middle of the stretch over which speed was measured: between
   * a few teeth just before charging and a whole revolution before that (common practice).
   */
  static final double USUAL_LEAD_DEGREES = 160;

  /** Standard uncertainty of that, degrees: even chances from 60 to 260. */
  static final double LEAD_UNCERTAINTY_DEGREES = 60;

  private static final double STRETCH_DEGREES = 180;

  private ScheduledSpeed() {}

  static double rpm(double timeSeconds, AngleTimeline timeline, double leadDegrees) {
    double rate = 6 * timeline.rpmAt(timeSeconds);
    Interval span = timeline.span();
    double end =
        Math.max(timeSeconds - (leadDegrees - STRETCH_DEGREES / 2) / rate, span.startInclusive());
    double start = Math.max(end - STRETCH_DEGREES / rate, span.startInclusive());
    end = Math.min(Math.max(end, start + STRETCH_DEGREES / 2 / rate), span.endExclusive());
    return start < end && timeline.covers(start) && timeline.covers(end)
        ? (timeline.degreesAt(end) - timeline.degreesAt(start)) / (end - start) / 6
        : timeline.rpmAt(timeSeconds);
  }
}
