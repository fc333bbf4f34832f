package toothmark.report;

import java.awt.Graphics2D;
import java.awt.geom.Rectangle2D;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import toothmark.chart.Ink;

/** Rows of cells in columns that are as wide as their texts ask for, or share what there is. */
final class PrintedTable {

  private static final double GAP = 12;
  private static final double PADDING = 3;

  private final List<List<Cell>> rows = new ArrayList<>();

  /** On which side of its column a text stands. */
  enum Side {
    LEFT,
    RIGHT
  }

  /** What stands in one place of a table. */
  record Cell(List<TextRun> runs, Side side) {

    double natural() {
      return runs.stream().mapToDouble(TextRun::width).sum();
    }
  }

  void add(List<Cell> row) {
    rows.add(List.copyOf(row));
  }

  /** The rows, each of which stays on one sheet, unless it is higher than that. */
  List<PageFlow.Block> blocks(double width) {
    double[] columns = columns(width);
    return rows.stream().flatMap(r -> Row.of(r, columns)).toList();
  }

  /** Wide columns are narrowed to one width, so that the table fits. */
  private double[] columns(double width) {
    int count = rows.stream().mapToInt(List::size).max().orElse(0);
    double[] natural = new double[count];
    for (List<Cell> row : rows) {
      for (int c = 0; c < row.size(); c++) {
        natural[c] = Math.max(natural[c], Math.ceil(row.get(c).natural()) + GAP);
      }
    }
    double left = width;
    double[] ascending = natural.clone();
    Arrays.sort(ascending);
    for (int c = 0; c < count; c++) {
      double share = left / (count - c);
      if (ascending[c] > share) {
        return Arrays.stream(natural).map(n -> Math.min(n, share)).toArray();
      }
      left -= ascending[c];
    }
    return natural;
  }

  private static final class Row implements PageFlow.Block {

    private final List<Cell> cells;
    private final double[] columns;
    private final List<List<TextLine>> lines;

    private Row(List<Cell> cells, double[] columns, List<List<TextLine>> lines) {
      this.cells = cells;
      this.columns = columns;
      this.lines = lines;
    }

    /** A row, parted by lines of text where it is higher than a sheet. */
    static Stream<PageFlow.Block> of(List<Cell> cells, double[] columns) {
      List<List<TextLine>> lines = new ArrayList<>();
      for (int c = 0; c < cells.size(); c++) {
        lines.add(TextLine.broken(cells.get(c).runs(), columns[c] - GAP));
      }
      double highest =
          lines.stream().flatMap(List::stream).mapToDouble(TextLine::height).max().orElse(1);
      int fit = (int) ((PageFlow.ROOM - 2 * PADDING) / highest);
      int most = lines.stream().mapToInt(List::size).max().orElse(0);
      return IntStream.rangeClosed(0, Math.max(0, most - 1) / fit)
          .mapToObj(
              part ->
                  new Row(
                      cells,
                      columns,
                      lines.stream()
                          .map(l -> l.stream().skip((long) part * fit).limit(fit).toList())
                          .toList()));
    }

    @Override
    public double height() {
      return 2 * PADDING + lines.stream().mapToDouble(Row::height).max().orElse(0);
    }

    private static double height(List<TextLine> lines) {
      return lines.stream().mapToDouble(TextLine::height).sum();
    }

    @Override
    public void draw(Graphics2D g, double x, double y) {
      double left = x;
      for (int c = 0; c < cells.size(); c++) {
        double down = y + PADDING;
        for (TextLine line : lines.get(c)) {
          double spare = columns[c] - GAP - line.width();
          line.draw(g, cells.get(c).side() == Side.RIGHT ? left + spare : left, down);
          down += line.height();
        }
        left += columns[c];
      }
      g.setPaint(Ink.LIGHT.grid());
      g.fill(new Rectangle2D.Double(x, y + height() - 0.5, left - GAP - x, 0.5));
    }
  }
}
