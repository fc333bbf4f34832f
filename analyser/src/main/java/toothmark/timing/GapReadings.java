package toothmark.timing;

import java.util.Arrays;
import java.util.function.IntPredicate;
import java.util.stream.IntStream;
import org.apache.commons.math3.stat.StatUtils;

/** Gaps between actual and commanded advance, in time order, with what they may depend on. */
final class GapReadings {

  /** Angle interpolated between teeth is known no better than this, degrees. */
  private static final double FLOOR_DEGREES = 0.005;

  private final Reading[] readings;

  GapReadings(Reading[] readings) {
    this.readings = readings.clone();
  }

  /**
   * One gap.
   *
   * @param spark number of the spark among all
   * @param rpm speed at the spark, rev/min
   * @param rpmPerSecond acceleration, rev/min each second
   * @param degrees actual less commanded advance
   * @param uncertaintyDegrees of the spark's own time
   * @param leadShiftDegrees how the gap moves if the controller takes the speed earlier by one
   *     standard uncertainty of the lead
   * @param crankDegrees crank angle after tooth 1
   */
  record Reading(
      int spark,
      double rpm,
      double rpmPerSecond,
      double degrees,
      double uncertaintyDegrees,
      double leadShiftDegrees,
      double crankDegrees) {}

  int size() {
    return readings.length;
  }

  int spark(int i) {
    return readings[i].spark();
  }

  double rpm(int i) {
    return readings[i].rpm();
  }

  double rpmPerSecond(int i) {
    return readings[i].rpmPerSecond();
  }

  double degrees(int i) {
    return readings[i].degrees();
  }

  double crankDegrees(int i) {
    return readings[i].crankDegrees();
  }

  double variance(int i) {
    double u = readings[i].uncertaintyDegrees();
    return u * u + FLOOR_DEGREES * FLOOR_DEGREES;
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

  double[] leadShifts() {
    return Arrays.stream(readings).mapToDouble(Reading::leadShiftDegrees).toArray();
  }

  /** Root mean square of the known part of the errors, degrees. */
  double knownScatter() {
    return Math.sqrt(StatUtils.mean(variances()));
  }

  /** The same for another lead of the controller, in standard uncertainties from the usual one. */
  GapReadings ledBy(double uncertainties) {
    return new GapReadings(
        Arrays.stream(readings)
            .map(
                r ->
                    new Reading(
                        r.spark(),
                        r.rpm(),
                        r.rpmPerSecond(),
                        r.degrees() - uncertainties * r.leadShiftDegrees(),
                        r.uncertaintyDegrees(),
                        r.leadShiftDegrees(),
                        r.crankDegrees()))
            .toArray(Reading[]::new));
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
