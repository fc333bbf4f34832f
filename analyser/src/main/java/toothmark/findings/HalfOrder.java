package toothmark.findings;

import java.util.Arrays;
import java.util.Optional;
import java.util.function.DoubleUnaryOperator;
import toothmark.receiver.SyncLoss;

/**
 * How much the same part of the turn differs between the two turns of a four-stroke cycle.
 *
 * <p>The turn is divided into as many parts as cylinders fire in it. The difference is free of the
 * wheel's errors, which repeat every turn, and of steady acceleration, the neighbouring cycles'
 * mean being taken off.
 *
 * @param difference largest mean difference of any part, as a share of its speed
 * @param uncertainty standard uncertainty of that mean
 * @param second largest mean difference of the other parts
 * @param lowerDegrees where in a cycle, from the angle of the first part, the part with the lower
 *     value begins
 */
record HalfOrder(double difference, double uncertainty, double second, double lowerDegrees) {

  private static final double TURN = 360;
  private static final int FEWEST_CYCLES = 10;

  /** A stretch of whole turns at a running speed. */
  record Stretch(double fromDegrees, int turns) {

    /** The longest of a capture; one that sags to the speed of a starter ends it. */
    static Stretch longest(Turns turns, int cylinders) {
      double first = turns.angle(0);
      int whole = (int) ((turns.angle(turns.teeth() - 1) - first) / TURN);
      Stretch longest = new Stretch(first, 0);
      int start = 0;
      for (int r = 0; r <= whole; r++) {
        if (r == whole || slowest(turns, first + r * TURN, parts(cylinders)) < RUNNING) {
          if (r - start > longest.turns) {
            longest = new Stretch(first + start * TURN, r - start);
          }
          start = r + 1;
        }
      }
      return longest;
    }

    boolean isEnough() {
      return turns >= 2 * FEWEST_CYCLES + 2;
    }
  }

  private static final double RUNNING = SyncLoss.CRANKING_BELOW_RPM;

  private static int parts(int cylinders) {
    return Math.max(1, cylinders / 2);
  }

  private static double slowest(Turns turns, double from, int parts) {
    double width = TURN / parts;
    double slowest = Double.POSITIVE_INFINITY;
    for (int p = 0; p < parts; p++) {
      slowest = Math.min(slowest, Math.exp(lnSpeed(turns, from + p * width, width)) / 6);
    }
    return slowest;
  }

  /** Of the mean speed in each part. */
  static HalfOrder ofSpeed(Turns turns, int cylinders, Stretch stretch) {
    int parts = parts(cylinders);
    double width = TURN / parts;
    return compare(
        values(stretch.turns(), parts, stretch.fromDegrees(), a -> lnSpeed(turns, a, width)));
  }

  /**
   * Of what the speed gains from around one top dead centre to around the next, which is what the
   * cylinder does that fires between them. Empty where cylinders do not fire in pairs a turn apart.
   *
   * @param tdcDegrees any top dead centre
   */
  static Optional<Stroke> ofGain(Turns turns, int cylinders, Stretch stretch, double tdcDegrees) {
    int parts = parts(cylinders);
    double width = TURN / parts;
    // half a stroke is looked at before the first top dead centre, and one and a half after the
    // last
    double earliest = stretch.fromDegrees() + width / 2;
    double first = tdcDegrees + width * Math.ceil((earliest - tdcDegrees) / width);
    if (cylinders % 2 != 0 || stretch.turns() < 2 * FEWEST_CYCLES + 5) {
      return Optional.empty();
    }
    DoubleUnaryOperator gain =
        a -> lnSpeed(turns, a + width / 2, width) - lnSpeed(turns, a - width / 2, width);
    HalfOrder h = compare(values(stretch.turns() - 3, parts, first, gain));
    return Optional.of(new Stroke(first + h.lowerDegrees(), h));
  }

  /**
   * The stroke that gains least.
   *
   * @param tdcDegrees top dead centre of the cylinder that fires
   * @param gains how it differs from that a turn later
   */
  record Stroke(double tdcDegrees, HalfOrder gains) {

    /** A weak cylinder leaves the other pairs alike. */
    boolean standsOut() {
      return gains.difference > 2 * gains.second && gains.difference > 4 * gains.uncertainty;
    }
  }

  private static double[][] values(
      int whole, int parts, double first, DoubleUnaryOperator valueAt) {
    double[][] values = new double[whole][parts];
    for (int r = 0; r < whole; r++) {
      for (int p = 0; p < parts; p++) {
        values[r][p] = valueAt.applyAsDouble(first + r * TURN + p * TURN / parts);
      }
    }
    return values;
  }

  private static HalfOrder compare(double[][] values) {
    int parts = values[0].length;
    HalfOrder worst = new HalfOrder(0, 0, 0, 0);
    for (int p = 0; p < parts; p++) {
      int n = values.length - 2;
      double[] d = new double[n];
      for (int r = 1; r <= n; r++) {
        double away = values[r][p] - (values[r - 1][p] + values[r + 1][p]) / 2;
        d[r - 1] = r % 2 == 0 ? away : -away;
      }
      double mean = Arrays.stream(d).average().orElse(0);
      double square = Arrays.stream(d).map(x -> (x - mean) * (x - mean)).sum();
      // neighbouring values share turns, so count them as a third as many
      double own = Math.sqrt(square / (n - 1) / (n / 3.0));
      double lower = p * TURN / parts + (mean > 0 ? TURN : 0);
      worst =
          Math.abs(mean) > worst.difference
              ? new HalfOrder(Math.abs(mean), own, worst.difference, lower)
              : worst.withSecond(Math.abs(mean));
    }
    return worst;
  }

  private HalfOrder withSecond(double other) {
    return new HalfOrder(difference, uncertainty, Math.max(second, other), lowerDegrees);
  }

  /** Logarithm of the mean speed over some degrees, in degrees a second. */
  private static double lnSpeed(Turns turns, double from, double width) {
    return Math.log(width / (timeOf(turns, from + width) - timeOf(turns, from)));
  }

  private static double timeOf(Turns turns, double angle) {
    int i = turns.toothNear(angle);
    i = Math.max(0, Math.min(turns.angle(i) > angle ? i - 1 : i, turns.teeth() - 2));
    double share = (angle - turns.angle(i)) / (turns.angle(i + 1) - turns.angle(i));
    return turns.time(i) + share * (turns.time(i + 1) - turns.time(i));
  }
}
