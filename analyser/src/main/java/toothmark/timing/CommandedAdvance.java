package toothmark.timing;

import java.util.Optional;
import java.util.OptionalDouble;
import toothmark.rotation.AngleTimeline;

/**
 * The advance that the controller commanded: fixed, from its ignition table, or as it logged it.
 */
public sealed interface CommandedAdvance permits FixedAdvance, LoggedAdvance, TableAdvance {

  /**
   * The advance commanded for a spark.
   *
   * @param timeSeconds time of the spark, s, covered by the timeline
   * @param timeline the crank's angle
   * @param look which speed the controller goes by
   * @return degrees before TDC; empty where nothing is known
   */
  OptionalDouble at(double timeSeconds, AngleTimeline timeline, ScheduledSpeed look);

  /**
   * How the controller log was matched.
   *
   * @return empty without a log
   */
  default Optional<LogMatch> match() {
    return Optional.empty();
  }
}
