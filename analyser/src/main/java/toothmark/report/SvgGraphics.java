package toothmark.report;

import java.awt.BasicStroke;
import java.awt.Font;
import java.awt.Shape;
import java.awt.geom.AffineTransform;
import java.awt.geom.PathIterator;
import java.awt.geom.Rectangle2D;
import toothmark.chart.Lettering;
import toothmark.units.PlainNumber;

/**
 * Writes what a chart draws as the inside of an {@code svg} element; its text stays text.
 *
 * <p>It knows the few things that charts need, so it starts in a fraction of the time of a writer
 * for all of SVG, and writes less.
 */
final class SvgGraphics extends PenGraphics {

  private static final int DECIMALS = 1;

  private final StringBuilder out;
  private final String idPrefix;
  private int clips;

  /** Starts empty; the prefix keeps the ids of several charts of one page apart. */
  SvgGraphics(String idPrefix) {
    super(Lettering.regular(12));
    this.out = new StringBuilder(1 << 14);
    this.idPrefix = idPrefix;
  }

  /** Everything drawn so far; nothing more may be drawn. */
  String markup() {
    endClip();
    return out.toString();
  }

  @Override
  public void fill(Shape shape) {
    clipAsAsked();
    out.append("<path");
    colour("fill");
    path(shape);
    out.append("/>\n");
  }

  @Override
  public void draw(Shape shape) {
    if (!(getStroke() instanceof BasicStroke stroke)) {
      fill(getStroke().createStrokedShape(shape));
      return;
    }
    clipAsAsked();
    out.append("<path fill=\"none\"");
    colour("stroke");
    attribute("stroke-width", stroke.getLineWidth());
    if (stroke.getEndCap() == BasicStroke.CAP_ROUND) {
      out.append(" stroke-linecap=\"round\"");
    }
    if (stroke.getLineJoin() == BasicStroke.JOIN_ROUND) {
      out.append(" stroke-linejoin=\"round\"");
    }
    if (stroke.getDashArray() != null) {
      dashes(stroke.getDashArray());
    }
    path(shape);
    out.append("/>\n");
  }

  @Override
  public void drawString(String text, float x, float y) {
    clipAsAsked();
    Font font = getFont();
    out.append("<text");
    AffineTransform t = getTransform();
    if ((t.getType() & ~AffineTransform.TYPE_TRANSLATION) == 0) {
      attribute("x", x + t.getTranslateX());
      attribute("y", y + t.getTranslateY());
    } else {
      t.translate(x, y);
      matrix(t);
    }
    out.append(" font-family=\"").append(HtmlWriter.escaped(font.getFamily())).append('"');
    attribute("font-size", font.getSize2D());
    colour("fill");
    out.append('>').append(HtmlWriter.escaped(text)).append("</text>\n");
  }

  @Override
  void openClip(Rectangle2D onPaper) {
    String id = idPrefix + "clip-" + clips++;
    out.append("<clipPath id=\"").append(id).append("\"><path");
    outline(onPaper, null);
    out.append("/></clipPath>\n<g clip-path=\"url(#").append(id).append(")\">\n");
  }

  @Override
  void closeClip() {
    out.append("</g>\n");
  }

  private void path(Shape shape) {
    AffineTransform t = getTransform();
    outline(shape, t.isIdentity() ? null : t);
  }

  private void outline(Shape shape, AffineTransform t) {
    out.append(" d=\"");
    double[] c = new double[6];
    for (PathIterator i = shape.getPathIterator(t); !i.isDone(); i.next()) {
      switch (i.currentSegment(c)) {
        case PathIterator.SEG_MOVETO -> step('M', c, 2);
        case PathIterator.SEG_LINETO -> step('L', c, 2);
        case PathIterator.SEG_QUADTO -> step('Q', c, 4);
        case PathIterator.SEG_CUBICTO -> step('C', c, 6);
        default -> out.append('z');
      }
    }
    out.append('"');
  }

  private void step(char letter, double[] coordinates, int count) {
    out.append(letter);
    for (int i = 0; i < count; i++) {
      if (i > 0) {
        out.append(' ');
      }
      number(coordinates[i]);
    }
  }

  private void matrix(AffineTransform t) {
    double[] m = new double[6];
    t.getMatrix(m);
    out.append(" transform=\"matrix(");
    for (int i = 0; i < m.length; i++) {
      out.append(i > 0 ? " " : "").append(PlainNumber.fixed(m[i], i < 4 ? 4 : DECIMALS));
    }
    out.append(")\"");
  }

  private void dashes(float[] lengths) {
    out.append(" stroke-dasharray=\"");
    for (int i = 0; i < lengths.length; i++) {
      out.append(i > 0 ? " " : "");
      number(lengths[i]);
    }
    out.append('"');
  }

  private void colour(String attribute) {
    String hex = Integer.toHexString(opaque().getRGB() & 0xFFFFFF);
    out.append(' ').append(attribute).append("=\"#");
    out.append("000000", 0, 6 - hex.length()).append(hex).append('"');
  }

  private void attribute(String name, double value) {
    out.append(' ').append(name).append("=\"");
    number(value);
    out.append('"');
  }

  private void number(double value) {
    String digits = PlainNumber.fixed(value, DECIMALS);
    out.append(digits, 0, digits.length() - (digits.endsWith(".0") ? 2 : 0));
  }
}
