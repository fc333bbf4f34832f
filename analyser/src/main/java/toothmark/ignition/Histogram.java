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
    counts[bin(value)]++;
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

  /** The level at which the channel stands most. */
  double commonest() {
    return commonest(low, highest());
  }

  /** The level between two others at which the channel stands most. */
  double commonest(double from, double to) {
    int best = bin(from) + 1;
    for (int i = best; i < bin(to); i++) {
      best = near(i) > near(best) ? i : best;
    }
    return centre(best);
  }

  /** The level further than a distance from another at which the channel stands most. */
  double commonestAwayFrom(double other, double distance) {
    double below = commonest(low, Math.max(low, other - distance));
    double above = commonest(Math.min(highest(), other + distance), highest());
    return samplesNear(below) > samplesNear(above) ? below : above;
  }

  /** The lowest level at which the channel stands for a share of the time; none below it does. */
  double lowestPlateau(double share) {
    for (int i = 1; i < BINS - 1; i++) {
      if (near(i) >= share * total && near(i) >= near(i + 1)) {
        return centre(i);
      }
    }
    return commonest();
  }

  /** How many samples stand at a level, give or take a bin. */
  long samplesNear(double level) {
    return near(bin(level));
  }

  private long near(int bin) {
    int i = Math.max(1, Math.min(BINS - 2, bin));
    return counts[i - 1] + counts[i] + counts[i + 1];
  }

  private int bin(double level) {
    return Math.max(0, Math.min(BINS - 1, (int) ((level - low) / binWidth)));
  }

  private double centre(int bin) {
    return low + (bin + 0.5) * binWidth;
  }
}
