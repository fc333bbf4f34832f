package toothmark.capture.text;

import java.util.ArrayList;
import java.util.List;

/**
 * How a row is divided into cells and a number written.
 *
 * @param delimiter character between cells; a blank stands for any run of blanks and tabs, a line
 *     feed for a single column
 * @param decimalMark {@code .} or {@code ,}
 */
record Dialect(char delimiter, char decimalMark) {

  static final char BLANKS = ' ';
  static final char ONE_COLUMN = '\n';

  /** The cells of a line, without the quotes and blanks around them. Source: RFC 4180, 2.5–2.7. */
  List<String> split(String line) {
    List<String> cells = new ArrayList<>();
    int p = 0;
    int n = line.length();
    if (delimiter == BLANKS) {
      p = skipBlanks(line, 0);
    }
    StringBuilder quoted = new StringBuilder();
    while (true) {
      int start = skipBlanksInCell(line, p);
      if (start < n && line.charAt(start) == '"') {
        quoted.setLength(0);
        p = quotedCell(line, start + 1, quoted);
        cells.add(quoted.toString().strip());
        p = end(line, p);
      } else {
        int end = end(line, p);
        cells.add(line.substring(p, end).strip());
        p = end;
      }
      if (p >= n) {
        return cells;
      }
      p = delimiter == BLANKS ? skipBlanks(line, p) : p + 1;
      if (delimiter == BLANKS && p >= n) {
        return cells;
      }
    }
  }

  private int skipBlanksInCell(String line, int from) {
    int p = from;
    while (p < line.length() && line.charAt(p) <= ' ' && line.charAt(p) != delimiter) {
      p++;
    }
    return p;
  }

  private static int skipBlanks(String line, int from) {
    int p = from;
    while (p < line.length() && line.charAt(p) <= ' ') {
      p++;
    }
    return p;
  }

  private int end(String line, int from) {
    int p = from;
    while (p < line.length() && !isDelimiter(line.charAt(p))) {
      p++;
    }
    return p;
  }

  private boolean isDelimiter(char c) {
    return delimiter == BLANKS ? c == ' ' || c == '\t' : c == delimiter;
  }

  private static int quotedCell(String line, int from, StringBuilder cell) {
    int p = from;
    while (p < line.length()) {
      char c = line.charAt(p++);
      if (c != '"') {
        cell.append(c);
      } else if (p < line.length() && line.charAt(p) == '"') {
        cell.append('"');
        p++;
      } else {
        return p;
      }
    }
    return p;
  }

  String delimiterText() {
    return switch (delimiter) {
      case ';' -> "semicolon";
      case ',' -> "comma";
      case '\t' -> "tab";
      case '|' -> "vertical bar";
      case BLANKS -> "blanks";
      case ONE_COLUMN -> "one column";
      default -> "'" + delimiter + "'";
    };
  }

  String decimalText() {
    return decimalMark == ',' ? "decimal comma" : "decimal point";
  }
}
