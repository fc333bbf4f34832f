package toothmark.capture.text;

import toothmark.capture.store.StoredColumn;

/** Unrolls counters that wrapped and times of day that passed midnight. */
final class Wraps {

  private static final double DAY_SECONDS = 86_400;

  /** A counter that wraps has run through most of its range. */
  private static final double SHARE_OF_RANGE = 0.9;

  private final Table table;
  private final int column;
  private final Notes notes;

  Wraps(Table table, int column, Notes notes) {
    this.table = table;
    this.column = column;
    this.notes = notes;
  }

  /**
   * The times with full turns added where they go back.
   *
   * @param segments how many the file announces; with several, times may start afresh
   */
  Times unrolled(Times times, int segments) {
    double turn = turn();
    if (segments > 1 || turn == 0) {
      return times;
    }
    Times unrolled = times.unrolled(turn);
    if (unrolled.turns() > 0) {
      notes.doubt(
          "the times start again "
              + Shown.count(unrolled.turns(), "time")
              + (turn == DAY_SECONDS ? " at midnight" : " as a counter does when it is full")
              + "; they were joined");
    }
    return unrolled;
  }

  /** What a full turn is worth in steps of the column; 0 when the column is no counter. */
  private double turn() {
    ColumnPlan plan = table.layout().columns().get(column);
    if (plan.kind() == ColumnKind.CLOCK) {
      return DAY_SECONDS;
    }
    StoredColumn numbers = table.column(column);
    double unit = Math.pow(10, plan.shift());
    boolean whole = numbers.writtenStep() >= unit * (1 - 1e-9) && numbers.lowest() >= 0;
    for (int bits = 16; whole && bits <= 32; bits += 8) {
      double range = Math.scalb(1.0, bits);
      double highest = Math.rint(numbers.highest() / unit);
      if (highest < range && highest > SHARE_OF_RANGE * range) {
        return plan.shift() == 0 ? range : range / Math.rint(1 / unit);
      }
    }
    return 0;
  }
}
