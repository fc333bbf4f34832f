package toothmark.accuracy.chain;

import de.siegmar.fastcsv.reader.NamedCsvRecord;
import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import java.util.TreeMap;
import java.util.stream.Collectors;

/**
 * Sparks of the result against sparks of the truth. The first three and the last do not count.
 *
 * @param sparks that came, of coils on record
 * @param found of those, within 0.2 ms
 * @param excess sparks of the result beyond all that came
 * @param advances sparks whose advance was measured
 * @param advanceSquares sum of squares of their errors, degrees²
 */
record SparkScore(long sparks, long found, long excess, long advances, double advanceSquares) {

  static final SparkScore NOTHING = new SparkScore(0, 0, 0, 0, 0);

  private static final double REACH_SECONDS = 2e-4;

  private record True(double seconds, double advanceDegrees) {}

  static SparkScore of(JsonTree truth, Path resultSparks) throws IOException {
    List<True> fired = fired(truth);
    if (fired.isEmpty()) {
      return NOTHING;
    }
    TreeMap<Double, NamedCsvRecord> rows = new TreeMap<>();
    for (NamedCsvRecord row : CsvRows.read(resultSparks)) {
      rows.put(CsvRows.number(row, "time_s"), row);
    }
    boolean swapped = faults(truth).contains("coils-swapped");
    SparkScore score = new SparkScore(0, 0, Math.max(0, rows.size() - fired.size()), 0, 0);
    for (True spark : fired.subList(Math.min(3, fired.size() - 1), fired.size() - 1)) {
      score = score.plus(one(spark, rows, swapped));
    }
    return score;
  }

  static List<String> faults(JsonTree truth) {
    return truth.list("faults").stream().map(f -> f.text().orElseThrow()).toList();
  }

  private static List<True> fired(JsonTree truth) {
    double shift = truth.number("time_shift").orElse(0.0);
    var recorded =
        truth.list("coils_recorded").stream()
            .map(c -> c.number().orElseThrow())
            .collect(Collectors.toSet());
    List<True> fired = new ArrayList<>();
    for (JsonTree spark : truth.list("sparks")) {
      if (!spark.isTrue("cut") && recorded.contains(spark.number("coil").orElseThrow())) {
        double time = spark.number("time").orElseThrow() + shift;
        fired.add(new True(time, spark.number("actual").orElseThrow()));
      }
    }
    return fired;
  }

  /** Two coils on each other's output fire half a turn off; which half is a matter of words. */
  private static SparkScore one(True spark, TreeMap<Double, NamedCsvRecord> rows, boolean swapped) {
    Double at = ToothScore.nearest(rows, spark.seconds);
    if (at == null || Math.abs(at - spark.seconds) > REACH_SECONDS) {
      return new SparkScore(1, 0, 0, 0, 0);
    }
    OptionalDouble advance = CsvRows.optional(rows.get(at), "advance_deg");
    if (advance.isEmpty()) {
      return new SparkScore(1, 1, 0, 0, 0);
    }
    double error = advance.getAsDouble() - spark.advanceDegrees;
    if (swapped) {
      error -= 180.0 * Math.rint(error / 180.0);
    }
    return new SparkScore(1, 1, 0, 1, error * error);
  }

  SparkScore plus(SparkScore o) {
    return new SparkScore(
        sparks + o.sparks,
        found + o.found,
        excess + o.excess,
        advances + o.advances,
        advanceSquares + o.advanceSquares);
  }

  double advanceRmsDegrees() {
    return advances == 0 ? Double.NaN : Math.sqrt(advanceSquares / advances);
  }
}
