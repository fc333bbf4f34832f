package toothmark.timing;

import toothmark.rotation.AngleTimeline;
import toothmark.units.Interval;

/**
 * The speed that a controller had when it looked up the advance of a spark.
 *
 * <p>It looks it up before the spark, often before it starts to charge, by a speed measured over
 * the turn before that: a whole revolution, since the errors of the teeth cancel over one, or the
 * last teeth. How far back is not known from outside; a usual way is taken, and others tell how
 * much hangs on it.
 *
 * @param leadDegrees way back from a spark to the middle of the stretch over which speed was
 *     measured, degrees
 * @param stretchDegrees length of that stretch, degrees
 */
public record ScheduledSpeed(double leadDegrees, double stretchDegrees) {

  /**
   * A revolution that ends between the spark and the start of charging some 60 degrees before has
   * its middle 180 to 240 degrees back (common practice).
   */
  static final ScheduledSpeed USUAL = new ScheduledSpeed(200, 360);

  /** Earlier by one standard uncertainty: even chances from 40 to 360 degrees back. */
  static final ScheduledSpeed EARLIER = new ScheduledSpeed(290, 360);

  /** By the last teeth before charging begins. */
  static final ScheduledSpeed LAST_TEETH = new ScheduledSpeed(75, 20);

  double rpm(double timeSeconds, AngleTimeline timeline) {
    double rate = 6 * timeline.rpmAt(timeSeconds);
    Interval span = timeline.span();
    double end =
        Math.max(timeSeconds - (leadDegrees - stretchDegrees / 2) / rate, span.startInclusive());
    double start = Math.max(end - stretchDegrees / rate, span.startInclusive());
    end = Math.min(Math.max(end, start + stretchDegrees / 2 / rate), span.endExclusive());
    return start < end && timeline.covers(start) && timeline.covers(end)
        ? (timeline.degreesAt(end) - timeline.degreesAt(start)) / (end - start) / 6
        : timeline.rpmAt(timeSeconds);
  }
}
