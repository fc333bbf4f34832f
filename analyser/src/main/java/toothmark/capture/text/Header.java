package toothmark.capture.text;

import java.util.ArrayList;
import java.util.List;
import java.util.regex.Pattern;

/**
 * Names and units above the rows of numbers.
 *
 * @param names one for each column; empty where there is none
 * @param units one for each column
 * @param lines the header lines as they stand, lowest first; empty when there is no header
 * @param firstLine index of the topmost header line; of the first row when there is no header
 */
record Header(List<String> names, List<Unit> units, List<String> lines, int firstLine) {

  static final Header NONE = new Header(List.of(), List.of(), List.of(), 0);

  private static final int LINES_TO_LOOK_AT = 6;

  /** What a name above a lone column does not hold: a setting's mark, or a number behind one. */
  private static final Pattern SETTING = Pattern.compile("[=:]|[,;\\t] *[-+.]?\\d");

  /**
   * Reads the header.
   *
   * @param head lines of the file
   * @param firstRow index of the first row of numbers
   * @param dialect how lines are divided
   * @param width number of columns
   */
  static Header read(HeadLines head, int firstRow, Dialect dialect, int width) {
    List<String> names = null;
    List<String> units = null;
    List<String> lines = new ArrayList<>();
    int top = firstRow;
    for (int i = firstRow - 1; i >= Math.max(0, firstRow - LINES_TO_LOOK_AT); i--) {
      String line = head.line(i);
      boolean setting = (width == 1 || isComment(line)) && SettingsReader.states(line, dialect);
      if (line.isBlank() || setting) {
        continue;
      }
      List<String> cells = cells(line, dialect, width);
      if (cells == null) {
        break;
      }
      boolean unitRow =
          isUnitRow(cells, i > 0 ? dialect.split(head.line(i - 1)) : List.of(), dialect);
      if (unitRow && units == null) {
        units = cells;
      } else if (!unitRow && names == null) {
        names = cells;
      } else {
        break;
      }
      lines.add(line);
      top = i;
    }
    return of(names, units, lines, top, width);
  }

  private static Header of(
      List<String> names, List<String> units, List<String> lines, int top, int width) {
    List<String> bare = new ArrayList<>();
    List<Unit> found = new ArrayList<>();
    boolean underscores = names != null && allEndInUnit(names);
    for (int c = 0; c < width; c++) {
      String cell = names == null ? "" : names.get(c);
      NameWithUnit n = NameWithUnit.of(cell, underscores);
      Unit below = units == null ? null : unitBelow(units.get(c));
      bare.add(n.name());
      found.add(below == null ? n.unit() : below);
    }
    return new Header(bare, found, List.copyOf(lines), top);
  }

  private static Unit unitBelow(String cell) {
    Unit bracketed = NameWithUnit.of(cell, false).unit();
    return bracketed.isNone() ? Unit.parse(cell) : bracketed;
  }

  /** Whether every name ends in an underscore and a unit. */
  static boolean allEndInUnit(List<String> names) {
    int with = 0;
    for (String name : names) {
      int cut = name.lastIndexOf('_');
      with += cut > 0 && Unit.parse(name.substring(cut + 1)) != null ? 1 : 0;
    }
    return with == names.size() && with > 1;
  }

  /** The cells of a line that may be a header; null when it can't be one. */
  private static List<String> cells(String line, Dialect dialect, int width) {
    List<String> cells = dialect.split(line);
    boolean commented = isComment(line) && line.stripLeading().charAt(0) != dialect.delimiter();
    if (commented || cells.size() != width && isComment(line)) {
      String bare = uncommented(line);
      cells = dialect.split(bare);
    }
    while (cells.size() > width && isBeside(cells.get(cells.size() - 1), dialect)) {
      cells.remove(cells.size() - 1);
    }
    boolean fewer = cells.size() < width && cells.size() > 1 && width > 2;
    if (cells.size() != width && !fewer) {
      return null;
    }
    if (width == 1 && SETTING.matcher(line).find()) {
      return null;
    }
    int numbers = 0;
    int filled = 0;
    for (String cell : cells) {
      filled += cell.isEmpty() ? 0 : 1;
      numbers += Cell.of(cell, dialect.decimalMark()).kind() == Cell.Kind.NUMBER ? 1 : 0;
    }
    if (filled == 0 || numbers == filled) {
      return null;
    }
    if (fewer && (numbers > 0 || filled * 2 < width && !namesTime(cells))) {
      return null;
    }
    while (cells.size() < width) {
      cells.add("");
    }
    return cells;
  }

  /** Whether the first cell names a time or has its unit: then others have no name. */
  private static boolean namesTime(List<String> cells) {
    NameWithUnit first = NameWithUnit.of(cells.get(0), false);
    return first.unit().isTime() || Words.isTime(first.name()) && first.unit().isNone();
  }

  private static boolean isBeside(String cell, Dialect dialect) {
    return cell.isEmpty() || SettingsReader.states(cell, dialect);
  }

  static boolean isComment(String line) {
    String t = line.stripLeading();
    return !t.isEmpty() && ("#%;!".indexOf(t.charAt(0)) >= 0 || t.startsWith("//"));
  }

  private static String uncommented(String line) {
    String t = line.strip();
    int p = 0;
    while (p < t.length() && "#%;!/ ".indexOf(t.charAt(p)) >= 0) {
      p++;
    }
    return t.substring(p);
  }

  /** Whether all cells are units, apart from numbers below the name of a setting. */
  private static boolean isUnitRow(List<String> cells, List<String> above, Dialect dialect) {
    int units = 0;
    for (int c = 0; c < cells.size(); c++) {
      String cell = cells.get(c);
      boolean nothing =
          cell.isEmpty() || cell.equals("-") || cell.equals("()") || cell.equals("[]");
      Cell number = Cell.of(cell, dialect.decimalMark());
      boolean setting = number.kind() == Cell.Kind.NUMBER && number.unit().isNone();
      if (nothing || setting && c < above.size() && SettingsReader.isKey(above.get(c))) {
        continue;
      }
      boolean bracketed = cell.length() > 1 && "([".indexOf(cell.charAt(0)) >= 0;
      if (!bracketed && Unit.parse(cell) == null) {
        return false;
      }
      units++;
    }
    return units > 0;
  }
}
