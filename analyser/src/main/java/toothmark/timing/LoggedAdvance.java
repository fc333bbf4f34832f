package toothmark.timing;

import java.util.OptionalDouble;
import toothmark.rotation.AngleTimeline;

/**
 * Commanded advance from a controller log: by speed where the log shows it to follow from speed,
 * else at the spark's own time by the matched clock.
 */
final class LoggedAdvance implements CommandedAdvance {

  private final ControllerLog log;
  private final LogMatch match;
  private final AdvanceBySpeed bySpeed;
  private final double timeSeconds;

  LoggedAdvance(ControllerLog log, LogMatch match, AdvanceBySpeed bySpeed, double middleSeconds) {
    this.log = log;
    this.match = match;
    this.bySpeed = bySpeed;
    this.timeSeconds = middleSeconds;
  }

  /** How the log's clock was matched. */
  LogMatch match() {
    return match;
  }

  @Override
  public OptionalDouble at(double sparkSeconds, AngleTimeline timeline, double leadDegrees) {
    if (match.outcome() == LogMatch.Outcome.REFUSED) {
      return OptionalDouble.empty();
    }
    if (bySpeed.follows()) {
      return bySpeed.at(ScheduledSpeed.rpm(sparkSeconds, timeline, leadDegrees));
    }
    double lead = leadDegrees / (6 * timeline.rpmAt(sparkSeconds));
    double drift = 1 + match.driftPartsPerMillion() * 1e-6;
    double inLog =
        (sparkSeconds - lead - timeSeconds) * drift + timeSeconds - match.shiftSeconds().value();
    return log.advanceAt(inLog);
  }
}
