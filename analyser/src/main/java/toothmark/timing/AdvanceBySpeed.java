package toothmark.timing;

import java.util.Arrays;
import java.util.Comparator;
import java.util.OptionalDouble;
import java.util.stream.IntStream;

/**
 * Commanded advance as a function of speed, learned from the rows of a log, if it is one.
 *
 * <p>A straight line is fitted through the rows about each speed, the nearest weighing most (local
 * regression after Cleveland, J. Am. Stat. Assoc. 74 (1979) 829,
 * doi:10.1080/01621459.1979.10481038). Whether advance follows from speed is seen by predicting
 * each row from the others.
 */
final class AdvanceBySpeed {

  /** Rows predicted this well follow from speed, degrees: twice the usual step of a log. */
  private static final double FOLLOWS_DEGREES = 0.2;

  private static final double LEAST_REACH_RPM = 60;
  private static final double REACH_OVER_THIRD = 1.2;

  /** How far beyond the logged speeds the line still holds, rev/min. */
  private static final double BEYOND_RPM = 100;

  private static final int FEWEST = 6;
  private static final int ENOUGH = 500;

  private final double[] rpm;
  private final double[] advance;
  private final boolean follows;

  private AdvanceBySpeed(double[] rpm, double[] advance) {
    this.rpm = rpm;
    this.advance = advance;
    this.follows = rpm.length >= FEWEST && misfit() <= FOLLOWS_DEGREES;
  }

  static AdvanceBySpeed learn(double[] rpm, double[] advance) {
    Integer[] order = IntStream.range(0, rpm.length).boxed().toArray(Integer[]::new);
    Arrays.sort(order, Comparator.comparingDouble(i -> rpm[i]));
    return new AdvanceBySpeed(
        Arrays.stream(order).mapToDouble(i -> rpm[i]).toArray(),
        Arrays.stream(order).mapToDouble(i -> advance[i]).toArray());
  }

  boolean follows() {
    return follows;
  }

  private double misfit() {
    int every = Math.max(1, rpm.length / ENOUGH);
    double[] r = new double[(rpm.length + every - 1) / every];
    for (int k = 0; k < r.length; k++) {
      int i = k * every;
      r[k] = advance[i] - local(rpm[i], i);
    }
    return Robust.sigma(r);
  }

  OptionalDouble at(double speed) {
    boolean covered = speed >= rpm[0] - BEYOND_RPM && speed <= rpm[rpm.length - 1] + BEYOND_RPM;
    return covered ? OptionalDouble.of(local(speed, -1)) : OptionalDouble.empty();
  }

  private double local(double speed, int without) {
    double reach = reach(speed, without);
    double sw = 0;
    double sx = 0;
    double sy = 0;
    double sxx = 0;
    double sxy = 0;
    for (int i = first(speed - reach); i < rpm.length && rpm[i] < speed + reach; i++) {
      double x = (rpm[i] - speed) / reach;
      double w = i == without ? 0 : Math.pow(1 - Math.pow(Math.abs(x), 3), 3);
      sw += w;
      sx += w * x;
      sy += w * advance[i];
      sxx += w * x * x;
      sxy += w * x * advance[i];
    }
    double determinant = sw * sxx - sx * sx;
    return determinant > 1e-9 * sw * sw ? (sxx * sy - sx * sxy) / determinant : sy / sw;
  }

  /** A little further than the third nearest row. */
  private double reach(double speed, int without) {
    double[] nearest = new double[3];
    Arrays.fill(nearest, Double.POSITIVE_INFINITY);
    int middle = first(speed);
    for (int i = Math.max(0, middle - 4); i < Math.min(rpm.length, middle + 4); i++) {
      double d = Math.abs(rpm[i] - speed);
      if (i != without && d < nearest[2]) {
        nearest[2] = d;
        Arrays.sort(nearest);
      }
    }
    return Math.max(LEAST_REACH_RPM, REACH_OVER_THIRD * nearest[2]);
  }

  private int first(double speed) {
    int i = Arrays.binarySearch(rpm, speed);
    return i >= 0 ? i : -i - 1;
  }
}
