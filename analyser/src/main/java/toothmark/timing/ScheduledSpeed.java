package toothmark.timing;

import toothmark.rotation.AngleTimeline;
import toothmark.units.Interval;

/**
 * The speed that a controller had when it scheduled a spark.
 *
 * <p>It looks up the advance before the spark, often before it starts to charge, from a speed
 * measured over the turn before that: a whole revolution, since the errors of the teeth cancel over
 * one. How far back is not known from outside; a usual lead is taken, with a standard uncertainty.
 */
final class ScheduledSpeed {

  /**
   * Usual way back from a spark to the middle of the stretch over which speed was measured. A
   * revolution that ends between the spark and the start of charging some 60 degrees before has its
   * middle 180 to 240 degrees back; a controller that goes by the last few teeth, less (common
   * practice).
   */
  static final double USUAL_LEAD_DEGREES = 200;

  /** Standard uncertainty of that, degrees: even chances from 100 to 300. */
  static final double LEAD_UNCERTAINTY_DEGREES = 60;

  private static final double STRETCH_DEGREES = 360;

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
