package toothmark.capture.text;

import java.util.ArrayList;
import java.util.List;
import toothmark.capture.StatedLayout;

/**
 * Finds the dialect by trying each and counting the cells that then hold a number.
 *
 * <p>A trial scores, over the lines with its most frequent width, the share of cells that are
 * numbers. Equal trials are told apart by a header that has the same width, by not needing
 * thousands marks, and by more columns.
 */
final class DialectFinder {

  private static final char[] DELIMITERS = {
    ';', '\t', ',', '|', Dialect.BLANKS, Dialect.ONE_COLUMN
  };
  private static final double HEADER_AGREES = 0.02;
  private static final double NEEDS_THOUSANDS_MARKS = 0.04;
  private static final double EACH_COLUMN = 1e-4;

  private final Evidence evidence;

  DialectFinder(Evidence evidence) {
    this.evidence = evidence;
  }

  /** The best dialect, or null when no line holds a number in any. */
  Dialect find(StatedLayout.Text stated) {
    Dialect best = null;
    double bestScore = 0;
    for (char delimiter : DELIMITERS) {
      if (stated.delimiter().isPresent()) {
        delimiter = stated.delimiter().get();
      }
      if (!occurs(delimiter)) {
        continue;
      }
      for (char mark : new char[] {'.', ','}) {
        if (stated.decimalMark().isPresent() && stated.decimalMark().get() != mark) {
          continue;
        }
        Dialect trial = new Dialect(delimiter, mark);
        double score = score(trial);
        if (score > bestScore) {
          best = trial;
          bestScore = score;
        }
      }
    }
    return best;
  }

  private boolean occurs(char delimiter) {
    if (delimiter == Dialect.ONE_COLUMN) {
      return true;
    }
    for (String line : evidence.body()) {
      String inside = line.strip();
      boolean there =
          inside.indexOf(delimiter) >= 0
              || delimiter == Dialect.BLANKS && inside.indexOf('\t') >= 0
              || delimiter == '\t' && line.indexOf('\t') >= 0;
      if (there) {
        return true;
      }
    }
    return false;
  }

  private double score(Dialect trial) {
    List<List<String>> rows = new ArrayList<>();
    for (String line : evidence.body()) {
      rows.add(trial.split(line));
    }
    int width = commonWidth(rows, trial.decimalMark());
    double sum = 0;
    boolean thousands = false;
    for (List<String> row : rows) {
      if (row.size() == width) {
        int numbers = 0;
        int filled = 0;
        for (String cell : row) {
          filled += cell.isEmpty() ? 0 : 1;
          boolean number = isNumber(cell, trial.decimalMark());
          numbers += number ? 1 : 0;
          thousands |= number && hasOtherMark(cell, trial.decimalMark());
        }
        sum += numbers / (double) Math.max(1, filled);
      }
    }
    double score = sum / rows.size();
    if (score == 0) {
      return 0;
    }
    return score
        + (headerAgrees(trial, width) ? HEADER_AGREES : 0)
        - (thousands ? NEEDS_THOUSANDS_MARKS : 0)
        + EACH_COLUMN * Math.min(width, 50);
  }

  private static boolean isNumber(String cell, char mark) {
    if (cell.isEmpty()) {
      return false;
    }
    Cell c = Cell.of(cell, mark);
    return c.kind() != Cell.Kind.TEXT && c.kind() != Cell.Kind.MISSING || HexText.hasPrefix(cell);
  }

  private static boolean hasOtherMark(String cell, char mark) {
    return cell.indexOf(mark == '.' ? ',' : '.') >= 0;
  }

  /** The most frequent number of cells among lines that begin or end with a number. */
  static int commonWidth(List<List<String>> rows, char mark) {
    int best = 0;
    int bestCount = 0;
    for (List<String> row : rows) {
      int count = 0;
      for (List<String> other : rows) {
        count += other.size() == row.size() ? 1 : 0;
      }
      boolean more = count > bestCount || count == bestCount && row.size() > best;
      if (more && holdsNumber(row, mark)) {
        best = row.size();
        bestCount = count;
      }
    }
    return best;
  }

  private static boolean holdsNumber(List<String> row, char mark) {
    for (String cell : row) {
      if (isNumber(cell, mark)) {
        return true;
      }
    }
    return false;
  }

  private boolean headerAgrees(Dialect trial, int width) {
    for (String line : evidence.first()) {
      List<String> cells = trial.split(line);
      if (cells.size() != width) {
        continue;
      }
      boolean words = true;
      for (String cell : cells) {
        words &= !cell.isEmpty() && !isNumber(cell, trial.decimalMark());
        words &= width > 1 || cell.indexOf(',') < 0 && cell.indexOf(';') < 0;
      }
      if (words && (width > 1 || !SettingsReader.states(line, trial))) {
        return true;
      }
    }
    return false;
  }
}
