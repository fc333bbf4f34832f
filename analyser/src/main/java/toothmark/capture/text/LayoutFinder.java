package toothmark.capture.text;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import toothmark.capture.ReadingOptions;
import toothmark.capture.UnreadableCaptureException;

/**
 * Finds the layout of a text file from its first lines and some from further on.
 *
 * <p>What is guessed here is verified on every row when the file is read.
 */
final class LayoutFinder {

  private static final int ROWS_IN_A_RUN = 4;

  private final TextInput input;
  private final ReadingOptions options;
  private final HeadLines head;
  private Evidence evidence;
  private Dialect dialect;
  private List<List<String>> rows;
  private int width;

  private LayoutFinder(TextInput input, ReadingOptions options) {
    this.input = input;
    this.options = options;
    this.head = new HeadLines(input, input.head(), input.source().headIsAll());
  }

  static Layout find(TextInput input, ReadingOptions options)
      throws IOException, UnreadableCaptureException {
    return new LayoutFinder(input, options).find();
  }

  private Layout find() throws IOException, UnreadableCaptureException {
    evidence = new Evidence(input, head);
    dialect = new DialectFinder(evidence).find(options);
    if (dialect == null) {
      throw noRows();
    }
    rows = rowsOfCommonWidth();
    List<ColumnKind> kinds = kinds();
    int firstRow = firstRow(kinds);
    if (firstRow < 0) {
      throw noRows();
    }
    Header header = Header.read(head, firstRow, dialect, width);
    Settings settings = settings(header, firstRow);
    List<ColumnPlan> plans = new ArrayList<>();
    for (int c = 0; c < width; c++) {
      plans.add(
          new ColumnPlan(header.names().get(c), header.units().get(c), kinds.get(c), Role.VALUE));
    }
    plans = new RoleFinder(plans, rows, dialect.decimalMark()).find(settings);
    return new Layout(dialect, plans, header, settings, firstRow + 1, head.start(firstRow));
  }

  private UnreadableCaptureException noRows() {
    return new UnreadableCaptureException(
        input.source().name()
            + ": no rows of numbers were found in the first "
            + head.size()
            + " lines; export the capture as delimited text with one row for each sample");
  }

  private List<List<String>> rowsOfCommonWidth() {
    List<List<String>> all = new ArrayList<>();
    for (String line : evidence.body()) {
      all.add(dialect.split(line));
    }
    width = DialectFinder.commonWidth(all, dialect.decimalMark());
    List<List<String>> common = new ArrayList<>();
    for (List<String> row : all) {
      if (row.size() == width) {
        common.add(row);
      }
    }
    return common;
  }

  private List<ColumnKind> kinds() {
    List<ColumnKind> kinds = new ArrayList<>();
    for (int c = 0; c < width; c++) {
      kinds.add(kind(c));
    }
    return kinds;
  }

  /** What most cells of a column are. */
  private ColumnKind kind(int column) {
    int[] votes = new int[ColumnKind.values().length];
    int hexLength = -1;
    boolean hexAlike = true;
    for (List<String> row : rows) {
      String text = row.get(column);
      Cell.Kind k = Cell.of(text, dialect.decimalMark()).kind();
      boolean hexWord = HexText.value(text) >= 0 && k != Cell.Kind.NUMBER;
      ColumnKind vote =
          switch (k) {
            case NUMBER, MISSING, ABOVE_RANGE, BELOW_RANGE -> ColumnKind.NUMBER;
            case CLOCK -> ColumnKind.CLOCK;
            case EMPTY -> ColumnKind.EMPTY;
            case TEXT ->
                hexWord
                    ? ColumnKind.HEX
                    : Words.level(text) >= 0 ? ColumnKind.WORD : ColumnKind.TEXT;
          };
      votes[vote.ordinal()]++;
      if (hexLength < 0) {
        hexLength = text.length();
      }
      hexAlike &= text.length() == hexLength && HexText.value(text) >= 0;
    }
    if (votes[ColumnKind.HEX.ordinal()] > 0 && hexAlike) {
      return ColumnKind.HEX;
    }
    return most(votes);
  }

  private static ColumnKind most(int[] votes) {
    ColumnKind best = ColumnKind.EMPTY;
    for (ColumnKind kind : ColumnKind.values()) {
      boolean more = votes[kind.ordinal()] > votes[best.ordinal()];
      if (kind != ColumnKind.EMPTY
          && (more || best == ColumnKind.EMPTY && votes[kind.ordinal()] > 0)) {
        best = kind;
      }
    }
    return best;
  }

  /** Index of the first line of the first unbroken run of rows; -1 when there is none. */
  private int firstRow(List<ColumnKind> kinds) {
    for (int i = 0; i < head.size(); i++) {
      if (isRow(head.line(i), kinds) && isRun(i + 1, kinds)) {
        return i;
      }
    }
    return -1;
  }

  private boolean isRun(int from, List<ColumnKind> kinds) {
    int seen = 1;
    for (int i = from; i < head.size() && seen < ROWS_IN_A_RUN; i++) {
      String line = head.line(i);
      if (line.isBlank()) {
        continue;
      }
      if (!isRow(line, kinds)) {
        return i == head.size() - 1;
      }
      seen++;
    }
    return true;
  }

  private boolean isRow(String line, List<ColumnKind> kinds) {
    List<String> cells = dialect.split(line);
    if (cells.size() != width) {
      return false;
    }
    int numbers = 0;
    for (int c = 0; c < width; c++) {
      String text = cells.get(c);
      Cell cell = Cell.of(text, dialect.decimalMark());
      boolean fits =
          switch (kinds.get(c)) {
            case NUMBER -> cell.isNumberLike();
            case CLOCK -> cell.kind() == Cell.Kind.CLOCK;
            case HEX -> HexText.value(text) >= 0;
            case WORD -> Words.level(text) >= 0;
            case EMPTY, TEXT -> true;
          };
      if (!fits) {
        return false;
      }
      boolean number = cell.kind() == Cell.Kind.NUMBER || cell.kind() == Cell.Kind.CLOCK;
      numbers +=
          number && kinds.get(c) != ColumnKind.TEXT || kinds.get(c) == ColumnKind.HEX ? 1 : 0;
    }
    return numbers > 0;
  }

  private Settings settings(Header header, int firstRow) {
    SettingsReader reader = new SettingsReader(dialect);
    for (int i = 0; i < firstRow; i++) {
      String line = head.line(i);
      if (!header.lines().contains(line)) {
        reader.read(line, i + 1);
      }
    }
    readSettingColumns(reader, header);
    return reader.settings();
  }

  /** Settings whose key is a header cell and whose value stands below it. */
  private void readSettingColumns(SettingsReader reader, Header header) {
    if (header.lines().size() == 2) {
      List<String> below = dialect.split(header.lines().get(0));
      List<String> above = dialect.split(header.lines().get(1));
      for (int c = 0; c < Math.min(above.size(), below.size()); c++) {
        if (Cell.of(below.get(c), dialect.decimalMark()).kind() == Cell.Kind.NUMBER) {
          reader.readColumn(above.get(c), below.get(c), header.firstLine() + 2);
        }
      }
    }
  }
}
