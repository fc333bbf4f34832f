package toothmark.capture.array;

import java.io.IOException;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import toothmark.capture.Capture;
import toothmark.capture.ReadingOptions;
import toothmark.capture.StatedColumn;
import toothmark.capture.UnreadableCaptureException;
import toothmark.capture.store.ColumnWriter;
import toothmark.capture.store.SampleStore;
import toothmark.capture.store.StoredColumn;
import toothmark.capture.text.ColumnCapture;
import toothmark.capture.text.ColumnCapture.Origin;

/**
 * The arrays of a file as columns. The longest ones are what was recorded; single numbers may be
 * settings.
 */
final class Variables implements AutoCloseable {

  private static final int MOST_COLUMNS = 1024;

  private record Variable(StatedColumn about, StoredColumn numbers, Origin origin) {}

  private final String file;
  private final SampleStore store = new SampleStore(SampleStore.DEFAULT_BUDGET_BYTES);
  private final ColumnCapture capture;
  private final List<Variable> variables = new ArrayList<>();
  private final List<String> leftOut = new ArrayList<>();

  Variables(String file) {
    this.file = file;
    this.capture = new ColumnCapture(file);
  }

  /**
   * Starts the columns of an array.
   *
   * @param about what the file says of it
   * @param columns how many it has
   * @return a writer for each; each must be finished
   */
  List<ColumnWriter> start(StatedColumn about, int columns) {
    List<ColumnWriter> writers = new ArrayList<>();
    for (int c = 0; c < columns; c++) {
      StoredColumn column = store.newColumn();
      String number = columns == 1 ? "" : " " + (c + 1);
      StatedColumn own = StatedColumn.named(about.name().map(n -> n + number).orElse(""), "");
      Origin origin = columns == 1 ? Origin.VARIABLE : Origin.MATRIX;
      variables.add(new Variable(own.or(about), column, origin));
      writers.add(new ColumnWriter(column));
    }
    return writers;
  }

  /** Whether an array may have so many columns. */
  boolean mayHave(StatedColumn about, long columns) {
    if (columns <= MOST_COLUMNS) {
      return true;
    }
    leftOut(about.name().orElse(""), columns + " columns are more than a recorder has");
    return false;
  }

  /** A number that describes the capture, or one channel where an owner is named. */
  void setting(String name, double value, String owner) {
    if (Double.isFinite(value)) {
      setting(name, BigDecimal.valueOf(value).stripTrailingZeros().toPlainString(), owner);
    }
  }

  /** The same as it is written, perhaps with a unit. */
  void setting(String name, String value, String owner) {
    capture.setting(name, value, owner);
  }

  /** Says that something of the file is not used. */
  void leftOut(String name, String reason) {
    String sentence =
        (name.isEmpty() ? "the array" : "'" + name + "'") + " was left out: " + reason;
    leftOut.add(sentence);
    capture.doubt(sentence);
  }

  /** What was mended. */
  void doubt(String sentence) {
    capture.doubt(sentence);
  }

  /** Makes the capture of the longest columns. */
  Capture capture(String format, ReadingOptions options)
      throws UnreadableCaptureException, IOException {
    long rows = 0;
    for (Variable v : variables) {
      rows = Math.max(rows, v.numbers.count());
    }
    if (rows < 2) {
      throw new UnreadableCaptureException(
          file
              + ": no array of two or more numbers was found in this "
              + format
              + (leftOut.isEmpty() ? "" : " (" + leftOut.get(0) + ")")
              + "; export the capture anew");
    }
    for (Variable v : variables) {
      if (v.numbers.count() == rows) {
        capture.add(v.about, v.numbers, v.origin);
      } else if (v.numbers.count() == 1) {
        setting(v.about.name().orElse(""), v.numbers.at(0), "");
      } else {
        leftOut(
            v.about.name().orElse(""),
            v.numbers.count() + " numbers, not " + rows + " as the longest");
      }
    }
    try {
      return capture.read(format, options, store);
    } catch (UnreadableCaptureException e) {
      throw leftOut.isEmpty()
          ? e
          : new UnreadableCaptureException(
              e.getMessage() + " (" + String.join("; ", leftOut) + ")", e);
    }
  }

  @Override
  public void close() throws IOException {
    store.close();
  }
}
