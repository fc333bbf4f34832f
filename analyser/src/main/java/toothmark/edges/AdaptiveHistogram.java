package toothmark.edges;

/**
 * Counts values over a range that widens as they come, in a fixed number of bins.
 *
 * <p>The range starts at the first spread of values seen and doubles, with bins merged in pairs,
 * whenever a value falls outside, so one pass is enough.
 */
final class AdaptiveHistogram {

  private static final int BINS = 4096;

  private final long[] counts = new long[BINS];
  private double low;
  private double width;
  private long total;
  private boolean started;
  private double min = Double.POSITIVE_INFINITY;
  private double max = Double.NEGATIVE_INFINITY;

  /** Counts the first {@code count} values. */
  void add(double[] values, int count) {
    for (int i = 0; i < count; i++) {
      min = Math.min(min, values[i]);
      max = Math.max(max, values[i]);
    }
    if (!started) {
      start(values[0]);
    }
    widenTo(min);
    widenTo(max);
    double perBin = 1 / width;
    for (int i = 0; i < count; i++) {
      counts[Math.min(BINS - 1, (int) ((values[i] - low) * perBin))]++;
    }
    total += count;
  }

  private void start(double v) {
    // A first range far below any sensor's signal; doubling reaches volts in a few steps.
    double span = Math.max(Math.abs(v), 1e-6) * 1e-3;
    width = 2 * span / BINS;
    low = v - span;
    started = true;
  }

  private void widenTo(double v) {
    while (v < low || v >= low + BINS * width) {
      boolean downwards = v < low;
      int half = BINS / 2;
      long[] merged = new long[half];
      for (int i = 0; i < half; i++) {
        merged[i] = counts[2 * i] + counts[2 * i + 1];
      }
      java.util.Arrays.fill(counts, 0);
      System.arraycopy(merged, 0, counts, downwards ? half : 0, half);
      if (downwards) {
        low -= BINS * width;
      }
      width *= 2;
    }
  }

  long total() {
    return total;
  }

  double min() {
    return min;
  }

  double max() {
    return max;
  }

  int bins() {
    return BINS;
  }

  long count(int bin) {
    return counts[bin];
  }

  double centre(int bin) {
    return low + (bin + 0.5) * width;
  }

  double binWidth() {
    return width;
  }

  /**
   * The value below which a share of the values lies.
   *
   * @param share 0 to 1
   * @return value, linear within its bin and never outside the values seen
   */
  double quantile(double share) {
    double wanted = share * total;
    double below = 0;
    for (int i = 0; i < BINS; i++) {
      if (counts[i] > 0 && below + counts[i] >= wanted) {
        double v = low + (i + (wanted - below) / counts[i]) * width;
        return Math.min(max, Math.max(min, v));
      }
      below += counts[i];
    }
    return max;
  }

  /** The share of values in [from, to). */
  double shareBetween(double from, double to) {
    long n = 0;
    for (int i = 0; i < BINS; i++) {
      double c = centre(i);
      n += c >= from && c < to ? counts[i] : 0;
    }
    return total == 0 ? 0 : (double) n / total;
  }
}
