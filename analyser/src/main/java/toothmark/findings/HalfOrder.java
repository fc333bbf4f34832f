package toothmark.findings;

import java.util.Arrays;
import java.util.Optional;
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
 */
record HalfOrder(double difference, double uncertainty) {

  private static final int FEWEST_CYCLES = 10;

  static Optional<HalfOrder> of(Turns turns, int cylinders) {
    int parts = Math.max(1, cylinders / 2);
    double width = 360.0 / parts;
    double first = turns.angle(0);
    int whole = (int) ((turns.angle(turns.teeth() - 1) - first) / 360.0);
    double[][] ln = new double[whole][parts];
    for (int r = 0; r < whole; r++) {
      for (int p = 0; p < parts; p++) {
        double from = first + r * 360.0 + p * width;
        double seconds = timeOf(turns, from + width) - timeOf(turns, from);
        if (width / seconds / 6 < SyncLoss.CRANKING_BELOW_RPM) {
          return Optional.empty();
        }
        ln[r][p] = -Math.log(seconds);
      }
    }
    return whole < 2 * FEWEST_CYCLES + 2 ? Optional.empty() : Optional.of(compare(ln, parts));
  }

  private static HalfOrder compare(double[][] ln, int parts) {
    double worst = 0;
    double u = 0;
    for (int p = 0; p < parts; p++) {
      int n = ln.length - 2;
      double[] d = new double[n];
      for (int r = 1; r <= n; r++) {
        double away = ln[r][p] - (ln[r - 1][p] + ln[r + 1][p]) / 2;
        d[r - 1] = r % 2 == 0 ? away : -away;
      }
      double mean = Arrays.stream(d).average().orElse(0);
      double square = Arrays.stream(d).map(x -> (x - mean) * (x - mean)).sum();
      // neighbouring values share turns, so count them as a third as many
      double own = Math.sqrt(square / (n - 1) / (n / 3.0));
      if (Math.abs(mean) > worst) {
        worst = Math.abs(mean);
        u = own;
      }
    }
    return new HalfOrder(worst, u);
  }

  private static double timeOf(Turns turns, double angle) {
    int i = turns.toothNear(angle);
    i = Math.max(0, Math.min(turns.angle(i) > angle ? i - 1 : i, turns.teeth() - 2));
    double share = (angle - turns.angle(i)) / (turns.angle(i + 1) - turns.angle(i));
    return turns.time(i) + share * (turns.time(i + 1) - turns.time(i));
  }
}
