package toothmark.edges;

import java.util.Optional;
import toothmark.capture.SampledSignal;
import toothmark.capture.StepSignal;

/**
 * One pass over the samples: distribution, mean, noise, step of the converter, flat tops.
 *
 * <p>The noise is that of one sample. It comes from third differences in runs of 64 samples, whose
 * variance is 20 times that of white noise and which a smooth wave hardly enters; the runs' lower
 * quintile is taken, so that steep places, edges and bursts do not count. Never less than the
 * converter's step over the square root of 12 (Bennett, Bell Syst. Tech. J. 27, 1948, 446-472).
 */
final class SampleStatistics {

  private static final int BLOCK = 1 << 16;
  private static final int RUN = 64;
  private static final double THIRD_DIFFERENCE_GAIN = 20.0;

  /**
   * The lower quintile of the runs stands 12.5 % low: third differences overlap, so that 61 of them
   * hold 61 (20² / (20² + 2 (15² + 6² + 1²))) = 26 degrees of freedom.
   */
  private static final double QUINTILE_CORRECTION = 1.143;

  private static final double QUINTILE = 0.2;

  /** Share of samples that a switching signal spends at its levels. */
  private static final double AT_LEVELS = 0.85;

  /** Share that it may spend in the middle half, on its way. */
  private static final double ON_THE_WAY = 0.05;

  /** The share at its levels, and at each, of one that is pulled slowly to one of them. */
  private static final double AT_LEVELS_PULLED = 0.6;

  private static final double AT_EACH_PULLED = 0.2;

  /** How far the shares of an exponential may be off, each against what it should be. */
  private static final double EXPONENTIAL = 0.3;

  /** Levels nearer together than this many standard deviations of noise are one level. */
  private static final double APART = 8.0;

  private static final double ONE_SIDED = 0.02;

  final AdaptiveHistogram histogram = new AdaptiveHistogram();
  private final AdaptiveHistogram runNoise = new AdaptiveHistogram();
  private final double[] one = new double[1];
  private double first;
  private double sum;
  private double quantum = Double.POSITIVE_INFINITY;
  private final FlatTops flats = new FlatTops();

  private SampleStatistics() {}

  static SampleStatistics of(SampledSignal signal) {
    SampleStatistics s = new SampleStatistics();
    double[] block = new double[(int) Math.min(BLOCK, signal.size())];
    for (long first = 0; first < signal.size(); first += block.length) {
      int n = (int) Math.min(block.length, signal.size() - first);
      signal.read(first, block, n);
      s.add(block, n);
    }
    return s;
  }

  /** Statistics of the levels of a step signal, each counted once. */
  static SampleStatistics ofLevels(StepSignal signal) {
    SampleStatistics s = new SampleStatistics();
    for (int i = 0; i < signal.size(); i++) {
      s.one[0] = signal.level(i);
      s.add(s.one, 1);
    }
    return s;
  }

  /** Statistics of nothing. */
  static SampleStatistics none() {
    return new SampleStatistics();
  }

  private void add(double[] v, int n) {
    first = histogram.total() == 0 ? v[0] : first;
    for (int from = 0; from < n; from += RUN) {
      addRun(v, from, Math.min(n, from + RUN));
    }
    histogram.add(v, n);
  }

  private void addRun(double[] v, int from, int to) {
    double min = v[from];
    double max = v[from];
    double runSum = 0;
    for (int i = from; i < to; i++) {
      min = Math.min(min, v[i]);
      max = Math.max(max, v[i]);
      runSum += v[i];
    }
    sum += runSum;
    flats.add(v, from, to, min, max);
    if (to - from == RUN) {
      addDifferences(v, from);
    }
  }

  private void addDifferences(double[] v, int from) {
    double squares = 0;
    double least = quantum;
    double before = v[from + 2] - v[from + 1];
    double beforeThat = v[from + 1] - v[from];
    for (int i = from + 3; i < from + RUN; i++) {
      double step = v[i] - v[i - 1];
      double third = step - 2 * before + beforeThat;
      squares += third * third;
      double size = Math.abs(step);
      least = size > 0 && size < least ? size : least;
      beforeThat = before;
      before = step;
    }
    quantum = least;
    one[0] = Math.log(Math.sqrt(squares / ((RUN - 3) * THIRD_DIFFERENCE_GAIN)) + 1e-12);
    runNoise.add(one, 1);
  }

  long samples() {
    return histogram.total();
  }

  /** The first sample. */
  double first() {
    return first;
  }

  /** The two levels at which nearly all samples lie; empty for a signal that wanders. */
  Optional<LogicLevels> twoLevels() {
    LogicLevels levels = LogicLevels.of(histogram);
    double quarter = levels.span() / 4;
    boolean switches =
        levels.span() > 0
            && (levels.share(histogram) >= AT_LEVELS
                    && histogram.shareBetween(levels.low() + quarter, levels.high() - quarter)
                        <= ON_THE_WAY
                || isPulled(levels.low(), levels.high())
                || isPulled(levels.high(), levels.low()));
    return switches ? Optional.of(levels) : Optional.empty();
  }

  /**
   * Whether a resistor pulls the signal from one level to the other while a transistor takes it
   * back at once, as of an open collector with a long cable: it rests at both levels, and what it
   * spends on the way between two fractions a and b of the span goes as ln((1 - a) / (1 - b)).
   */
  private boolean isPulled(double from, double to) {
    double span = to - from;
    double reach = Math.abs(span) / 10;
    double atFrom = histogram.shareBetween(from - reach, from + reach);
    double atTo = histogram.shareBetween(to - reach, to + reach);
    if (Math.min(atFrom, atTo) < AT_EACH_PULLED || atFrom + atTo < AT_LEVELS_PULLED) {
      return false;
    }
    double[] way = {0.1, 0.3, 0.5, 0.7, 0.9};
    double whole = share(from + way[0] * span, from + way[4] * span) / Math.log(9);
    for (int i = 0; i + 1 < way.length; i++) {
      double is = share(from + way[i] * span, from + way[i + 1] * span);
      double due = whole * Math.log((1 - way[i]) / (1 - way[i + 1]));
      if (Math.abs(is - due) > EXPONENTIAL * due) {
        return false;
      }
    }
    return whole > 0;
  }

  private double share(double one, double other) {
    return histogram.shareBetween(Math.min(one, other), Math.max(one, other));
  }

  /**
   * Whether levels are further apart than noise. Where every run of samples holds a step, the steps
   * themselves count as noise and this is false of a signal that switches.
   */
  boolean areApart(LogicLevels levels) {
    return levels.span() > APART * noise();
  }

  double min() {
    return histogram.min();
  }

  double max() {
    return histogram.max();
  }

  double mean() {
    return sum / histogram.total();
  }

  /** Root mean square about the mean. */
  double standardDeviation() {
    double sum = 0;
    for (int i = 0; i < histogram.bins(); i++) {
      double d = histogram.centre(i) - mean();
      sum += histogram.count(i) * d * d;
    }
    return Math.sqrt(sum / histogram.total());
  }

  /**
   * The level about which a wave swings. A wave cut off on one side only has its mean pulled over;
   * its lobes still last alike, so then the median stands for it.
   */
  double offset() {
    double skew = Math.abs(flatHighShare() - flatLowShare());
    return skew > ONE_SIDED ? histogram.quantile(0.5) : mean();
  }

  /**
   * Smallest difference between neighbouring samples; 0 when all are alike, or of two values only,
   * which tell nothing of a converter.
   */
  double quantum() {
    return quantum >= max() - min() ? 0 : quantum;
  }

  double noise() {
    double fromRuns =
        runNoise.total() == 0 ? 0 : QUINTILE_CORRECTION * Math.exp(runNoise.quantile(QUINTILE));
    return Math.max(fromRuns, quantum() / Math.sqrt(12));
  }

  double flatHighShare() {
    return (double) flats.high() / histogram.total();
  }

  double flatLowShare() {
    return (double) flats.low() / histogram.total();
  }
}
