package toothmark.report;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import toothmark.chart.Figure;

/** Writes the points that a figure is drawn from as comma-separated values. */
public final class FigureCsv {

  private static final int DECIMALS = 9;

  private FigureCsv() {}

  /**
   * The points, series after series.
   *
   * @param figure the figure
   * @return a table in UTF-8 with the columns x_axis, y_axis, series, x and y
   */
  public static byte[] of(Figure figure) {
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    try {
      CsvTable table = new CsvTable(out, "x_axis,y_axis,series,x,y");
      figure.tell((axes, series, x, y) -> row(table, axes, series, x, y));
      table.flush();
    } catch (IOException e) {
      throw new UncheckedIOException("a table in memory cannot fail", e);
    }
    return out.toByteArray();
  }

  private static void row(CsvTable table, Figure.Names axes, String series, double x, double y) {
    try {
      table.text(axes.across()).text(axes.up()).text(series);
      table.fixed(x, DECIMALS).fixed(y, DECIMALS).endRow();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
