package toothmark.timing;

import java.util.Arrays;
import java.util.Comparator;
import java.util.Optional;
import java.util.stream.IntStream;

/**
 * Looks for a limiter that fires late: above some speed, near the highest that was reached, sparks
 * come later than the line through all the others by degrees.
 *
 * <p>It is sought before anything robust, since a limiter may hold most of the sparks of a capture.
 */
final class RetardSearch {

  /** Less is no limiter, degrees (common practice: limiters pull back by 10 degrees and more). */
  private static final double SMALLEST_DEGREES = 3;

  /** Engines are limited near the speed that they reach, so the step lies not far under it. */
  private static final double HIGHEST_OVER_STEP = 1.25;

  /** No limiter is set as low as a starter turns, or near it, rev/min (common practice). */
  private static final double LOWEST_RPM = 700;

  /** A limiter with hysteresis still holds sparks this far under its speed. */
  private static final double HYSTERESIS = 0.93;

  private static final double CLEAR_OF_SCATTER = 8;
  private static final int FEWEST = 4;
  private static final int CANDIDATES = 60;
  private static final int ENOUGH = 2000;

  private RetardSearch() {}

  /**
   * What was found.
   *
   * @param fromRpm lowest speed of a spark pulled back
   * @param pulledBackDegrees by how much, positive
   * @param limited which readings were pulled back, in the order of the readings
   */
  record Found(double fromRpm, double pulledBackDegrees, boolean[] limited) {}

  static Optional<Found> find(GapReadings gaps) {
    if (gaps.size() < 3 * FEWEST) {
      return Optional.empty();
    }
    Integer[] byRpm = IntStream.range(0, gaps.size()).boxed().toArray(Integer[]::new);
    Arrays.sort(byRpm, Comparator.comparingDouble(gaps::rpm));
    double highest = gaps.rpm(byRpm[byRpm.length - 1]);
    double best = Double.POSITIVE_INFINITY;
    double step = 0;
    int stride = Math.max(1, byRpm.length / CANDIDATES);
    for (int k = 2 * FEWEST; k <= byRpm.length - FEWEST; k += stride) {
      double at = gaps.rpm(byRpm[k]);
      if (at * HIGHEST_OVER_STEP >= highest && at > LOWEST_RPM) {
        double squares = squares(gaps, byRpm, at);
        if (squares < best) {
          best = squares;
          step = at;
        }
      }
    }
    return step == 0 ? Optional.empty() : confirm(gaps, step);
  }

  /** Residual squares of a line with a step at a speed; of a sample when there are many sparks. */
  private static double squares(GapReadings gaps, Integer[] byRpm, double step) {
    int every = Math.max(1, byRpm.length / ENOUGH);
    int n = (byRpm.length + every - 1) / every;
    double[][] rows = new double[n][];
    double[] y = new double[n];
    for (int i = 0; i < n; i++) {
      int k = byRpm[i * every];
      rows[i] = new double[] {1, gaps.rpm(k) / 1000, gaps.rpm(k) >= step ? 1 : 0};
      y[i] = gaps.degrees(k);
    }
    return NormalEquations.of(rows, y).solve().residualSquares();
  }

  private static Optional<Found> confirm(GapReadings gaps, double step) {
    GapReadings below = gaps.where(i -> gaps.rpm(i) < step);
    LinearFit line = line(below);
    double scatter = Math.max(Robust.sigma(line.residuals()), gaps.knownScatter());
    double[] over =
        IntStream.range(0, gaps.size())
            .filter(i -> gaps.rpm(i) >= step)
            .mapToDouble(i -> residual(line, gaps, i))
            .toArray();
    double drop = -Robust.median(over);
    if (drop < Math.max(SMALLEST_DEGREES, CLEAR_OF_SCATTER * scatter)) {
      return Optional.empty();
    }
    boolean[] limited = new boolean[gaps.size()];
    double from = Double.POSITIVE_INFINITY;
    for (int i = 0; i < limited.length; i++) {
      double late = -residual(line, gaps, i);
      limited[i] =
          gaps.rpm(i) >= step * HYSTERESIS
              && late > Math.min(drop / 3, Math.max(SMALLEST_DEGREES / 2, 4 * scatter));
      from = limited[i] ? Math.min(from, gaps.rpm(i)) : from;
    }
    return Optional.of(new Found(from, drop, limited));
  }

  private static LinearFit line(GapReadings below) {
    boolean sloped = below.highestRpm() > 1.05 * below.lowestRpm();
    double[][] rows = new double[below.size()][];
    for (int i = 0; i < rows.length; i++) {
      rows[i] = sloped ? new double[] {1, below.rpm(i) / 1000} : new double[] {1};
    }
    return Robust.leastAbsolute(rows, below.gaps(), below.knownScatter());
  }

  private static double residual(LinearFit line, GapReadings gaps, int i) {
    double[] b = line.coefficients();
    double slope = b.length > 1 ? b[1] : 0;
    return gaps.degrees(i) - b[0] - slope * gaps.rpm(i) / 1000;
  }
}
