package toothmark.timing;

import java.util.Optional;
import java.util.OptionalDouble;
import toothmark.rotation.AngleTimeline;
import toothmark.units.Measured;

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

  @Override
  public Optional<LogMatch> match() {
    return Optional.of(match);
  }

  @Override
  public OptionalDouble at(double sparkSeconds, AngleTimeline timeline, ScheduledSpeed look) {
    if (match.outcome() == LogMatch.Outcome.REFUSED) {
      return OptionalDouble.empty();
    }
    if (bySpeed.follows()) {
      return bySpeed.at(look.rpm(sparkSeconds, timeline));
    }
    return log.advanceAt(inLog(sparkSeconds, timeline, look));
  }

  /** The load at a spark; empty unless the clocks were matched. */
  OptionalDouble loadAt(double sparkSeconds, AngleTimeline timeline, ScheduledSpeed look) {
    return match.outcome() == LogMatch.Outcome.MATCHED
        ? log.loadAt(inLog(sparkSeconds, timeline, look))
        : OptionalDouble.empty();
  }

  /** When the controller looked up the advance of a spark, by its own clock, s. */
  private double inLog(double sparkSeconds, AngleTimeline timeline, ScheduledSpeed look) {
    double lead = look.leadDegrees() / (6 * timeline.rpmAt(sparkSeconds));
    double drift = 1 + match.driftPartsPerMillion() * 1e-6;
    double shift = match.shiftSeconds().map(Measured::value).orElse(0.0);
    return (sparkSeconds - lead - timeSeconds) * drift + timeSeconds - shift;
  }
}
