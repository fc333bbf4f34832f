package toothmark.capture.text;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import toothmark.capture.Capture;
import toothmark.capture.ReadingOptions;
import toothmark.capture.StatedColumn;
import toothmark.capture.StatedLayout;
import toothmark.capture.UnreadableCaptureException;
import toothmark.capture.store.SampleStore;
import toothmark.capture.store.StoredColumn;

/**
 * Makes a capture of columns of numbers that did not come from a text; names, units and times are
 * understood as those of a text are.
 */
public final class ColumnCapture {

  private static final int ROWS_TO_LOOK_AT = 40;

  private final String file;
  private final Notes notes = new Notes();
  private final SettingsReader settings = new SettingsReader(new Dialect(Dialect.ONE_COLUMN, '.'));
  private final List<StatedColumn> said = new ArrayList<>();
  private final List<StoredColumn> columns = new ArrayList<>();

  /**
   * Starts with nothing.
   *
   * @param file name of the file, for messages
   */
  public ColumnCapture(String file) {
    this.file = file;
  }

  /**
   * Adds a column.
   *
   * @param about what the file says of it
   * @param numbers as many as the other columns have
   */
  public void add(StatedColumn about, StoredColumn numbers) {
    said.add(about);
    columns.add(numbers);
  }

  /**
   * Adds a number that may be a setting, such as the sampling rate.
   *
   * @param name what the file calls it; passed over when it is not known as a setting
   * @param value its value
   */
  public void setting(String name, double value) {
    if (Double.isFinite(value)) {
      settings.readColumn(name, new BigDecimal(value).toPlainString(), "'" + name + "'");
    }
  }

  /**
   * Adds what was mended or left out.
   *
   * @param sentence to show
   */
  public void doubt(String sentence) {
    notes.doubt(sentence);
  }

  /**
   * Makes the capture.
   *
   * @param format of the file, to show
   * @param options what the user states
   * @param store that holds the columns; closed with the capture
   * @return the capture; close it after use
   * @throws UnreadableCaptureException if the columns cannot be understood
   * @throws java.io.IOException if the system cannot write the temporary file
   */
  public Capture read(String format, ReadingOptions options, SampleStore store)
      throws UnreadableCaptureException, java.io.IOException {
    List<ColumnPlan> plans = plans(options.layout());
    Settings found = settings.settings();
    plans = new RoleFinder(plans, rows(), '.').find(found);
    notes.columns(plans);
    notes.stated(options.layout());
    Table table = new Table(file, Layout.ofNumbers(plans, found), columns);
    return new Interpreter(table, options, store, notes).capture(format);
  }

  private List<ColumnPlan> plans(StatedLayout stated) throws UnreadableCaptureException {
    if (stated.columns().size() > columns.size()) {
      throw new UnreadableCaptureException(
          String.format(
              Locale.ROOT,
              "%s: %s, but the job sheet states %d ([[capture.columns]]); correct their number",
              file,
              Shown.count(columns.size(), "column"),
              stated.columns().size()));
    }
    List<ColumnPlan> plans = new ArrayList<>();
    for (int c = 0; c < columns.size(); c++) {
      StatedColumn own = said.get(c);
      NameWithUnit name = NameWithUnit.of(own.name().orElse(""), false);
      StatedColumn both = stated.column(c).or(own);
      Unit unit = both.unit().map(Unit::stated).orElse(name.unit());
      if (unit.power() != 0 && !both.isScaled()) {
        both = both.scaled(1, 0); // the numbers are stored as they stand in the file
      }
      String shown = stated.column(c).name().orElse(name.name());
      plans.add(new ColumnPlan(shown, unit, ColumnKind.NUMBER, Role.VALUE, both));
    }
    return plans;
  }

  /** Some rows, those at the start, as a text would show them. */
  private List<List<String>> rows() {
    List<List<String>> rows = new ArrayList<>();
    int count = (int) Math.min(ROWS_TO_LOOK_AT, columns.get(0).count());
    for (int r = 0; r < count; r++) {
      List<String> row = new ArrayList<>();
      for (StoredColumn column : columns) {
        row.add(column.isNumber(r) ? Double.toString(column.at(r)) : "");
      }
      rows.add(row);
    }
    return rows;
  }
}
