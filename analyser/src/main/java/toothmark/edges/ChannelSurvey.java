package toothmark.edges;

import java.util.Arrays;
import java.util.Optional;
import toothmark.capture.EventSignal;
import toothmark.capture.SampledSignal;
import toothmark.capture.Signal;
import toothmark.capture.StepSignal;

/**
 * A first look at a channel: its levels and noise, its shape, and how often it rises.
 *
 * <p>Whoever has a survey hands it on, so that the samples need not be gone through again.
 */
public final class ChannelSurvey {

  /** Below this share of time at one level a switching signal is a train of pulses. */
  private static final double RARE = 0.1;

  /** A signal within this many standard deviations of its noise is quiet. */
  private static final double QUIET_SPAN = 12.0;

  /** The last bit of a converter flickers from sample to sample; a switch stays where it is. */
  private static final double BRIEF_SAMPLES = 3.5;

  private static final double BRIEF_SHARE = 0.1;

  private final SampleStatistics statistics;
  private final SignalShape shape;
  private final Optional<LogicLevels> levels;
  private final long rises;
  private final double duty;
  private final double seconds;

  private ChannelSurvey(
      SampleStatistics statistics, Optional<LogicLevels> levels, Signal signal, Counter counter) {
    this.statistics = statistics;
    this.levels = levels;
    this.seconds = signal.span().seconds();
    this.rises = counter.rises;
    double first = levels.isPresent() ? statistics.first() - levels.get().middle() : 0;
    this.duty = levels.isPresent() ? counter.duty(signal.span().endExclusive(), first) : 0;
    this.shape = shapeOf();
  }

  /**
   * Looks at a channel.
   *
   * @param signal any signal
   * @return what it looks like
   */
  public static ChannelSurvey of(Signal signal) {
    Counter counter = new Counter(signal.span().startInclusive());
    if (signal instanceof SampledSignal sampled) {
      SampleStatistics s = SampleStatistics.of(sampled);
      Optional<LogicLevels> levels = s.twoLevels();
      levels.ifPresent(l -> LevelCrossings.find(sampled, l, s.noise(), counter));
      boolean flicker =
          levels.isPresent()
              && !s.areApart(levels.get())
              && counter.flickers(BRIEF_SAMPLES * sampled.intervalSeconds());
      return flicker
          ? new ChannelSurvey(s, Optional.empty(), signal, new Counter(counter.start))
          : new ChannelSurvey(s, levels, signal, counter);
    }
    if (signal instanceof StepSignal steps) {
      SampleStatistics s = SampleStatistics.ofLevels(steps);
      ListedEdges.changes(steps, counter);
      return new ChannelSurvey(s, Optional.of(ListedEdges.levels(steps)), signal, counter);
    }
    counter.rises = ((EventSignal) signal).size();
    return new ChannelSurvey(SampleStatistics.none(), Optional.empty(), signal, counter);
  }

  private SignalShape shapeOf() {
    if (levels.isPresent() && levels.get().span() > 0) {
      double rarer = Math.min(duty, 1 - duty);
      return rises == 0 && (duty == 0 || duty == 1)
          ? SignalShape.QUIET
          : rarer < RARE ? SignalShape.PULSE_TRAIN : SignalShape.TWO_LEVEL;
    }
    if (statistics.samples() == 0) {
      return rises > 0 ? SignalShape.PULSE_TRAIN : SignalShape.QUIET;
    }
    boolean quiet =
        statistics.max() - statistics.min() <= QUIET_SPAN * statistics.noise()
            || statistics.max() == statistics.min();
    return quiet ? SignalShape.QUIET : SignalShape.WAVE;
  }

  SampleStatistics statistics() {
    return statistics;
  }

  /**
   * What the channel looks like.
   *
   * @return its shape
   */
  public SignalShape shape() {
    return shape;
  }

  /**
   * The two levels of a switching channel.
   *
   * @return levels; empty for a wave, a quiet channel, and bare instants
   */
  public Optional<LogicLevels> levels() {
    return levels;
  }

  /**
   * How often a switching channel rises; for bare instants, how many there are.
   *
   * @return 0 or more; 0 for a wave
   */
  public long risingEdges() {
    return rises;
  }

  /**
   * Rises a second over the whole record.
   *
   * @return Hz
   */
  public double meanRateHz() {
    return seconds > 0 ? rises / seconds : 0;
  }

  /**
   * Share of time at the high level.
   *
   * @return 0 to 1; 0 for a wave
   */
  public double duty() {
    return duty;
  }

  /**
   * Mean of all samples.
   *
   * @return in the channel's unit; 0 for bare instants
   */
  public double mean() {
    return statistics.samples() == 0 ? 0 : statistics.mean();
  }

  /**
   * From the smallest to the largest value.
   *
   * @return in the channel's unit; 0 for bare instants
   */
  public double peakToPeak() {
    return statistics.samples() == 0 ? 0 : statistics.max() - statistics.min();
  }

  /**
   * Standard deviation of the noise of one sample.
   *
   * @return in the channel's unit; 0 where there are no samples
   */
  public double noise() {
    return statistics.noise();
  }

  /**
   * The value below which a share of the samples lies.
   *
   * @param share 0 to 1
   * @return in the channel's unit
   */
  public double quantile(double share) {
    return statistics.histogram.quantile(share);
  }

  /** Counts rises and adds up the time at the high level. */
  private static final class Counter implements LevelCrossings.Sink {

    private final double start;
    private long rises;
    private boolean crossed;
    private boolean high;
    private double since;
    private double highSeconds;
    private final double[] widths = new double[256];
    private int changes;

    Counter(double start) {
      this.start = start;
      this.since = start;
    }

    /** Whether many of the first pulses are brief. */
    boolean flickers(double briefSeconds) {
      long brief = Arrays.stream(widths, 0, changes).filter(w -> w < briefSeconds).count();
      return brief > BRIEF_SHARE * changes;
    }

    @Override
    public void crossing(EdgeDirection direction, double time, double uncertainty) {
      boolean rise = direction == EdgeDirection.RISING;
      if (changes < widths.length) {
        widths[changes++] = time - since;
      }
      highSeconds += rise ? 0 : time - since;
      rises += rise ? 1 : 0;
      since = time;
      high = rise;
      crossed = true;
    }

    double duty(double end, double atFirst) {
      boolean highAtEnd = crossed ? high : atFirst > 0;
      double total = highSeconds + (highAtEnd ? end - since : 0);
      return end > start ? total / (end - start) : 0;
    }
  }
}
