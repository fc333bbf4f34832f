package toothmark.capture.text;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import toothmark.capture.ReadingOptions;
import toothmark.capture.UnreadableCaptureException;
import toothmark.capture.UnsupportedCaptureException;
import toothmark.capture.source.ByteSource;
import toothmark.capture.store.SampleStore;
import toothmark.capture.store.StoredColumn;

/**
 * Columns of numbers from a text file such as a log: delimiter, decimal mark, encoding, names and
 * units are found as for a capture, but nothing is made of the numbers.
 *
 * <p>Seconds, volts, amperes, hertz and ohms have their prefixes applied; any other unit is kept as
 * written. Columns of text have no values.
 */
public final class TextTable {

  private final List<ColumnPlan> plans;
  private final double[][] values;
  private final boolean[][] present;
  private final long[] lines;

  private TextTable(Table table) {
    plans = table.layout().columns();
    int rows = Math.toIntExact(table.rows());
    values = new double[plans.size()][rows];
    present = new boolean[plans.size()][rows];
    lines = new long[rows];
    for (int c = 0; c < plans.size(); c++) {
      StoredColumn column = table.column(c);
      if (column != null) {
        column.read(0, values[c], 0, rows);
        for (int r = 0; r < rows; r++) {
          present[c][r] = column.isNumber(r);
        }
      }
    }
    for (int r = 0; r < rows; r++) {
      lines[r] = table.line(r);
    }
  }

  /**
   * Reads a table into memory.
   *
   * @param file delimited text
   * @return the table
   * @throws UnreadableCaptureException if no rows of numbers are found, or a cell in them makes no
   *     sense; the message names file, line, column and cell
   * @throws UnsupportedCaptureException if the file is no text
   * @throws IOException if the system cannot read the file
   */
  public static TextTable read(Path file)
      throws UnreadableCaptureException, UnsupportedCaptureException, IOException {
    ReadingOptions options = ReadingOptions.withDefaults();
    try (ByteSource source = ByteSource.open(file, options);
        SampleStore store = new SampleStore(Long.MAX_VALUE)) {
      TextInput input = new TextInput(source);
      input.checkText();
      Layout layout = withAllColumns(LayoutFinder.find(input, options.layout()));
      Table table = new Table(source.name(), layout, store);
      new BlockPipeline(input, layout, BlockPipeline.BLOCK_BYTES, table).run(1);
      table.complete();
      return new TextTable(table);
    }
  }

  private static Layout withAllColumns(Layout found) {
    List<ColumnPlan> plans = new ArrayList<>();
    for (ColumnPlan plan : found.columns()) {
      plans.add(plan.with(Role.VALUE));
    }
    return new Layout(
        found.dialect(),
        plans,
        found.header(),
        found.settings(),
        found.firstRow(),
        found.firstByte());
  }

  /**
   * How many columns there are.
   *
   * @return at least 1
   */
  public int columns() {
    return plans.size();
  }

  /**
   * How many rows there are.
   *
   * @return at least 1
   */
  public int rows() {
    return lines.length;
  }

  /**
   * Name of a column.
   *
   * @param column from 0
   * @return as written, without the unit; empty when there is none
   */
  public String name(int column) {
    return plans.get(column).name();
  }

  /**
   * Unit of the values of a column.
   *
   * @param column from 0
   * @return such as {@code s} or {@code rpm}; empty when none is stated
   */
  public String unit(int column) {
    return plans.get(column).unit().symbol();
  }

  /**
   * A value.
   *
   * @param row from 0
   * @param column from 0
   * @return empty where the cell holds no number
   */
  public OptionalDouble value(int row, int column) {
    return present[column][row] ? OptionalDouble.of(values[column][row]) : OptionalDouble.empty();
  }

  /**
   * Where a row stands in the file, for messages.
   *
   * @param row from 0
   * @return line from 1
   */
  public long line(int row) {
    return lines[row];
  }
}
