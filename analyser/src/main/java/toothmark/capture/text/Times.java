package toothmark.capture.text;

import toothmark.capture.store.StoredColumn;

/**
 * Times of the rows of a table, in seconds, from a column of numbers.
 *
 * <p>Where a counter wrapped, or a time of day passed midnight, the full turns are added.
 */
final class Times {

  private final StoredColumn column;
  private final double scale;
  private final double stepsPerSecond;
  private final long count;
  private double origin;
  private final LongList turnRows = new LongList();
  private final DoubleList turns = new DoubleList();

  /**
   * Times from a column.
   *
   * @param scale seconds for one step of the column
   * @param count how many rows
   */
  Times(StoredColumn column, double scale, long count) {
    this.column = column;
    this.scale = scale;
    double rate = Math.rint(1 / scale);
    this.stepsPerSecond = Math.abs(1 / scale - rate) <= 1e-12 * rate ? rate : 0;
    this.count = count;
  }

  /**
   * The same times with full turns added wherever they go back by at least half a turn.
   *
   * @param turn what one turn is worth, in steps of the column
   */
  Times unrolled(double turn) {
    Times t = new Times(column, scale, count);
    double before = Double.NEGATIVE_INFINITY;
    double added = 0;
    double[] chunk = new double[8192];
    for (long first = 0; first < count; first += chunk.length) {
      int n = (int) Math.min(chunk.length, count - first);
      column.read(first, chunk, 0, n);
      for (int i = 0; i < n; i++) {
        if (chunk[i] < before - turn / 2) {
          added += turn;
          t.turnRows.add(first + i);
          t.turns.add(added);
        }
        before = chunk[i];
      }
    }
    return t;
  }

  /** The same times counted from the first row. */
  Times fromFirstRow() {
    origin = at(0);
    return this;
  }

  long count() {
    return count;
  }

  /** How often a turn was added. */
  int turns() {
    return turns.size();
  }

  /** Step in which the times were written, s; 0 when not known. */
  double writtenStep() {
    return column.writtenStep() * scale;
  }

  /** Row after the last of a straight run that starts at a row; the next row when none is known. */
  long lineEnd(long row) {
    return turns.size() > 0 ? row + 1 : Math.min(count, column.lineEnd(row));
  }

  double at(long row) {
    double[] one = new double[1];
    read(row, one, 1);
    return one[0];
  }

  void read(long first, double[] into, int n) {
    column.read(first, into, 0, n);
    if (turns.size() > 0) {
      addTurns(first, into, n);
    }
    if (stepsPerSecond > 1) {
      for (int i = 0; i < n; i++) {
        into[i] /= stepsPerSecond;
      }
    } else if (scale != 1) {
      for (int i = 0; i < n; i++) {
        into[i] *= scale;
      }
    }
    if (origin != 0) {
      for (int i = 0; i < n; i++) {
        into[i] -= origin;
      }
    }
  }

  private void addTurns(long first, double[] into, int n) {
    int k = 0;
    double sum = 0;
    while (k < turnRows.size() && turnRows.get(k) <= first) {
      sum = turns.get(k++);
    }
    for (int i = 0; i < n; i++) {
      while (k < turnRows.size() && turnRows.get(k) <= first + i) {
        sum = turns.get(k++);
      }
      into[i] = plus(into[i], sum);
    }
  }

  /** Adds whole written steps, so that the sum is the number that would have been written. */
  private double plus(double value, double turn) {
    double rate = Math.rint(1 / column.writtenStep());
    return rate >= 1 && rate < 1e15
        ? (Math.rint(value * rate) + Math.rint(turn * rate)) / rate
        : value + turn;
  }
}
