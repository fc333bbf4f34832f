package toothmark.timing;

import java.util.Arrays;
import java.util.Optional;
import org.apache.commons.math3.distribution.FDistribution;
import toothmark.units.Interval;
import toothmark.units.Measured;

/**
 * Looks for a wheel that moved against the crank: readings that stand at one level, then at
 * another, at once or after a ramp.
 *
 * <p>All pairs of a start and an end on a grid of readings are tried, each with the sensor's lag
 * free within what is usual, so that a change with speed is not taken for one with time.
 */
final class SlipSearch {

  /** A smaller change is no slip that a check could act on, degrees. */
  private static final double SMALLEST_DEGREES = 0.5;

  /** The change must exceed this many standard deviations of a single reading. */
  private static final double CLEAR_OF_SCATTER = 4;

  private static final double LARGEST_CHANCE = 1e-6;
  private static final int GRID = 24;
  private static final int FEWEST_EACH_SIDE = 4;

  private final double[] times;
  private final double[] rpm;
  private final double[] readings;
  private final Measured usualLag;

  private SlipSearch(double[] times, double[] rpm, double[] readings, Measured usualLag) {
    this.times = times;
    this.rpm = rpm;
    this.readings = readings;
    this.usualLag = usualLag;
  }

  /**
   * A slip.
   *
   * @param from last reading at the old level, s
   * @param to first reading at the new level, s
   * @param degrees how far the reading moved, degrees
   * @param atOnce whether no reading lies in between
   */
  record Slip(double from, double to, Measured degrees, boolean atOnce) {

    double movedAt(double time) {
      double share = time <= from ? 0 : time >= to ? 1 : (time - from) / (to - from);
      return share * degrees.value();
    }

    WheelSlip described() {
      return new WheelSlip(
          atOnce ? WheelSlip.Manner.STEP : WheelSlip.Manner.CREEP, new Interval(from, to), degrees);
    }
  }

  static Optional<Slip> find(double[] times, double[] rpm, double[] readings, Measured usualLag) {
    int n = times.length;
    if (n < 2 * FEWEST_EACH_SIDE) {
      return Optional.empty();
    }
    return new SlipSearch(times, rpm, readings, usualLag).find();
  }

  private Optional<Slip> find() {
    int n = times.length;
    double scatter = scatter();
    LinearFit level = fit(-1, -1, scatter);
    int[] best = best(scatter);
    LinearFit moved = fit(best[0], best[1], scatter);
    double degrees = moved.coefficient(2);
    double gain = level.weightedSquares() - moved.weightedSquares();
    int dof = n - 4;
    double f = gain / 2 / Math.max(moved.weightedSquares() / dof, 1e-12);
    double chance = 1 - new FDistribution(2, dof).cumulativeProbability(f);
    double residual = scatter * Math.sqrt(moved.weightedSquares() / dof);
    boolean large = Math.abs(degrees) > Math.max(SMALLEST_DEGREES, CLEAR_OF_SCATTER * residual);
    if (!large || chance > LARGEST_CHANCE) {
      return Optional.empty();
    }
    double u = Math.sqrt(moved.covariance(2, 2)) * residual / scatter;
    return Optional.of(
        new Slip(times[best[0]], times[best[1]], new Measured(degrees, u), best[1] == best[0] + 1));
  }

  /** Scatter from one reading to the next, which a slip hardly touches. */
  private double scatter() {
    double[] steps = new double[readings.length - 1];
    for (int i = 0; i < steps.length; i++) {
      steps[i] = (readings[i + 1] - readings[i]) / Math.sqrt(2);
    }
    return Math.max(Robust.sigma(steps), 0.01);
  }

  private int[] best(double scatter) {
    int n = times.length;
    int from = FEWEST_EACH_SIDE - 1;
    int to = n - FEWEST_EACH_SIDE;
    int stride = Math.max(1, (to - from) / GRID);
    int[] best = search(from, to, stride, scatter);
    while (stride > 1) {
      int finer = Math.max(1, stride / 4);
      best = refine(best, stride, finer, scatter);
      stride = finer;
    }
    return best;
  }

  private int[] search(int from, int to, int stride, double scatter) {
    int[] best = {from, from + 1};
    double least = Double.POSITIVE_INFINITY;
    for (int i = from; i < to; i += stride) {
      for (int j = i + 1; j <= to; j += j == i + 1 ? Math.max(1, stride - 1) : stride) {
        double squares = fit(i, j, scatter).weightedSquares();
        if (squares < least) {
          least = squares;
          best = new int[] {i, j};
        }
      }
    }
    return best;
  }

  private int[] refine(int[] around, int reach, int stride, double scatter) {
    int[] best = around;
    double least = fit(around[0], around[1], scatter).weightedSquares();
    int last = times.length - FEWEST_EACH_SIDE;
    for (int i = around[0] - reach; i <= around[0] + reach; i += stride) {
      for (int j = around[1] - reach; j <= around[1] + reach; j += stride) {
        if (i < FEWEST_EACH_SIDE - 1 || j > last || j <= i) {
          continue;
        }
        double squares = fit(i, j, scatter).weightedSquares();
        if (squares < least) {
          least = squares;
          best = new int[] {i, j};
        }
      }
    }
    return best;
  }

  /** Level, lag and, where there is a start, a ramp; the last row is what is usual of the lag. */
  private LinearFit fit(int from, int to, double scatter) {
    int n = times.length;
    double[][] rows = new double[n + 1][];
    double[] y = Arrays.copyOf(readings, n + 1);
    double[] w = new double[n + 1];
    Arrays.fill(w, 1 / (scatter * scatter));
    for (int i = 0; i < n; i++) {
      double lag = -Line.DEGREES * rpm[i];
      rows[i] = from < 0 ? new double[] {1, lag} : new double[] {1, lag, ramp(i, from, to)};
    }
    rows[n] = from < 0 ? new double[] {0, 1} : new double[] {0, 1, 0};
    y[n] = usualLag.value();
    w[n] = 1 / (usualLag.standardUncertainty() * usualLag.standardUncertainty());
    return LinearFit.of(rows, y, w);
  }

  private double ramp(int i, int from, int to) {
    return i <= from ? 0 : i >= to ? 1 : (times[i] - times[from]) / (times[to] - times[from]);
  }
}
