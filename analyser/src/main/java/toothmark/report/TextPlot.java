package toothmark.report;

import java.util.ArrayList;
import java.util.List;
import java.util.function.Consumer;
import toothmark.chart.Curve;

/** A line drawn in the dots of Braille patterns (Unicode 2800 to 28FF), two by four to a letter. */
final class TextPlot implements Curve.Line {

  private static final int ACROSS = 2;
  private static final int DOWN = 4;
  private static final char EMPTY = '\u2800';

  /** Bits of the dots of a letter, row by row. */
  private static final int[] DOTS = {0x01, 0x08, 0x02, 0x10, 0x04, 0x20, 0x40, 0x80};

  private final char[][] letters;
  private final double[] window;
  private int column;
  private int row;

  private TextPlot(int columns, int rows, double[] window) {
    this.letters = new char[rows][columns];
    this.window = window;
    for (char[] line : letters) {
      java.util.Arrays.fill(line, EMPTY);
    }
  }

  /**
   * Draws a line.
   *
   * @param columns letters across
   * @param rows lines of text
   * @param window left, right, bottom and top of the picture
   * @param drawing moves the pen
   */
  static List<String> of(int columns, int rows, double[] window, Consumer<Curve.Line> drawing) {
    TextPlot plot = new TextPlot(columns, rows, window);
    drawing.accept(plot);
    List<String> lines = new ArrayList<>();
    for (char[] line : plot.letters) {
      lines.add(new String(line));
    }
    return lines;
  }

  @Override
  public void moveTo(double x, double y) {
    column = place(x, window[0], window[1], letters[0].length * ACROSS);
    row = place(y, window[3], window[2], letters.length * DOWN);
    dot(column, row);
  }

  @Override
  public void lineTo(double x, double y) {
    int fromColumn = column;
    int fromRow = row;
    moveTo(x, y);
    int steps = Math.max(Math.abs(column - fromColumn), Math.abs(row - fromRow));
    for (int i = 1; i < steps; i++) {
      dot(
          fromColumn + Math.round((column - fromColumn) * i / (float) steps),
          fromRow + Math.round((row - fromRow) * i / (float) steps));
    }
  }

  private static int place(double value, double first, double last, int dots) {
    double share = last == first ? 0.5 : (value - first) / (last - first);
    return (int) Math.round(Math.max(-1, Math.min(2, share)) * (dots - 1));
  }

  private void dot(int x, int y) {
    boolean inside =
        x >= 0 && y >= 0 && y < letters.length * DOWN && x < letters[0].length * ACROSS;
    if (inside) {
      char[] row = letters[y / DOWN];
      row[x / ACROSS] = (char) (row[x / ACROSS] | DOTS[y % DOWN * ACROSS + x % ACROSS]);
    }
  }
}
