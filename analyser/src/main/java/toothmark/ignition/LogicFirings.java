package toothmark.ignition;

import java.util.Arrays;
import org.apache.commons.math3.stat.descriptive.moment.StandardDeviation;
import org.apache.commons.math3.stat.descriptive.rank.Median;
import toothmark.edges.CrankEdges;
import toothmark.edges.EdgeTrain;

/**
 * Firings of a two-level channel: charging from one edge to the next, spark at its end.
 *
 * <p>Charging is high by convention. It is taken as low where the capture leaves little doubt: at
 * its slowest the low pulses are less than half as long as the high ones, and either the high ones
 * last longer than a coil may be charged, or the low ones keep their length while the high ones
 * follow the speed, as only a dwell does.
 */
final class LogicFirings {

  /** Longer than the dwell of any coil in practice (common practice: 1.5 to 5 ms). */
  private static final double LONGEST_DWELL_SECONDS = 12e-3;

  /** No coil fires and charges again within this time: a break in a charge is a flicker. */
  private static final double BREAK_SECONDS = 60e-6;

  private static final double FLICKER_SHARE = 0.05;

  private LogicFirings() {}

  static Firings read(CrankEdges edges) {
    return read(edges, chargingLevel(edges));
  }

  static Firings read(CrankEdges edges, ChargingLevel level) {
    boolean high = level == ChargingLevel.HIGH;
    EdgeTrain starts = high ? edges.rising() : edges.falling();
    EdgeTrain sparks = high ? edges.falling() : edges.rising();
    Firings out = new Firings(level);
    int s = 0;
    for (int i = 0; i < sparks.size(); i++) {
      double start = Double.NaN;
      while (s < starts.size() && starts.time(s) < sparks.time(i)) {
        start = starts.time(s++);
      }
      out.add(start, sparks.time(i), sparks.uncertainty(i));
    }
    return out.withoutBreaks(BREAK_SECONDS).withoutFlickers(FLICKER_SHARE);
  }

  static ChargingLevel chargingLevel(CrankEdges edges) {
    double[] high = pulses(edges.rising(), edges.falling());
    double[] low = pulses(edges.falling(), edges.rising());
    if (high.length < 3 || low.length < 3) {
      return ChargingLevel.HIGH;
    }
    double highSlow = slowest(high);
    double lowSlow = slowest(low);
    boolean lowIsShort = lowSlow < 0.5 * highSlow;
    boolean highTooLong = highSlow > LONGEST_DWELL_SECONDS;
    boolean lowIsSteady = logSpread(low) < 0.5 * logSpread(high);
    return lowIsShort && (highTooLong || lowIsSteady) ? ChargingLevel.LOW : ChargingLevel.HIGH;
  }

  private static double[] pulses(EdgeTrain from, EdgeTrain to) {
    double[] out = new double[to.size()];
    int n = 0;
    int f = 0;
    for (int i = 0; i < to.size(); i++) {
      double start = Double.NaN;
      while (f < from.size() && from.time(f) < to.time(i)) {
        start = from.time(f++);
      }
      if (!Double.isNaN(start)) {
        out[n++] = to.time(i) - start;
      }
    }
    return Arrays.copyOf(out, n);
  }

  /** Median of the longest quarter: the pulse where the engine turns slowest. */
  private static double slowest(double[] pulses) {
    double[] sorted = pulses.clone();
    Arrays.sort(sorted);
    int from = sorted.length * 3 / 4;
    return new Median().evaluate(sorted, from, sorted.length - from);
  }

  private static double logSpread(double[] pulses) {
    return new StandardDeviation().evaluate(Arrays.stream(pulses).map(Math::log).toArray());
  }
}
