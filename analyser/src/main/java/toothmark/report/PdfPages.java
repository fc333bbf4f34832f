package toothmark.report;

import java.awt.Graphics2D;
import java.io.ByteArrayInputStream;
import java.io.Closeable;
import java.io.IOException;
import java.io.OutputStream;
import java.io.UncheckedIOException;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Consumer;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.PDPageContentStream;
import org.apache.pdfbox.pdmodel.common.PDRectangle;
import org.apache.pdfbox.pdmodel.font.PDFont;
import org.apache.pdfbox.pdmodel.font.PDType0Font;
import toothmark.chart.Lettering;

/**
 * A PDF document (ISO 32000-1), drawn page by page at true scale.
 *
 * <p>Lines stay lines, and text in the typeface of {@link Lettering} stays text; text in any other
 * font becomes outlines. Images and paints other than opaque colours are refused. The same drawing
 * gives the same bytes.
 */
public final class PdfPages implements Closeable {

  /** A pen's unit is a point, 1/72 inch: scale by this to draw in millimetres. */
  public static final double POINTS_PER_MILLIMETRE = 72 / 25.4;

  private final PDDocument document = new PDDocument();
  private final Map<String, PDFont> fonts = new HashMap<>();

  /**
   * A document without pages.
   *
   * @param title shown by readers in place of the file's name
   * @throws IOException if a typeface cannot be taken in
   */
  public PdfPages(String title) throws IOException {
    document.setDocumentId(0L); // else it would be made from the clock
    document.getDocumentInformation().setTitle(title);
    document.getDocumentInformation().setCreator("Toothmark");
    document.getDocumentCatalog().setLanguage("en");
    for (String family : List.of(Lettering.REGULAR, Lettering.STRONG)) {
      var file = new ByteArrayInputStream(Lettering.trueType(family));
      fonts.put(family, PDType0Font.load(document, file, true));
    }
  }

  /**
   * Adds a page.
   *
   * @param widthMillimetres width of the paper
   * @param heightMillimetres height of the paper
   * @param drawing draws it, in points from the upper left corner
   * @throws IOException if the page cannot be made
   * @throws UnsupportedOperationException if the drawing asks for what the pen cannot do
   */
  public void add(double widthMillimetres, double heightMillimetres, Consumer<Graphics2D> drawing)
      throws IOException {
    float width = (float) (widthMillimetres * POINTS_PER_MILLIMETRE);
    float height = (float) (heightMillimetres * POINTS_PER_MILLIMETRE);
    PDPage page = new PDPage(new PDRectangle(width, height));
    document.addPage(page);
    try (PDPageContentStream content = new PDPageContentStream(document, page)) {
      PdfGraphics pen = new PdfGraphics(content, height, fonts);
      drawing.accept(pen);
      pen.endClip();
    } catch (UncheckedIOException e) {
      throw e.getCause();
    }
  }

  /**
   * Writes the document; nothing can be added after.
   *
   * @param out where to; stays open
   * @throws IOException if writing failed
   */
  public void write(OutputStream out) throws IOException {
    document.save(out);
  }

  @Override
  public void close() throws IOException {
    document.close();
  }
}
