package toothmark.chart;

import java.util.Optional;
import toothmark.rotation.AngleTimeline;
import toothmark.rotation.DecodedCrank;
import toothmark.rotation.SpeedTrace;
import toothmark.units.CrankAngle;
import toothmark.units.Fourier;

/**
 * How much the speed swings at each order, that is, so many times in a turn.
 *
 * <p>The speed from tooth to tooth is read at even angles (order tracking), divided by its own mean
 * over the two turns around, windowed after Hann and transformed. Order tracking after Fyfe and
 * Munck, Mech. Syst. Signal Process. 11 (1997) 187-205; window after Harris, Proc. IEEE 66 (1978)
 * 51-83.
 */
final class OrderSpectrum {

  private static final int FEWEST_TURNS = 8;
  private static final int MOST_TURNS = 512;

  private final double[] percent;
  private final int turns;

  private OrderSpectrum(double[] percent, int turns) {
    this.percent = percent;
    this.turns = turns;
  }

  /** The spectrum of a record, of its middle part where it is long; empty under ten turns. */
  static Optional<OrderSpectrum> of(DecodedCrank crank) {
    int perTurn = Integer.highestOneBit(2 * crank.wheel().pattern().slots());
    double[] even = atEvenAngles(crank, perTurn);
    int turns = Math.min(MOST_TURNS, even.length / perTurn - 2);
    if (turns < FEWEST_TURNS) {
      return Optional.empty();
    }
    int first = (even.length - turns * perTurn) / 2;
    double[] x = ripple(even, first, turns * perTurn, 2 * perTurn);
    double weight = window(x);
    Fourier.forward(x);
    double[] percent = new double[x.length / 2];
    for (int i = 1; i < percent.length; i++) {
      percent[i] = 100 * 2 * Math.hypot(x[2 * i], x[2 * i + 1]) / weight;
    }
    return Optional.of(new OrderSpectrum(percent, turns));
  }

  int size() {
    return percent.length;
  }

  double order(int i) {
    return (double) i / turns;
  }

  /** Amplitude in percent of the speed. */
  double percent(int i) {
    return percent[i];
  }

  int turns() {
    return turns;
  }

  private static double[] atEvenAngles(DecodedCrank crank, int perTurn) {
    SpeedTrace speed = crank.speed();
    AngleTimeline angle = crank.angle();
    double step = CrankAngle.REVOLUTION / perTurn;
    double start = angle.degreesAt(angle.span().startInclusive());
    double[] even =
        new double[(int) ((angle.degreesAt(angle.span().endExclusive()) - start) / step)];
    int k = 0;
    double a0 = start;
    double v0 = speed.rpm(0);
    for (int i = 0; i < speed.size() && k < even.length; i++) {
      if (!angle.covers(speed.time(i))) {
        continue;
      }
      double a1 = angle.degreesAt(speed.time(i));
      double v1 = speed.rpm(i);
      for (; k < even.length && start + k * step <= a1; k++) {
        double share = a1 > a0 ? (start + k * step - a0) / (a1 - a0) : 1;
        even[k] = v0 + share * (v1 - v0);
      }
      a0 = a1;
      v0 = v1;
    }
    for (; k < even.length; k++) {
      even[k] = v0;
    }
    return even;
  }

  /** Values over the mean of the span around them, less 1. */
  private static double[] ripple(double[] values, int first, int count, int span) {
    double[] sums = new double[values.length + 1];
    for (int i = 0; i < values.length; i++) {
      sums[i + 1] = sums[i] + values[i];
    }
    double[] ripple = new double[count];
    for (int i = 0; i < count; i++) {
      int from = Math.max(0, first + i - span / 2);
      int to = Math.min(values.length, from + span);
      ripple[i] = values[first + i] * (to - from) / (sums[to] - sums[from]) - 1;
    }
    return ripple;
  }

  private static double window(double[] x) {
    double weight = 0;
    for (int i = 0; i < x.length; i++) {
      double w = 0.5 - 0.5 * Math.cos(2 * Math.PI * i / x.length);
      x[i] *= w;
      weight += w;
    }
    return weight;
  }
}
