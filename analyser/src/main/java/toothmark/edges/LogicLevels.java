package toothmark.edges;

import java.util.Optional;

/**
 * The two levels between which a signal switches.
 *
 * @param low usual low level, in the channel's unit
 * @param high usual high level, above low
 */
public record LogicLevels(double low, double high) {

  private static final double NEIGHBOURHOOD = 0.1;
  private static final double BETWEEN = 0.87;

  /**
   * Half way between the levels.
   *
   * @return in the channel's unit
   */
  public double middle() {
    return (low + high) / 2;
  }

  /**
   * From low to high.
   *
   * @return in the channel's unit, positive
   */
  public double span() {
    return high - low;
  }

  /**
   * The two heaps of a distribution, whatever their shares: the fullest place, and the place that
   * is full and far from it. Spikes are far but not full, noise is full but not far.
   */
  static LogicLevels of(AdaptiveHistogram h) {
    int reach = Math.max(1, (int) Math.round(0.01 * (h.max() - h.min()) / h.binWidth()));
    double[] heap = heaps(h, reach);
    int first = 0;
    for (int i = 0; i < heap.length; i++) {
      first = heap[i] > heap[first] ? i : first;
    }
    int second = first;
    double best = 0;
    for (int i = 0; i < heap.length; i++) {
      double far = h.centre(i) - h.centre(first);
      if (heap[i] * far * far > best) {
        best = heap[i] * far * far;
        second = i;
      }
    }
    double a = centroid(h, first, reach);
    double b = centroid(h, second, reach);
    return new LogicLevels(Math.min(a, b), Math.max(a, b));
  }

  /**
   * The two halves of a distribution whose levels are smeared, by hum or a drifting ground, so that
   * they hold no heaps: cut where most of the variance lies between the halves (Otsu, IEEE Trans.
   * Syst. Man Cybern. 9 (1979) 62-66, doi:10.1109/TSMC.1979.4310076).
   *
   * @return the means of the halves; empty where too little of the variance lies between them, as
   *     in noise (0.64) and sine waves (0.81)
   */
  static Optional<LogicLevels> ofHalves(AdaptiveHistogram h) {
    double total = 0;
    double sum = 0;
    double squares = 0;
    for (int i = 0; i < h.bins(); i++) {
      total += h.count(i);
      sum += h.count(i) * h.centre(i);
      squares += h.count(i) * h.centre(i) * h.centre(i);
    }
    double n = 0;
    double part = 0;
    double best = 0;
    LogicLevels levels = null;
    for (int i = 0; i < h.bins(); i++) {
      n += h.count(i);
      part += h.count(i) * h.centre(i);
      double low = part / n;
      double high = (sum - part) / (total - n);
      double between = n * (total - n) / total * (high - low) * (high - low);
      if (between > best) {
        best = between;
        levels = new LogicLevels(low, high);
      }
    }
    boolean apart = best > BETWEEN * (squares - sum * sum / total);
    return Optional.ofNullable(apart ? levels : null);
  }

  /** How much lies within reach of each bin. */
  private static double[] heaps(AdaptiveHistogram h, int reach) {
    double[] heap = new double[h.bins()];
    long sum = 0;
    for (int i = 0; i < h.bins() + reach; i++) {
      sum += i < h.bins() ? h.count(i) : 0;
      sum -= i - 2 * reach - 1 >= 0 ? h.count(i - 2 * reach - 1) : 0;
      if (i >= reach) {
        heap[i - reach] = sum;
      }
    }
    return heap;
  }

  private static double centroid(AdaptiveHistogram h, int bin, int reach) {
    double sum = 0;
    double n = 0;
    for (int i = Math.max(0, bin - reach); i <= Math.min(h.bins() - 1, bin + reach); i++) {
      sum += h.count(i) * h.centre(i);
      n += h.count(i);
    }
    return n == 0 ? h.centre(bin) : sum / n;
  }

  /** The share of values within a tenth of the span of one of the levels. */
  double share(AdaptiveHistogram h) {
    double reach = NEIGHBOURHOOD * span();
    return h.shareBetween(low - reach, low + reach) + h.shareBetween(high - reach, high + reach);
  }
}
