package toothmark.capture.text;

import java.util.Arrays;
import toothmark.capture.store.StoredColumn;

/**
 * Finds where segments start: at marks between the rows, and where a column of segments changes.
 */
final class SegmentColumn {

  private final Table table;

  SegmentColumn(Table table) {
    this.table = table;
  }

  /** First rows of the segments; the first is 0. */
  long[] rows() {
    long[] marked = table.segmentRows();
    int column = table.layout().first(Role.SEGMENT);
    if (column < 0) {
      return marked;
    }
    LongList rows = new LongList();
    StoredColumn numbers = table.column(column);
    double before = numbers.at(0);
    double[] chunk = new double[8192];
    for (long first = 0; first < numbers.count(); first += chunk.length) {
      int n = (int) Math.min(chunk.length, numbers.count() - first);
      numbers.read(first, chunk, 0, n);
      for (int i = 0; i < n; i++) {
        if (chunk[i] != before) {
          rows.add(first + i);
          before = chunk[i];
        }
      }
    }
    return merged(marked, rows.toArray());
  }

  private static long[] merged(long[] a, long[] b) {
    long[] all = Arrays.copyOf(a, a.length + b.length);
    System.arraycopy(b, 0, all, a.length, b.length);
    Arrays.sort(all);
    int n = 0;
    for (long row : all) {
      if (n == 0 || row != all[n - 1]) {
        all[n++] = row;
      }
    }
    return Arrays.copyOf(all, n);
  }
}
