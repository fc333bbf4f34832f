package toothmark.edges;

import java.util.Arrays;
import java.util.Optional;
import toothmark.capture.SampledSignal;

/** Puts together what limits a sampled signal. */
final class Quality {

  private static final double WEAK = 0.3;
  private static final double FASTEST = 0.05;

  /** Fewer flat samples than this are the tops of a quantised wave. */
  private static final double LEAST_CLIPPED_SHARE = 1e-4;

  private Quality() {}

  static SignalQuality of(
      SampledSignal signal,
      SampleStatistics statistics,
      double offset,
      EdgeTrain train,
      Optional<Hum> hum) {
    double clipped = statistics.flatHighShare() + statistics.flatLowShare();
    return new SignalQuality(
        1 / signal.intervalSeconds(),
        statistics.min(),
        statistics.max(),
        offset,
        statistics.noise(),
        clipped < LEAST_CLIPPED_SHARE ? 0 : clipped,
        shortInterval(train) / signal.intervalSeconds(),
        hum);
  }

  private static double shortInterval(EdgeTrain train) {
    double[] intervals = new double[train.size()];
    int n = 0;
    double last = Double.NaN;
    for (int i = 0; i < train.size(); i++) {
      if (train.strength(i) < WEAK) {
        continue;
      }
      if (!Double.isNaN(last)) {
        intervals[n++] = train.time(i) - last;
      }
      last = train.time(i);
    }
    return SwingScale.quantile(Arrays.copyOf(intervals, n), FASTEST);
  }
}
