package toothmark.capture.text;

import java.util.ArrayList;
import java.util.List;
import java.util.function.Predicate;

/**
 * How a text file is laid out.
 *
 * @param dialect how rows are divided and numbers written
 * @param columns one plan for each column
 * @param header what stands above the rows
 * @param settings what the preamble states
 * @param firstRow line of the first row of numbers, from 1
 * @param firstByte where that line starts, in the bytes that {@link TextInput} gives
 */
record Layout(
    Dialect dialect,
    List<ColumnPlan> columns,
    Header header,
    Settings settings,
    int firstRow,
    int firstByte) {

  /** Columns that did not come from a text: nothing stands above their rows. */
  static Layout ofNumbers(List<ColumnPlan> columns, Settings settings) {
    Dialect plain = new Dialect(Dialect.ONE_COLUMN, '.');
    return new Layout(plain, columns, Header.NONE, settings, 1, 0);
  }

  /** The only column of a role, the first of several, or -1. */
  int first(Role role) {
    for (int c = 0; c < columns.size(); c++) {
      if (columns.get(c).role() == role) {
        return c;
      }
    }
    return -1;
  }

  /** The columns that say how long the high and the low level of each pulse last, if there are. */
  List<Integer> pair() {
    return pair(columns, plan -> plan.role() == Role.PERIOD);
  }

  /** The two of some columns that speak of a high and a low level; none where there are not two. */
  static List<Integer> pair(List<ColumnPlan> columns, Predicate<ColumnPlan> some) {
    List<Integer> found = new ArrayList<>();
    for (int c = 0; c < columns.size(); c++) {
      if (some.test(columns.get(c)) && Words.levelOf(columns.get(c).name()) >= 0) {
        found.add(c);
      }
    }
    long levels = found.stream().map(c -> Words.levelOf(columns.get(c).name())).distinct().count();
    return found.size() == 2 && levels == 2 ? found : List.of();
  }

  int count(Role role) {
    int n = 0;
    for (ColumnPlan column : columns) {
      n += column.role() == role ? 1 : 0;
    }
    return n;
  }
}
