package toothmark.report;

import java.util.ArrayList;
import java.util.List;
import toothmark.timing.SparkTiming;

/**
 * Sparks in a row of which the comparison with the commanded advance made nothing.
 *
 * @param fromRow the first of them in the table of sparks, from 1
 * @param toRow the last of them
 * @param why "limited" or "rejected"
 */
record LeftOut(int fromRow, int toRow, String why) {

  static List<LeftOut> of(List<SparkTiming> sparks) {
    List<LeftOut> runs = new ArrayList<>();
    for (int row = 1; row <= sparks.size(); row++) {
      SparkTiming.Standing standing = sparks.get(row - 1).standing();
      if (standing == SparkTiming.Standing.LIMITED || standing == SparkTiming.Standing.REJECTED) {
        add(runs, row, Wording.lower(standing));
      }
    }
    return runs;
  }

  private static void add(List<LeftOut> runs, int row, String why) {
    LeftOut last = runs.isEmpty() ? null : runs.get(runs.size() - 1);
    if (last != null && last.toRow == row - 1 && last.why.equals(why)) {
      runs.set(runs.size() - 1, new LeftOut(last.fromRow, row, why));
    } else {
      runs.add(new LeftOut(row, row, why));
    }
  }
}
