package toothmark.edges;

import java.util.Arrays;

/**
 * Which passing comes again a turn later, by the rhythm of the passings alone.
 *
 * <p>Not a naming of the wheel: nothing is said of which tooth it is, only that the one so many
 * passings later has the same neighbours at the same distances. A turn is the shortest lag at which
 * the ratios of successive intervals come again while at most other lags they do not, so an even
 * wheel without a gap has none. Each passing is held against that a turn later by a whole turn of
 * such ratios around both, and stands alone where the turn fits no better than with one tooth more
 * or fewer, as it does around a stray. Teeth and slots are looked at apart, since one of the two
 * may creep through zero in the gap.
 */
final class Repeats {

  private static final int FEWEST = 2;
  private static final int MOST = 160;
  private static final int STRETCHES = 4;
  private static final int STRETCH = 250;

  /** A turn's ratios differ by less than this share of what those of other lags do. */
  private static final double ALIKE = 0.25;

  /** The same over the record, in which a stray now and then may put some out of step. */
  private static final double FOUND = 0.5;

  /** Mean square of what ratios at other lags differ by, below which the wheel has no gap. */
  private static final double UNEVEN = 0.01;

  /** Extrema from one passing of a tooth to its next; 0 where none was found. */
  final int lag;

  /** Ratio of the interval after to that before each extremum, to its own kind. */
  private final float[] ratio;

  private final boolean[] comesAgain;

  /**
   * Looks for repetition.
   *
   * @param position of maxima and minima in turn, rising
   */
  Repeats(double[] position) {
    ratio = new float[position.length];
    for (int i = 2; i + 2 < ratio.length; i++) {
      ratio[i] = (float) ((position[i + 2] - position[i]) / (position[i] - position[i - 2]));
    }
    lag = findLag();
    comesAgain = new boolean[position.length];
    if (lag > 0) {
      link();
    }
  }

  /** Whether the extremum a lag later is the same tooth or slot. */
  boolean comesAgain(int i) {
    return comesAgain[i];
  }

  /** Difference of the ratios at two extrema, near enough the square of its logarithm. */
  private double difference(int i, int j) {
    double r = ratio[i] / ratio[j];
    double d = (r - 1) * (r - 1) / r;
    return d < 1 ? d : 1;
  }

  private int findLag() {
    int most = Math.min(MOST, (ratio.length - 4) / 4);
    if (most < FEWEST) {
      return 0;
    }
    int teeth = lag(0, most);
    return teeth > 0 ? teeth : lag(1, most);
  }

  /** The lag at which every other extremum, from the first or the second, repeats. */
  private int lag(int kind, int most) {
    double[] score = new double[most - FEWEST + 1];
    for (int k = 0; k < score.length; k++) {
      score[k] = score(kind, 2 * (FEWEST + k));
    }
    double usual = SwingScale.quantile(score.clone(), 0.5);
    double best = Arrays.stream(score).min().getAsDouble();
    if (usual < UNEVEN || best > FOUND * usual) {
      return 0;
    }
    double enough = Math.min(FOUND * usual, 2 * best + UNEVEN * usual);
    int k = 0;
    while (score[k] > enough) {
      k++;
    }
    return 2 * (FEWEST + k);
  }

  /** Mean difference at a lag, over stretches from all of the record. */
  private double score(int kind, int after) {
    int last = ratio.length - 2 - after;
    double sum = 0;
    double n = 0;
    int step = Math.max(STRETCH, (last - 2) / STRETCHES);
    for (int from = 2; from < last; from += step) {
      int to = Math.min(last, from + STRETCH);
      for (int i = from + (from + kind & 1); i < to; i += 2) {
        sum += difference(i, i + after);
        n++;
      }
    }
    return sum / Math.max(1, n);
  }

  private void link() {
    int first = 2;
    int last = ratio.length - 4 - lag;
    int width = Math.min(lag, last - first);
    double[][] sums = new double[2][3];
    int from = first;
    int to = first;
    for (int i = first; i < last; i++) {
      int start = Math.max(first, Math.min(last - width, i - width / 2));
      for (; to < start + width; to++) {
        add(to, 1, sums[to & 1]);
      }
      for (; from < start; from++) {
        add(from, -1, sums[from & 1]);
      }
      comesAgain[i] = fits(sums[0]) || fits(sums[1]);
    }
  }

  /** Differences to a turn later, and with a tooth fewer and one more. */
  private void add(int i, int sign, double[] sums) {
    for (int k = -1; k <= 1; k++) {
      sums[k + 1] += sign * difference(i, i + lag + 2 * k);
    }
  }

  private static boolean fits(double[] sums) {
    return sums[1] <= ALIKE * Math.min(sums[0], sums[2]);
  }
}
