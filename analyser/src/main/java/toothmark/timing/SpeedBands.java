package toothmark.timing;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import org.apache.commons.math3.stat.descriptive.SummaryStatistics;

/** Sums sparks up by bands of speed. */
final class SpeedBands {

  private static final double[] WIDTHS = {50, 100, 250, 500, 1000, 2000};
  private static final int MOST_BANDS = 12;

  private SpeedBands() {}

  static List<SpeedBand> of(List<SparkTiming> sparks) {
    double lowest = Double.POSITIVE_INFINITY;
    double highest = 0;
    for (SparkTiming s : sparks) {
      if (counts(s)) {
        lowest = Math.min(lowest, rpm(s));
        highest = Math.max(highest, rpm(s));
      }
    }
    if (highest == 0) {
      return List.of();
    }
    double width = width(lowest, highest);
    int first = (int) Math.floor(lowest / width);
    int count = (int) Math.floor(highest / width) - first + 1;
    Sum[] sums = new Sum[count];
    for (SparkTiming s : sparks) {
      if (counts(s)) {
        int k = (int) Math.floor(rpm(s) / width) - first;
        sums[k] = sums[k] == null ? new Sum() : sums[k];
        sums[k].add(s);
      }
    }
    List<SpeedBand> bands = new ArrayList<>();
    for (int k = 0; k < count; k++) {
      if (sums[k] != null) {
        bands.add(sums[k].band((first + k) * width, (first + k + 1) * width));
      }
    }
    return bands;
  }

  private static boolean counts(SparkTiming s) {
    return s.advanceDegrees().isPresent() && s.standing() != SparkTiming.Standing.REJECTED;
  }

  private static double rpm(SparkTiming s) {
    return s.spark().crank().orElseThrow().rpm();
  }

  private static double width(double lowest, double highest) {
    for (double w : WIDTHS) {
      if (Math.floor(highest / w) - Math.floor(lowest / w) < MOST_BANDS) {
        return w;
      }
    }
    return WIDTHS[WIDTHS.length - 1];
  }

  /** What a band adds up. */
  private static final class Sum {

    private final SummaryStatistics rpm = new SummaryStatistics();
    private final SummaryStatistics actual = new SummaryStatistics();
    private final SummaryStatistics commanded = new SummaryStatistics();
    private final SummaryStatistics gap = new SummaryStatistics();

    void add(SparkTiming s) {
      rpm.addValue(rpm(s));
      actual.addValue(s.advanceDegrees().getAsDouble());
      s.commandedDegrees().ifPresent(commanded::addValue);
      s.gapDegrees().ifPresent(gap::addValue);
    }

    SpeedBand band(double from, double to) {
      return new SpeedBand(
          from,
          to,
          rpm.getMean(),
          (int) rpm.getN(),
          actual.getMean(),
          mean(commanded),
          mean(gap),
          gap.getN() < 2 ? OptionalDouble.empty() : OptionalDouble.of(gap.getStandardDeviation()));
    }

    private static OptionalDouble mean(SummaryStatistics s) {
      return s.getN() == 0 ? OptionalDouble.empty() : OptionalDouble.of(s.getMean());
    }
  }
}
