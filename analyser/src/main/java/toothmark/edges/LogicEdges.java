package toothmark.edges;

import java.util.Optional;
import toothmark.capture.EventSignal;
import toothmark.capture.SampledSignal;
import toothmark.capture.Signal;
import toothmark.capture.StepSignal;

/**
 * Edges of a channel that switches: a coil's drive, a mark at top dead centre.
 *
 * <p>The levels are the two heaps of the distribution, whatever share of the time each has, so a
 * mark that is high for a thousandth of the time is found as surely as a drive that is high most of
 * it. No wave is looked for: whoever asks has been told that the channel switches.
 */
public final class LogicEdges {

  /**
   * Share of samples that a channel which switches has near its two levels, at least. What a
   * channel that never switches has for levels are two heaps in its own noise: 15 % lie near them.
   */
  private static final double NEAR_LEVELS = 0.5;

  private LogicEdges() {}

  /**
   * Finds the edges between the channel's own two levels.
   *
   * @param signal any signal; bare instants count as rising edges
   * @return both trains, with kind {@link SensorKind#HALL}
   */
  public static CrankEdges detect(Signal signal) {
    return detect(signal, ChannelSurvey.of(signal));
  }

  /**
   * Finds the edges of a channel that has been surveyed.
   *
   * @param signal as above
   * @param survey of that signal
   * @return as above
   */
  public static CrankEdges detect(Signal signal, ChannelSurvey survey) {
    AdaptiveHistogram h = survey.statistics().histogram;
    LogicLevels levels = LogicLevels.of(h);
    if (signal instanceof SampledSignal && !switches(survey, levels)) {
      LogicLevels never = new LogicLevels(levels.low(), levels.low());
      levels = LogicLevels.ofHalves(h).orElse(never);
    }
    return detect(signal, survey, levels);
  }

  /**
   * A silent channel's noise has two heaps as well where it flickers between steps of a converter.
   */
  private static boolean switches(ChannelSurvey survey, LogicLevels levels) {
    return levels.share(survey.statistics().histogram) >= NEAR_LEVELS
        && (survey.levels().isPresent() || survey.statistics().areApart(levels));
  }

  /**
   * Finds the edges between stated levels, as for a primary voltage, whose flyback is far from
   * both.
   *
   * @param signal as above
   * @param survey of that signal
   * @param levels what to take as low and high; has no effect on lists of changes or instants
   * @return as above
   */
  public static CrankEdges detect(Signal signal, ChannelSurvey survey, LogicLevels levels) {
    if (signal instanceof StepSignal steps) {
      return ListedEdges.of(steps);
    }
    if (signal instanceof EventSignal events) {
      CrankEdges all = ListedEdges.of(events);
      return new CrankEdges(all.kind(), all.rising(), all.falling(), all.quality());
    }
    SampledSignal sampled = (SampledSignal) signal;
    SampleStatistics s = survey.statistics();
    PulseTrain pulses = new PulseTrain();
    if (levels.span() > 0) {
      LevelCrossings.find(sampled, levels, s.noise(), pulses);
    }
    return pulses.edges(
        SensorKind.HALL, t -> Quality.of(sampled, s, s.mean(), t, Optional.empty()));
  }
}
