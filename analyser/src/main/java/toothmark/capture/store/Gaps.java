package toothmark.capture.store;

import java.util.Arrays;

/** Runs of cells of one column that hold no number, in order. */
final class Gaps {

  private long[] starts = new long[4];
  private long[] ends = new long[4];
  private byte[] marks = new byte[4];
  private int size;

  void add(long start, long end, byte mark) {
    if (size > 0 && ends[size - 1] == start && marks[size - 1] == mark) {
      ends[size - 1] = end;
      return;
    }
    if (size == starts.length) {
      starts = Arrays.copyOf(starts, 2 * size);
      ends = Arrays.copyOf(ends, 2 * size);
      marks = Arrays.copyOf(marks, 2 * size);
    }
    starts[size] = start;
    ends[size] = end;
    marks[size++] = mark;
  }

  int size() {
    return size;
  }

  boolean holds(long index) {
    int k = Arrays.binarySearch(starts, 0, size, index);
    k = k < 0 ? -k - 2 : k;
    return k >= 0 && index < ends[k];
  }

  long cells(byte mark) {
    long sum = 0;
    for (int i = 0; i < size; i++) {
      sum += marks[i] == mark ? ends[i] - starts[i] : 0;
    }
    return sum;
  }

  long missingAtEnd(long count) {
    boolean open = size > 0 && ends[size - 1] == count && marks[size - 1] == NumberBlock.MISSING;
    return open ? count - starts[size - 1] : 0;
  }

  /** Puts something sensible into the marked cells of a run that was read. */
  void mend(StoredColumn column, Run run) {
    if (size == 0) {
      return;
    }
    int k = Arrays.binarySearch(starts, 0, size, run.first());
    k = k < 0 ? Math.max(0, -k - 2) : k;
    for (; k < size && starts[k] < run.first() + run.length(); k++) {
      long from = Math.max(starts[k], run.first());
      long to = Math.min(ends[k], run.first() + run.length());
      if (from < to) {
        int offset = run.offset() + (int) (from - run.first());
        fill(column, k, new Run(run.into(), offset, from, (int) (to - from)));
      }
    }
  }

  private void fill(StoredColumn column, int k, Run hole) {
    double[] into = hole.into();
    int offset = hole.offset();
    if (marks[k] != NumberBlock.MISSING) {
      Arrays.fill(into, offset, offset + hole.length(), extreme(column, marks[k]));
      return;
    }
    double before = value(column, k, -1);
    double after = value(column, k, 1);
    if (Double.isNaN(before) || Double.isNaN(after)) {
      Arrays.fill(into, offset, offset + hole.length(), Double.isNaN(before) ? after : before);
      return;
    }
    double slope = (after - before) / (ends[k] - starts[k] + 1);
    for (int i = 0; i < hole.length(); i++) {
      into[offset + i] = before + slope * (hole.first() + i - starts[k] + 1);
    }
  }

  /** The cell before or after a run of missing ones; NaN beyond the column. */
  private double value(StoredColumn column, int k, int side) {
    long index = side < 0 ? starts[k] - 1 : ends[k];
    if (index < 0 || index >= column.count()) {
      return Double.NaN;
    }
    int neighbour = k + side;
    boolean marked =
        neighbour >= 0 && neighbour < size && starts[neighbour] <= index && index < ends[neighbour];
    if (marked) {
      return extreme(column, marks[neighbour]);
    }
    double[] one = new double[1];
    column.raw(new Run(one, 0, index, 1));
    return one[0];
  }

  private static double extreme(StoredColumn column, byte mark) {
    return mark == NumberBlock.ABOVE_RANGE ? column.highest() : column.lowest();
  }
}
