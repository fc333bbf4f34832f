package toothmark.report;

import java.awt.geom.Rectangle2D;
import org.jfree.chart.JFreeChart;
import org.jfree.chart.axis.NumberAxis;
import org.jfree.chart.plot.XYPlot;
import toothmark.chart.Figure;
import toothmark.chart.Lettering;

/** Writes a figure's chart as SVG to stand in a page. */
public final class FigureSvg {

  /** Id of the drawing after its prefix, by which it can be shown a second time. */
  static final String DRAWING = "drawing";

  private FigureSvg() {}

  /** Draws an empty chart, which loads the typeface and most of what a real one needs. */
  static void warmUp() {
    XYPlot plot = new XYPlot(null, new NumberAxis("x"), new NumberAxis("y"), null);
    SvgGraphics g = new SvgGraphics("");
    new JFreeChart(null, Lettering.strong(12), plot, false)
        .draw(g, new Rectangle2D.Double(0, 0, 200, 100));
  }

  /**
   * Draws a chart.
   *
   * @param figure the figure
   * @param idPrefix keeps the ids of several figures of one page apart
   * @return an {@code svg} element
   */
  public static String of(Figure figure, String idPrefix) {
    SvgGraphics g = new SvgGraphics(idPrefix);
    figure.chart().draw(g, new Rectangle2D.Double(0, 0, Figure.WIDTH, figure.height()));
    return "<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 "
        + Figure.WIDTH
        + " "
        + figure.height()
        + "\" role=\"img\" aria-label=\""
        + HtmlWriter.escaped(figure.question() + " " + figure.answer())
        + "\">\n<g id=\""
        + idPrefix
        + DRAWING
        + "\">\n"
        + g.markup()
        + "</g>\n</svg>\n";
  }
}
