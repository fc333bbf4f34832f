package toothmark.findings;

import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import toothmark.ignition.Spark;
import toothmark.receiver.SyncLoss;
import toothmark.timing.SparkTiming;

/** How the advance changes from each spark of a coil to the coil's next one. */
final class SparkChanges {

  private static final double FROM_MEDIAN = 1.4826;

  private SparkChanges() {}

  /**
   * The changes, what was commanded taken off where it is known. Of a running engine: on the
   * starter no controller can foretell the next compression.
   *
   * @param sparks in time order
   * @return degrees, in no particular order
   */
  static double[] of(List<SparkTiming> sparks) {
    Map<Integer, Double> last = new HashMap<>();
    double[] changes = new double[sparks.size()];
    int n = 0;
    for (SparkTiming s : sparks) {
      if (s.advanceDegrees().isEmpty()
          || s.spark().turn() != Spark.Turn.FIRST
          || s.spark().crank().orElseThrow().rpm() < SyncLoss.CRANKING_BELOW_RPM
          || s.standing() == SparkTiming.Standing.LIMITED) {
        continue;
      }
      double now = s.gapDegrees().orElse(s.advanceDegrees().getAsDouble());
      Double before = last.put(s.coil(), now);
      if (before != null) {
        changes[n++] = now - before;
      }
    }
    return Arrays.copyOf(changes, n);
  }

  /** Standard deviation of one spark, from the middle size of the changes, which holds two. */
  static double scatter(double[] changes) {
    double middle = median(changes);
    double[] away = Arrays.stream(changes).map(c -> Math.abs(c - middle)).toArray();
    return FROM_MEDIAN * median(away) / Math.sqrt(2);
  }

  private static double median(double[] x) {
    double[] sorted = x.clone();
    Arrays.sort(sorted);
    return sorted.length == 0 ? 0 : sorted[sorted.length / 2];
  }
}
