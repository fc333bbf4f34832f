package toothmark.capture.text;

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
  private final List<Setting> settings = new ArrayList<>();
  private final List<StatedColumn> said = new ArrayList<>();
  private final List<Origin> origins = new ArrayList<>();
  private final List<StoredColumn> columns = new ArrayList<>();

  /** Where a column is from. */
  public enum Origin {
    /** A variable of its own, whose name may say what it is. */
    VARIABLE,
    /** A matrix, whose name says nothing of one column. */
    MATRIX
  }

  private record Setting(String name, String value, String owner) {}

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
   * @param origin where it is from
   */
  public void add(StatedColumn about, StoredColumn numbers, Origin origin) {
    said.add(about);
    origins.add(origin);
    columns.add(numbers);
  }

  /**
   * Adds what may be a setting, such as the sampling rate.
   *
   * @param name what the file calls it; passed over when it is not known as a setting
   * @param value a number, with its unit or without
   * @param owner name of the channel whose it is; empty text when it is of all
   */
  public void setting(String name, String value, String owner) {
    settings.add(new Setting(name, value, owner));
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
    Settings found = settings(plans);
    plans = withRoles(plans, found, options.layout());
    notes.columns(plans);
    notes.stated(options.layout());
    Table table = new Table(file, Layout.ofNumbers(plans, found), columns);
    return new Interpreter(table, options, store, notes).capture(format);
  }

  private Settings settings(List<ColumnPlan> plans) {
    List<String> names = plans.stream().map(ColumnPlan::name).toList();
    SettingsReader reader = new SettingsReader(new Dialect(Dialect.ONE_COLUMN, '.'), names);
    for (Setting s : settings) {
      reader.readColumn(s.name(), s.value(), s.owner(), "'" + s.name() + "'");
    }
    return reader.settings();
  }

  private List<ColumnPlan> withRoles(List<ColumnPlan> plans, Settings found, StatedLayout stated) {
    List<ColumnPlan> bare = new ArrayList<>();
    for (int c = 0; c < plans.size(); c++) {
      ColumnPlan p = plans.get(c);
      boolean nameless = origins.get(c) == Origin.MATRIX && stated.column(c).name().isEmpty();
      String name = nameless ? "" : p.name();
      bare.add(new ColumnPlan(name, p.unit(), p.kind(), p.role(), p.stated()));
    }
    List<ColumnPlan> roles = new RoleFinder(bare, rows(), '.').find(found);
    List<ColumnPlan> named = new ArrayList<>();
    for (int c = 0; c < plans.size(); c++) {
      named.add(plans.get(c).with(roles.get(c).role()));
    }
    return named;
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
    List<String> names = said.stream().map(s -> s.name().orElse("")).toList();
    boolean underscores = Header.allEndInUnit(names);
    List<ColumnPlan> plans = new ArrayList<>();
    for (int c = 0; c < columns.size(); c++) {
      StatedColumn own = said.get(c);
      NameWithUnit name = NameWithUnit.of(names.get(c), underscores);
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

  /** Rows from the start, which follow one another, and some from all over. */
  private List<List<String>> rows() {
    List<List<String>> rows = new ArrayList<>();
    long all = columns.get(0).count();
    long first = Math.min(ROWS_TO_LOOK_AT, all);
    for (long r = 0; r < first; r++) {
      rows.add(row(r));
    }
    long step = Math.max(1, (all - first) / ROWS_TO_LOOK_AT);
    for (long r = first + step - 1; r < all; r += step) {
      rows.add(row(r));
    }
    return rows;
  }

  /** A row as a text would show it. */
  private List<String> row(long r) {
    List<String> row = new ArrayList<>();
    for (StoredColumn column : columns) {
      row.add(column.isNumber(r) ? Double.toString(column.at(r)) : "");
    }
    return row;
  }
}
