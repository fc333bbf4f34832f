package toothmark.report;

import java.awt.Dimension;
import java.awt.RenderingHints;
import java.awt.geom.Rectangle2D;
import java.io.IOException;
import java.io.StringWriter;
import javax.xml.parsers.DocumentBuilderFactory;
import javax.xml.parsers.ParserConfigurationException;
import org.apache.batik.svggen.SVGGeneratorContext;
import org.apache.batik.svggen.SVGGraphics2D;
import org.apache.batik.svggen.SVGIDGenerator;
import org.w3c.dom.DOMImplementation;
import org.w3c.dom.Document;
import org.w3c.dom.Element;
import toothmark.chart.Figure;

/** Writes a figure's chart as SVG to stand in a page; its text stays text. */
public final class FigureSvg {

  private static final String SVG = "http://www.w3.org/2000/svg";
  private static final int DECIMALS = 1;

  private FigureSvg() {}

  /**
   * Draws a chart.
   *
   * @param figure the figure
   * @param idPrefix keeps the ids of several figures of one page apart
   * @return an {@code svg} element
   */
  public static String of(Figure figure, String idPrefix) {
    Document document = document();
    SVGGeneratorContext context = SVGGeneratorContext.createDefault(document);
    context.setIDGenerator(
        new SVGIDGenerator() {
          @Override
          public String generateID(String prefix) {
            return super.generateID(idPrefix + prefix);
          }
        });
    context.setPrecision(DECIMALS);
    context.setComment(null);
    SVGGraphics2D g = new SVGGraphics2D(context, false);
    g.setSVGCanvasSize(new Dimension(Figure.WIDTH, figure.height()));
    g.setRenderingHint(RenderingHints.KEY_STROKE_CONTROL, RenderingHints.VALUE_STROKE_PURE);
    figure.chart().draw(g, new Rectangle2D.Double(0, 0, Figure.WIDTH, figure.height()));
    return write(g, figure);
  }

  private static String write(SVGGraphics2D g, Figure figure) {
    Element root = g.getRoot();
    root.setAttribute("viewBox", "0 0 " + Figure.WIDTH + " " + figure.height());
    root.removeAttribute("width");
    root.removeAttribute("height");
    root.setAttribute("role", "img");
    root.setAttribute("aria-label", figure.question() + " " + figure.answer());
    StringWriter out = new StringWriter(1 << 15);
    try {
      g.stream(root, out, true, true);
    } catch (IOException e) {
      throw new IllegalStateException("a text buffer refused what was written", e);
    }
    String svg = out.toString();
    return svg.substring(svg.indexOf("<svg"));
  }

  private static Document document() {
    try {
      DOMImplementation dom =
          DocumentBuilderFactory.newInstance().newDocumentBuilder().getDOMImplementation();
      return dom.createDocument(SVG, "svg", null);
    } catch (ParserConfigurationException e) {
      throw new IllegalStateException("this Java has no XML documents", e);
    }
  }
}
