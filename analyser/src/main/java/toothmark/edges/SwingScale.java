package toothmark.edges;

import java.util.Arrays;
import java.util.function.IntToDoubleFunction;

/**
 * What swing of flux is usual in each neighbourhood.
 *
 * <p>The swing of a sound sensor hardly depends on speed, but clipping, a loose contact or a filter
 * makes it local. Two estimates: {@link #fromBlocks} needs no idea of the teeth and starts the
 * search; {@link #fromSwings} takes the swings of found extrema, each weighted by itself, so that
 * many flickers do not outvote a few teeth and one giant does not outvote many.
 */
final class SwingScale {

  private static final double BLOCK_SECONDS = 0.1;

  /**
   * Near three samples a tooth a harmonic folds onto an offset, and flux drifts by many swings in a
   * block; over so many extrema the drift is straight enough.
   */
  private static final int COARSE_PART = 32;

  private static final int BLOCKS_EACH_SIDE = 5;
  private static final double BLOCK_QUANTILE = 0.6;

  /** A neighbourhood below this share of the capture's large swings is quiet, not weak. */
  private static final double QUIET_SHARE = 0.08;

  private static final double LARGE_QUANTILE = 0.9;
  private static final int SWINGS_EACH_SIDE = 12;

  /** The median hardly changes from one extremum to the next, so one serves a few. */
  private static final int STRIDE = 6;

  private SwingScale() {}

  /**
   * A first scale: the range of flux less its straight line, usual in blocks of 0.1 s.
   *
   * @param e its extrema
   * @param wave as recorded, or finer
   * @return the usual swing at each extremum, V samples; to be asked in order
   */
  static IntToDoubleFunction fromBlocks(Extrema e, Wave wave) {
    double interval = wave.signal().intervalSeconds();
    long blockSamples = Math.max(1, Math.round(BLOCK_SECONDS / interval));
    int part = wave.oversampling() > 1 ? COARSE_PART : Integer.MAX_VALUE;
    double[] ranges = new double[16];
    int[] ends = new int[16];
    int blocks = 0;
    for (int from = 0; from < e.size(); blocks++) {
      if (blocks == ends.length) {
        ranges = Arrays.copyOf(ranges, 2 * blocks);
        ends = Arrays.copyOf(ends, 2 * blocks);
      }
      long block = e.position(from) / blockSamples;
      int to = from;
      while (to < e.size() && e.position(to) / blockSamples == block) {
        to++;
      }
      ranges[blocks] = usualRange(e, Math.max(0, from - 1), Math.min(e.size(), to + 1), part);
      ends[blocks] = to;
      from = to;
    }
    return stepwise(localQuantile(Arrays.copyOf(ranges, blocks)), ends);
  }

  private static IntToDoubleFunction stepwise(double[] values, int[] ends) {
    int[] block = {0};
    return i -> {
      while (i >= ends[block[0]]) {
        block[0]++;
      }
      return values[block[0]];
    };
  }

  private static double usualRange(Extrema e, int from, int to, int part) {
    double[] ranges = new double[Math.max(1, (to - from) / part)];
    for (int k = 0; k < ranges.length; k++) {
      int first = from + (to - from) * k / ranges.length;
      int end = from + (to - from) * (k + 1) / ranges.length;
      ranges[k] = rangeLessLine(e, first, end);
    }
    return quantile(ranges, 0.5);
  }

  private static double rangeLessLine(Extrema e, int from, int to) {
    int last = to - 1;
    double run = Math.max(1, e.position(last) - e.position(from));
    // Ends of the same kind, so that the line is the drift and not half a tooth.
    int end = (last - from) % 2 == 0 ? last : last - 1;
    double slope =
        end - from < 4
            ? 0
            : (e.flux(end) - e.flux(from)) / (double) (e.position(end) - e.position(from));
    double high = Double.NEGATIVE_INFINITY;
    double low = Double.POSITIVE_INFINITY;
    for (int i = from; i < to && run > 0; i++) {
      double f = e.flux(i) - slope * (e.position(i) - e.position(from));
      high = Math.max(high, f);
      low = Math.min(low, f);
    }
    return high - low;
  }

  private static double[] localQuantile(double[] ranges) {
    double floor = QUIET_SHARE * quantile(ranges.clone(), LARGE_QUANTILE);
    double[] out = new double[ranges.length];
    for (int b = 0; b < ranges.length; b++) {
      int from = Math.max(0, b - BLOCKS_EACH_SIDE);
      int to = Math.min(ranges.length, b + BLOCKS_EACH_SIDE + 1);
      out[b] = Math.max(floor, quantile(Arrays.copyOfRange(ranges, from, to), BLOCK_QUANTILE));
    }
    return out;
  }

  /**
   * The scale from the swings of extrema already found.
   *
   * @return the usual swing at each extremum, V samples
   */
  static double[] fromSwings(Extrema e) {
    double[] scale = new double[e.size()];
    double[] near = new double[2 * SWINGS_EACH_SIDE];
    for (int first = 0; first < scale.length; first += STRIDE) {
      int end = Math.min(scale.length, first + STRIDE);
      int from = Math.max(0, (first + end) / 2 - SWINGS_EACH_SIDE);
      int to = Math.min(e.size() - 1, (first + end) / 2 + SWINGS_EACH_SIDE);
      for (int j = from; j < to; j++) {
        near[j - from] = e.swing(j);
      }
      Arrays.fill(scale, first, end, selfWeightedMedian(near, to - from));
    }
    double floor = scale.length == 0 ? 0 : QUIET_SHARE * quantile(scale.clone(), LARGE_QUANTILE);
    for (int i = 0; i < scale.length; i++) {
      scale[i] = Math.max(floor, scale[i]);
    }
    return scale;
  }

  private static double selfWeightedMedian(double[] values, int n) {
    Arrays.sort(values, 0, n);
    double half = 0;
    for (int i = 0; i < n; i++) {
      half += values[i] / 2;
    }
    for (int i = 0; i < n; i++) {
      half -= values[i];
      if (half <= 0) {
        return values[i];
      }
    }
    return n == 0 ? 0 : values[n - 1];
  }

  /** Sorts the values and gives the quantile at the nearest rank. */
  static double quantile(double[] values, double share) {
    Arrays.sort(values);
    return values.length == 0 ? 0 : values[(int) Math.round(share * (values.length - 1))];
  }
}
