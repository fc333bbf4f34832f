package toothmark.capture.text;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import toothmark.capture.StatedLayout;
import toothmark.capture.UnreadableCaptureException;

/**
 * Finds the layout of a text file from its first lines and some from further on.
 *
 * <p>What is guessed here is verified on every row when the file is read.
 */
final class LayoutFinder {

  private static final int LINES_OF_A_RUN = 8;
  private static final double SHARE_HEX = 0.7;
  private static final int ROWS_TO_LOOK_ABOVE = 1000;
  private static final int SETTINGS_BESIDE_ROWS = 40;

  private final TextInput input;
  private final StatedLayout stated;
  private final HeadLines head;
  private Evidence evidence;
  private Dialect dialect;
  private List<List<String>> rows;
  private int width;

  private LayoutFinder(TextInput input, StatedLayout stated) {
    this.input = input;
    this.stated = stated;
    this.head = new HeadLines(input, input.head(), input.source().headIsAll());
  }

  static Layout find(TextInput input, StatedLayout stated)
      throws IOException, UnreadableCaptureException {
    return new LayoutFinder(input, stated).find();
  }

  private Layout find() throws IOException, UnreadableCaptureException {
    evidence = new Evidence(input, head);
    dialect = new DialectFinder(evidence).find(stated.text());
    if (dialect == null) {
      throw noRows();
    }
    rows = rowsOfCommonWidth();
    List<ColumnKind> kinds = kinds();
    int firstRow = firstRow(kinds);
    if (firstRow < 0) {
      throw noRows();
    }
    rows = rowsThatFit(kinds);
    kinds = kinds();
    Header header = Header.read(head, firstRow, dialect, width);
    boolean[] beside = settingColumns(firstRow);
    Settings settings = settings(header, firstRow, beside);
    List<ColumnPlan> plans = new ArrayList<>();
    for (int c = 0; c < width; c++) {
      ColumnKind kind = beside[c] ? ColumnKind.EMPTY : kinds.get(c);
      kind = kind == ColumnKind.EMPTY && !beside[c] ? kindAbove(c, firstRow) : kind;
      Unit unit = header.units().get(c).isNone() ? gluedUnit(c) : header.units().get(c);
      if (saysHex(header, c)) {
        kind = ColumnKind.HEX;
        unit = Unit.NONE;
      }
      plans.add(ColumnPlan.of(header.names().get(c), unit, kind, stated.column(c)));
    }
    checkColumns();
    plans = new RoleFinder(plans, rows, dialect.decimalMark()).find(settings);
    checkLanes(plans);
    return new Layout(dialect, plans, header, settings, firstRow + 1, head.start(firstRow));
  }

  private UnreadableCaptureException noRows() {
    return new UnreadableCaptureException(
        input.source().name()
            + ": no rows of numbers were found in the first "
            + (head.size() == 1 ? "line" : head.size() + " lines")
            + "; "
            + (stated.equals(StatedLayout.NOTHING)
                ? "export the capture as delimited text with one row for each sample"
                : "correct what [capture] in the job sheet states"));
  }

  private void checkColumns() throws UnreadableCaptureException {
    if (stated.columns().size() > width) {
      throw new UnreadableCaptureException(
          input.source().name()
              + ": "
              + Shown.count(width, "column")
              + ", but the job sheet states "
              + stated.columns().size()
              + " ([[capture.columns]]); correct their number or capture.delimiter");
    }
  }

  /** A list of events of several channels that are told apart by words cannot be taken apart. */
  private void checkLanes(List<ColumnPlan> plans) throws UnreadableCaptureException {
    boolean timed = plans.stream().anyMatch(p -> p.role() == Role.TIME);
    for (int c = 0; c < width && timed; c++) {
      String name = plans.get(c).name();
      List<String> words = Lanes.isNamed(name) ? words(c, plans.get(c).kind()) : List.of();
      if (words.size() > 1) {
        throw new UnreadableCaptureException(
            input.source().name()
                + ": column "
                + (c + 1)
                + " ("
                + name
                + ") names several channels in words, such as "
                + words.get(0)
                + " and "
                + words.get(1)
                + "; number them, or write a file for each");
      }
    }
  }

  /** The different words in a column of words; letters alone pass for digits of base sixteen. */
  private List<String> words(int column, ColumnKind kind) {
    List<String> words =
        rows.stream().map(r -> r.get(column)).filter(w -> !w.isEmpty()).distinct().toList();
    boolean letters =
        kind == ColumnKind.HEX
            && words.stream().allMatch(w -> w.chars().allMatch(Character::isLetter));
    return kind == ColumnKind.TEXT || letters ? words : List.of();
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

  private List<List<String>> rowsThatFit(List<ColumnKind> kinds) {
    List<List<String>> fitting = new ArrayList<>();
    for (List<String> row : rows) {
      if (isRow(row, kinds)) {
        fitting.add(row);
      }
    }
    return fitting;
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
    int length = rows.get(rows.size() - 1).get(column).length();
    int hexAlike = 0;
    for (List<String> row : rows) {
      String text = row.get(column);
      votes[vote(text).ordinal()]++;
      hexAlike += text.length() == length && HexText.value(text) >= 0 ? 1 : 0;
    }
    boolean hex = votes[ColumnKind.HEX.ordinal()] > 0 && hexAlike > SHARE_HEX * rows.size();
    if (hex) {
      return ColumnKind.HEX;
    }
    return isBinary(column) ? ColumnKind.BINARY : most(votes);
  }

  /** Whether all cells are as long and of noughts and ones, some with a nought in front. */
  private boolean isBinary(int column) {
    int length = rows.get(0).get(column).length();
    boolean noughts = false;
    for (List<String> row : rows) {
      String text = row.get(column);
      if (text.length() != length || HexText.binary(text) < 0) {
        return false;
      }
      noughts |= text.charAt(0) == '0';
    }
    return noughts && length > 1;
  }

  private ColumnKind vote(String text) {
    return switch (Cell.of(text, dialect.decimalMark()).kind()) {
      case NUMBER, MISSING, ABOVE_RANGE, BELOW_RANGE -> ColumnKind.NUMBER;
      case CLOCK -> ColumnKind.CLOCK;
      case EMPTY -> ColumnKind.EMPTY;
      case TEXT ->
          Words.level(text) >= 0
              ? ColumnKind.WORD
              : HexText.value(text) >= 0 ? ColumnKind.HEX : ColumnKind.TEXT;
    };
  }

  /** What a column holds that is empty in the rows looked at: its first filled cells tell. */
  private ColumnKind kindAbove(int column, int firstRow) {
    int[] votes = new int[ColumnKind.values().length];
    for (int i = firstRow; i < Math.min(head.size(), firstRow + ROWS_TO_LOOK_ABOVE); i++) {
      List<String> cells = dialect.split(head.line(i));
      if (column < cells.size()) {
        votes[vote(cells.get(column)).ordinal()]++;
      }
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
    for (int i = stated.text().headerLines().orElse(0); i < head.size(); i++) {
      if (isRow(head.line(i), kinds) && isRun(i, kinds)) {
        return i;
      }
    }
    return -1;
  }

  /** Whether rows follow: the next line is one, and so are at least half of the next few. */
  private boolean isRun(int first, List<ColumnKind> kinds) {
    int seen = 0;
    int fitting = 0;
    for (int i = first + 1; i < head.size() && seen < LINES_OF_A_RUN; i++) {
      String line = head.line(i);
      if (line.isBlank() || Header.isComment(line)) {
        continue;
      }
      boolean row = isRow(line, kinds);
      if (!row && (Words.announcesSegment(line) || stoodBefore(line, first))) {
        continue;
      }
      if (!row && seen == 0) {
        return i == head.size() - 1;
      }
      seen++;
      fitting += row ? 1 : 0;
    }
    return 2 * fitting >= seen;
  }

  /** Whether a line, such as a repeated header, stood above a row. */
  private boolean stoodBefore(String line, int row) {
    for (int i = Math.max(0, row - LINES_OF_A_RUN); i < row; i++) {
      if (head.line(i).equals(line)) {
        return true;
      }
    }
    return false;
  }

  private boolean isRow(String line, List<ColumnKind> kinds) {
    return isRow(dialect.split(line), kinds);
  }

  private boolean isRow(List<String> cells, List<ColumnKind> kinds) {
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
            case BINARY -> HexText.binary(text) >= 0;
            case WORD -> Words.level(text) >= 0;
            case EMPTY, TEXT -> true;
          };
      if (!fits) {
        return false;
      }
      boolean number = cell.kind() == Cell.Kind.NUMBER || cell.kind() == Cell.Kind.CLOCK;
      numbers += number && kinds.get(c) != ColumnKind.TEXT || kinds.get(c).isBus() ? 1 : 0;
    }
    return numbers > 0;
  }

  /** The unit that is written behind every number of a column, without its prefix. */
  private Unit gluedUnit(int column) {
    for (List<String> row : rows) {
      Unit unit = Cell.of(row.get(column), dialect.decimalMark()).unit();
      if (!unit.isNone()) {
        return new Unit(unit.symbol(), 0);
      }
    }
    return Unit.NONE;
  }

  /** Whether words without a letter in these rows are called hexadecimal above. */
  private boolean saysHex(Header header, int column) {
    String name = Words.normal(header.names().get(column));
    boolean says = header.units().get(column).symbol().equalsIgnoreCase("hex");
    says |= (" " + name + " ").contains(" hex ");
    for (List<String> row : rows) {
      says &= HexText.value(row.get(column)) >= 0;
    }
    return says;
  }

  /** Columns that hold settings beside the first rows and nothing in most others. */
  private boolean[] settingColumns(int firstRow) {
    boolean[] beside = new boolean[width];
    for (int i = firstRow; i < Math.min(head.size(), firstRow + SETTINGS_BESIDE_ROWS); i++) {
      List<String> cells = dialect.split(head.line(i));
      for (int c = 0; c + 1 < Math.min(width, cells.size()); c++) {
        if (SettingsReader.isKey(cells.get(c)) && isMostlyEmpty(c)) {
          beside[c] = true;
          beside[c + 1] = isMostlyEmpty(c + 1);
          beside[Math.min(c + 2, width - 1)] |= isMostlyEmpty(Math.min(c + 2, width - 1));
        }
      }
    }
    return beside;
  }

  private boolean isMostlyEmpty(int column) {
    int empty = 0;
    for (List<String> row : rows) {
      empty += row.get(column).isEmpty() ? 1 : 0;
    }
    return 2 * empty > rows.size();
  }

  private Settings settings(Header header, int firstRow, boolean[] beside) {
    SettingsReader reader = new SettingsReader(dialect, header.names());
    for (int i = 0; i < firstRow; i++) {
      String line = head.line(i);
      if (!header.lines().contains(line)) {
        reader.read(line, i + 1);
        continue;
      }
      List<String> cells = dialect.split(line);
      for (int c = width; c < cells.size(); c++) {
        reader.read(cells.get(c), i + 1);
      }
    }
    for (String name : header.names()) {
      reader.readTick(name, "the name of the column");
    }
    readSettingColumns(reader, header);
    for (int i = firstRow; i < Math.min(head.size(), firstRow + SETTINGS_BESIDE_ROWS); i++) {
      readBeside(reader, i, beside);
    }
    return reader.settings();
  }

  private void readBeside(SettingsReader reader, int line, boolean[] beside) {
    List<String> cells = dialect.split(head.line(line));
    StringBuilder text = new StringBuilder();
    for (int c = 0; c < Math.min(width, cells.size()); c++) {
      if (beside[c]) {
        text.append(cells.get(c)).append(dialect.delimiter());
      }
    }
    if (text.length() > 0) {
      reader.read(text.toString(), line + 1);
    }
  }

  /** Settings whose key is a header cell and whose value stands below it. */
  private void readSettingColumns(SettingsReader reader, Header header) {
    if (header.lines().size() == 2) {
      List<String> below = dialect.split(header.lines().get(0));
      List<String> above = dialect.split(header.lines().get(1));
      for (int c = 0; c < Math.min(above.size(), below.size()); c++) {
        if (Cell.of(below.get(c), dialect.decimalMark()).kind() == Cell.Kind.NUMBER) {
          reader.readColumn(above.get(c), below.get(c), "", "line " + (header.firstLine() + 2));
        }
      }
    }
  }
}
