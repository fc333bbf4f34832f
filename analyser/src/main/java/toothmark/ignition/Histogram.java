package toothmark.ignition;

import toothmark.capture.SampledSignal;

/** How often a channel stood at each level, so that its resting levels can be told at any duty. */
final class Histogram {

  private static final int BINS = 4096;

  private final double low;
  private final double binWidth;
  private final long[] counts = new long[BINS];
  private long total;

  private Histogram(double low, double high) {
    this.low = low;
    this.binWidth = Math.max((high - low) / BINS, Double.MIN_NORMAL);
  }

  static Histogram of(SampledSignal signal) {
    double[] range = {Double.POSITIVE_INFINITY, Double.NEGATIVE_INFINITY};
    SampleScan.each(
        signal,
        (i, v) -> {
          range[0] = Math.min(range[0], v);
          range[1] = Math.max(range[1], v);
        });
    Histogram h = new Histogram(range[0], range[1]);
    SampleScan.each(signal, (i, v) -> h.add(v));
    return h;
  }

  private void add(double value) {
    counts[Math.min(BINS - 1, (int) ((value - low) / binWidth))]++;
    total++;
  }

  double lowest() {
    return low;
  }

  double highest() {
    return low + BINS * binWidth;
  }

  double binWidth() {
    return binWidth;
  }

  /** Level below which a share of the samples lies. */
  double quantile(double share) {
    long left = (long) Math.ceil(share * total);
    for (int i = 0; i < BINS; i++) {
      left -= counts[i];
      if (left <= 0) {
        return centre(i);
      }
    }
    return highest();
  }

  /** The level at which the channel stands most, of those further than a distance from another. */
  double commonest(double awayFrom, double distance) {
    int best = -1;
    long bestCount = -1;
    for (int i = 1; i < BINS - 1; i++) {
      long count = counts[i - 1] + counts[i] + counts[i + 1];
      if (count > bestCount && Math.abs(centre(i) - awayFrom) > distance) {
        bestCount = count;
        best = i;
      }
    }
    return centre(Math.max(best, 0));
  }

  private double centre(int bin) {
    return low + (bin + 0.5) * binWidth;
  }
}
