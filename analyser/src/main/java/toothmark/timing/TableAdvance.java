package toothmark.timing;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import toothmark.rotation.AngleTimeline;

/**
 * The advance that an ignition table gives at the capture's own speed, at a stated load or at the
 * one that the controller logged.
 */
public final class TableAdvance implements CommandedAdvance {

  private final IgnitionTable table;
  private final OptionalDouble statedLoad;
  private final Optional<LoggedAdvance> log;

  private TableAdvance(
      IgnitionTable table, OptionalDouble statedLoad, Optional<LoggedAdvance> log) {
    this.table = table;
    this.statedLoad = statedLoad;
    this.log = log;
  }

  /**
   * A table at one load.
   *
   * @param table the table
   * @param load in the unit of the table's loads
   * @return the advance that it commands
   */
  public static CommandedAdvance at(IgnitionTable table, double load) {
    return new TableAdvance(table, OptionalDouble.of(load), Optional.empty());
  }

  /**
   * A table at the loads that the controller logged. Where the log's clock cannot be found because
   * the speed hardly varies, advance is taken by speed, if load leaves it alone.
   *
   * @param table the table
   * @param log the log, which holds loads
   * @param timeline the crank's angle
   * @return the advance that it commands; nowhere known when the log does not fit the capture
   * @throws IllegalArgumentException if the log holds no loads
   */
  public static CommandedAdvance at(
      IgnitionTable table, ControllerLog log, AngleTimeline timeline) {
    LoggedAdvance matched =
        LogMatcher.match(log.commandedBy(table), timeline, LogMatcher.Sought.LOAD);
    return new TableAdvance(table, OptionalDouble.empty(), Optional.of(matched));
  }

  @Override
  public Optional<LogMatch> match() {
    return log.flatMap(LoggedAdvance::match);
  }

  @Override
  public OptionalDouble at(double timeSeconds, AngleTimeline timeline, ScheduledSpeed look) {
    OptionalDouble load = load(timeSeconds, timeline, look);
    if (load.isPresent()) {
      double rpm = look.rpm(timeSeconds, timeline);
      return OptionalDouble.of(table.advance(rpm, load.getAsDouble()));
    }
    return match().filter(m -> m.outcome() == LogMatch.Outcome.BY_SPEED).isPresent()
        ? log.get().at(timeSeconds, timeline, look)
        : OptionalDouble.empty();
  }

  private OptionalDouble load(double timeSeconds, AngleTimeline timeline, ScheduledSpeed look) {
    return log.isPresent() ? log.get().loadAt(timeSeconds, timeline, look) : statedLoad;
  }

  /** Over which part of the table some sparks were commanded. */
  TableUse use(List<SparkTiming> sparks, AngleTimeline timeline) {
    ScheduledSpeed look = ScheduledSpeed.USUAL;
    int all = 0;
    int beyondSpeeds = 0;
    int beyondLoads = 0;
    for (SparkTiming s : sparks) {
      double time = s.spark().timeSeconds();
      if (s.commandedDegrees().isPresent()) {
        all++;
        beyondSpeeds += table.isBeyondSpeeds(look.rpm(time, timeline)) ? 1 : 0;
        OptionalDouble load = load(time, timeline, look);
        beyondLoads += load.isPresent() && table.isBeyondLoads(load.getAsDouble()) ? 1 : 0;
      }
    }
    return new TableUse(table, statedLoad, all, beyondSpeeds, beyondLoads);
  }
}
