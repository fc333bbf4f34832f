package toothmark.timing;

import java.util.Arrays;
import java.util.List;
import java.util.function.IntPredicate;
import java.util.stream.IntStream;
import org.apache.commons.math3.stat.StatUtils;

/** Gaps between actual and commanded advance, in time order, with what they may depend on. */
final class GapReadings {

  /**
   * How well an angle is known between teeth, degrees, on 36 and 60 of them: 0.001 to 0.003 from
   * turn to turn. What it scatters more than that is found from the readings.
   */
  static final double BETWEEN_TEETH_DEGREES = 0.002;

  /** How many half-known things move the gaps by the way the controller goes by speed. */
  static final int LOOKS = 2;

  /**
   * From so much on, root mean square, what is open of the command hides what foretelling does:
   * both come of the change of speed, degrees.
   */
  private static final double OPEN_DEGREES = 0.1;

  private final Reading[] readings;

  GapReadings(Reading[] readings) {
    this.readings = readings.clone();
  }

  /**
   * One gap.
   *
   * @param spark number of the spark among all
   * @param rpm speed at the spark, rev/min
   * @param degrees actual less commanded advance
   * @param uncertaintyDegrees of the spark's own time
   * @param crankDegrees crank angle after tooth 1
   * @param shifts how the gap moves with one standard uncertainty of each half-known thing,
   *     degrees: {@link #LOOKS} for the controller's taking speed earlier, or over the last teeth
   *     only, then the {@link Foretelling}s
   */
  record Reading(
      int spark,
      double rpm,
      double degrees,
      double uncertaintyDegrees,
      double crankDegrees,
      List<Double> shifts) {

    /** Copies the list. */
    Reading {
      shifts = List.copyOf(shifts);
    }
  }

  int size() {
    return readings.length;
  }

  int spark(int i) {
    return readings[i].spark();
  }

  double rpm(int i) {
    return readings[i].rpm();
  }

  double degrees(int i) {
    return readings[i].degrees();
  }

  double crankDegrees(int i) {
    return readings[i].crankDegrees();
  }

  double variance(int i) {
    double u = readings[i].uncertaintyDegrees();
    return u * u + BETWEEN_TEETH_DEGREES * BETWEEN_TEETH_DEGREES;
  }

  double[] rpms() {
    return Arrays.stream(readings).mapToDouble(Reading::rpm).toArray();
  }

  double[] gaps() {
    return Arrays.stream(readings).mapToDouble(Reading::degrees).toArray();
  }

  double[] variances() {
    return IntStream.range(0, size()).mapToDouble(this::variance).toArray();
  }

  /**
   * How each gap moves with each half-known thing, a column for each and a row for each gap; with
   * what foretelling does only where it can be told from what is open of the command.
   */
  double[][] shifts() {
    double open = Math.sqrt(StatUtils.mean(squares(openOfLook())));
    int all = size() == 0 ? 0 : readings[0].shifts().size();
    double[][] columns = new double[open < OPEN_DEGREES ? all : Math.min(LOOKS, all)][];
    for (int k = 0; k < columns.length; k++) {
      columns[k] = column(k);
    }
    return columns;
  }

  private double[] column(int k) {
    return Arrays.stream(readings).mapToDouble(r -> r.shifts().get(k)).toArray();
  }

  /** How far each gap may be moved by the way the controller goes by speed, degrees. */
  double[] openOfLook() {
    return Arrays.stream(readings)
        .mapToDouble(r -> Math.hypot(r.shifts().get(0), r.shifts().get(1)))
        .toArray();
  }

  private static double[] squares(double[] x) {
    return Arrays.stream(x).map(v -> v * v).toArray();
  }

  /** Root mean square of the known part of the errors, degrees. */
  double knownScatter() {
    return Math.sqrt(StatUtils.mean(variances()));
  }

  /** The same with what half-known things have moved taken off, each by so many uncertainties. */
  GapReadings without(double[] times) {
    Reading[] moved = readings.clone();
    for (int i = 0; i < moved.length; i++) {
      Reading r = moved[i];
      double shift = 0;
      for (int k = 0; k < times.length; k++) {
        shift += times[k] * r.shifts().get(k);
      }
      moved[i] =
          new Reading(
              r.spark(),
              r.rpm(),
              r.degrees() - shift,
              r.uncertaintyDegrees(),
              r.crankDegrees(),
              r.shifts());
    }
    return new GapReadings(moved);
  }

  GapReadings where(IntPredicate kept) {
    return new GapReadings(
        IntStream.range(0, size()).filter(kept).mapToObj(i -> readings[i]).toArray(Reading[]::new));
  }

  /** Range of speed over its mean, without the outer hundredth at each end. */
  double relativeSpan() {
    double[] sorted = rpms();
    Arrays.sort(sorted);
    int trim = sorted.length / 100;
    return (sorted[sorted.length - 1 - trim] - sorted[trim]) / StatUtils.mean(sorted);
  }

  double lowestRpm() {
    return StatUtils.min(rpms());
  }

  double highestRpm() {
    return StatUtils.max(rpms());
  }
}
