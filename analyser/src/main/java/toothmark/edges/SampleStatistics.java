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

  /** The two levels of a signal that switches; empty for one that wanders or stands still. */
  Optional<LogicLevels> twoLevels() {
    LogicLevels levels = LogicLevels.of(histogram);
    double quarter = levels.span() / 4;
    boolean switches =
        levels.span() > APART * noise()
            && levels.share(histogram) >= AT_LEVELS
            && histogram.shareBetween(levels.low() + quarter, levels.high() - quarter)
                <= ON_THE_WAY;
    return switches ? Optional.of(levels) : Optional.empty();
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
