package toothmark.accuracy;

import java.awt.BasicStroke;
import java.awt.Color;
import java.awt.geom.Rectangle2D;
import java.io.IOException;
import java.io.Writer;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.text.DecimalFormat;
import java.text.DecimalFormatSymbols;
import java.util.List;
import java.util.Locale;
import javax.xml.parsers.DocumentBuilderFactory;
import javax.xml.parsers.ParserConfigurationException;
import org.apache.batik.svggen.SVGGraphics2D;
import org.jfree.chart.JFreeChart;
import org.jfree.chart.axis.LogAxis;
import org.jfree.chart.axis.NumberAxis;
import org.jfree.chart.axis.ValueAxis;
import org.jfree.chart.plot.XYPlot;
import org.jfree.chart.renderer.xy.XYLineAndShapeRenderer;
import org.jfree.data.xy.XYSeries;
import org.jfree.data.xy.XYSeriesCollection;
import org.w3c.dom.Document;

/** Lines over one axis, written as SVG. */
public final class LineChart {

  /** How an axis is divided. */
  public enum Scale {
    /** Evenly. */
    LINEAR,
    /** By powers of ten; values that are not positive are left out. */
    LOGARITHMIC
  }

  /**
   * An axis.
   *
   * @param label with its unit
   * @param scale how it is divided
   */
  public record Axis(String label, Scale scale) {}

  private static final int WIDTH = 720;
  private static final int HEIGHT = 360;

  /** Okabe and Ito 2008, Color Universal Design: told apart by the colour-blind too. */
  private static final List<Color> COLOURS =
      List.of(new Color(0x0072B2), new Color(0xD55E00), new Color(0x009E73), new Color(0xCC79A7));

  private final String title;
  private final Axis x;
  private final Axis y;
  private final XYSeriesCollection lines = new XYSeriesCollection();

  /**
   * An empty chart.
   *
   * @param title said where the picture cannot be shown
   * @param x the horizontal axis
   * @param y the vertical axis
   */
  public LineChart(String title, Axis x, Axis y) {
    this.title = title;
    this.x = x;
    this.y = y;
  }

  /**
   * What the chart shows.
   *
   * @return its title
   */
  public String title() {
    return title;
  }

  /**
   * Adds a point to a line, which is begun when it is not there yet.
   *
   * @param line its name
   * @param atX horizontal place
   * @param atY vertical place; not drawn when NaN, or not positive on a logarithmic axis
   */
  public void point(String line, double atX, double atY) {
    int i = lines.indexOf(line);
    if (i < 0) {
      lines.addSeries(new XYSeries(line));
      i = lines.getSeriesCount() - 1;
    }
    if (!Double.isNaN(atY) && (y.scale() == Scale.LINEAR || atY > 0)) {
      lines.getSeries(i).add(atX, atY);
    }
  }

  void write(Path file) throws IOException {
    SVGGraphics2D canvas = new SVGGraphics2D(document());
    canvas.setSVGCanvasSize(new java.awt.Dimension(WIDTH, HEIGHT));
    XYPlot plot = new XYPlot(lines, axis(x), axis(y), renderer());
    plot.setBackgroundPaint(Color.WHITE);
    plot.setDomainGridlinePaint(Color.LIGHT_GRAY);
    plot.setRangeGridlinePaint(Color.LIGHT_GRAY);
    JFreeChart chart = new JFreeChart(null, JFreeChart.DEFAULT_TITLE_FONT, plot, true);
    chart.setBackgroundPaint(Color.WHITE);
    chart.draw(canvas, new Rectangle2D.Double(0, 0, WIDTH, HEIGHT));
    Files.createDirectories(file.getParent());
    try (Writer out = Files.newBufferedWriter(file, StandardCharsets.UTF_8)) {
      canvas.stream(out, true);
    }
  }

  private static Document document() throws IOException {
    try {
      return DocumentBuilderFactory.newInstance()
          .newDocumentBuilder()
          .getDOMImplementation()
          .createDocument("http://www.w3.org/2000/svg", "svg", null);
    } catch (ParserConfigurationException e) {
      throw new IOException(e);
    }
  }

  private static ValueAxis axis(Axis axis) {
    if (axis.scale() == Scale.LOGARITHMIC) {
      LogAxis log = new LogAxis(axis.label());
      log.setSmallestValue(1e-9);
      log.setNumberFormatOverride(
          new DecimalFormat("0.#E0", DecimalFormatSymbols.getInstance(Locale.ROOT)));
      return log;
    }
    NumberAxis linear = new NumberAxis(axis.label());
    linear.setAutoRangeIncludesZero(false);
    linear.setNumberFormatOverride(
        new DecimalFormat("0.###", DecimalFormatSymbols.getInstance(Locale.ROOT)));
    return linear;
  }

  private XYLineAndShapeRenderer renderer() {
    XYLineAndShapeRenderer renderer = new XYLineAndShapeRenderer(true, true);
    for (int i = 0; i < lines.getSeriesCount(); i++) {
      renderer.setSeriesPaint(i, COLOURS.get(i % COLOURS.size()));
      renderer.setSeriesStroke(i, new BasicStroke(1.6f));
    }
    return renderer;
  }
}
