package toothmark.report;

import java.awt.BasicStroke;
import java.awt.Font;
import java.awt.Shape;
import java.awt.geom.AffineTransform;
import java.awt.geom.PathIterator;
import java.awt.geom.Rectangle2D;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.Map;
import org.apache.pdfbox.pdmodel.PDPageContentStream;
import org.apache.pdfbox.pdmodel.font.PDFont;
import org.apache.pdfbox.util.Matrix;
import toothmark.chart.Lettering;

/** Draws on a page of a PDF document, in points from its upper left corner. */
final class PdfGraphics extends PenGraphics {

  private final PDPageContentStream content;
  private final Map<String, PDFont> fonts;
  private final AffineTransform upright;

  /**
   * Starts on an empty page.
   *
   * @param content what the page holds
   * @param heightPoints height of the page
   * @param fonts by family; text in any other is drawn as outlines
   */
  PdfGraphics(PDPageContentStream content, double heightPoints, Map<String, PDFont> fonts) {
    super(Lettering.regular(12));
    this.content = content;
    this.fonts = fonts;
    this.upright = new AffineTransform(1, 0, 0, -1, 0, heightPoints);
  }

  @Override
  public void fill(Shape shape) {
    clipAsAsked();
    write(
        () -> {
          content.setNonStrokingColor(opaque());
          if (outline(shape, onPage()) == PathIterator.WIND_EVEN_ODD) {
            content.fillEvenOdd();
          } else {
            content.fill();
          }
        });
  }

  @Override
  public void draw(Shape shape) {
    if (!(getStroke() instanceof BasicStroke stroke)) {
      fill(getStroke().createStrokedShape(shape));
      return;
    }
    clipAsAsked();
    write(
        () -> {
          content.setStrokingColor(opaque());
          set(stroke, Math.sqrt(Math.abs(getTransform().getDeterminant())));
          outline(shape, onPage());
          content.stroke();
        });
  }

  @Override
  public void drawString(String text, float x, float y) {
    Font font = Lettering.able(getFont(), text);
    PDFont embedded = fonts.get(font.getFamily());
    if (embedded == null) {
      fill(font.createGlyphVector(getFontRenderContext(), text).getOutline(x, y));
      return;
    }
    clipAsAsked();
    AffineTransform place = onPage();
    place.translate(x, y);
    place.scale(1, -1); // letters stand upright
    write(
        () -> {
          content.setNonStrokingColor(opaque());
          content.beginText();
          content.setFont(embedded, font.getSize2D());
          content.setTextMatrix(new Matrix(place));
          content.showText(text);
          content.endText();
        });
  }

  @Override
  void openClip(Rectangle2D onPaper) {
    write(
        () -> {
          content.saveGraphicsState();
          outline(onPaper, upright);
          content.clip();
        });
  }

  @Override
  void closeClip() {
    write(content::restoreGraphicsState);
  }

  private AffineTransform onPage() {
    AffineTransform all = new AffineTransform(upright);
    all.concatenate(getTransform());
    return all;
  }

  private void set(BasicStroke stroke, double scale) throws IOException {
    content.setLineWidth((float) (stroke.getLineWidth() * scale));
    content.setLineCapStyle(stroke.getEndCap()); // Java and PDF number caps and joins alike
    content.setLineJoinStyle(stroke.getLineJoin());
    float[] dashes = stroke.getDashArray() == null ? new float[0] : stroke.getDashArray();
    for (int i = 0; i < dashes.length; i++) {
      dashes[i] *= (float) scale;
    }
    content.setLineDashPattern(dashes, (float) (stroke.getDashPhase() * scale));
  }

  /** Adds an outline to the path and tells its winding rule. */
  private int outline(Shape shape, AffineTransform transform) throws IOException {
    PathIterator i = shape.getPathIterator(transform);
    float[] c = new float[6];
    float[] at = new float[2];
    for (; !i.isDone(); i.next()) {
      int kind = i.currentSegment(c);
      switch (kind) {
        case PathIterator.SEG_MOVETO -> content.moveTo(c[0], c[1]);
        case PathIterator.SEG_LINETO -> content.lineTo(c[0], c[1]);
        case PathIterator.SEG_QUADTO -> {
          raiseToCubic(at, c);
          content.curveTo(c[0], c[1], c[2], c[3], c[4], c[5]);
        }
        case PathIterator.SEG_CUBICTO -> content.curveTo(c[0], c[1], c[2], c[3], c[4], c[5]);
        default -> content.closePath();
      }
      int end =
          switch (kind) {
            case PathIterator.SEG_QUADTO, PathIterator.SEG_CUBICTO -> 4;
            default -> 0;
          };
      at[0] = c[end];
      at[1] = c[end + 1];
    }
    return i.getWindingRule();
  }

  /** PDF knows no quadratic curves; a cubic with its arms at two thirds is the same curve. */
  private static void raiseToCubic(float[] start, float[] c) {
    float controlX = c[0];
    float controlY = c[1];
    c[4] = c[2];
    c[5] = c[3];
    c[0] = start[0] + (controlX - start[0]) * 2 / 3;
    c[1] = start[1] + (controlY - start[1]) * 2 / 3;
    c[2] = c[4] + (controlX - c[4]) * 2 / 3;
    c[3] = c[5] + (controlY - c[5]) * 2 / 3;
  }

  private static void write(Step step) {
    try {
      step.run();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private interface Step {
    void run() throws IOException;
  }
}
