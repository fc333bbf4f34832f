package toothmark.report;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.geom.Rectangle2D;
import java.awt.image.BufferedImage;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.rendering.PDFRenderer;
import org.apache.pdfbox.text.PDFTextStripper;
import org.junit.jupiter.api.Test;
import toothmark.chart.Lettering;

class PdfPagesTest {

  /** ISO 216: A4 is 210 mm by 297 mm; ISO 32000-1, 14.11.2: a page is measured in 1/72 inch. */
  @Test
  void drawsAtTrueScaleFromTheUpperLeftCorner() throws IOException {
    byte[] pdf = drawn(PdfPagesTest::barOfHundredMillimetres);
    try (PDDocument read = Loader.loadPDF(pdf)) {
      assertThat(read.getPage(0).getMediaBox().getWidth() / 72 * 25.4).isCloseTo(210, within(0.01));
      assertThat(read.getPage(0).getMediaBox().getHeight() / 72 * 25.4)
          .isCloseTo(297, within(0.01));
      BufferedImage image = new PDFRenderer(read).renderImageWithDPI(0, 254); // ten dots a mm
      assertThat(run(image, 120)).isEqualTo("black from 200 to 1200");
      assertThat(run(image, 220)).isEqualTo("white");
    }
  }

  @Test
  void keepsTextAsText() throws IOException {
    byte[] pdf =
        drawn(
            g -> {
              g.setFont(Lettering.strong(14));
              g.drawString("−2.63 ± 0.04°", 40, 40);
              g.setFont(Lettering.regular(10));
              g.drawString("Zündung Ω µs", 40, 60);
            });
    try (PDDocument read = Loader.loadPDF(pdf)) {
      assertThat(new PDFTextStripper().getText(read)).contains("−2.63 ± 0.04°", "Zündung Ω µs");
      assertThat(read.getDocumentInformation().getTitle()).isEqualTo("A page");
    }
  }

  @Test
  void givesTheSameBytesEachTime() throws IOException {
    assertThat(drawn(PdfPagesTest::barOfHundredMillimetres))
        .isEqualTo(drawn(PdfPagesTest::barOfHundredMillimetres));
  }

  private static void barOfHundredMillimetres(Graphics2D g) {
    g.scale(PdfPages.POINTS_PER_MILLIMETRE, PdfPages.POINTS_PER_MILLIMETRE);
    g.setPaint(Color.BLACK);
    g.fill(new Rectangle2D.Double(20, 10, 100, 5));
  }

  private static byte[] drawn(java.util.function.Consumer<Graphics2D> drawing) throws IOException {
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    try (PdfPages pages = new PdfPages("A page")) {
      pages.add(210, 297, drawing);
      pages.write(out);
    }
    return out.toByteArray();
  }

  private static String run(BufferedImage image, int y) {
    int from = 0;
    while (from < image.getWidth() && isLight(image, from, y)) {
      from++;
    }
    int to = from;
    while (to < image.getWidth() && !isLight(image, to, y)) {
      to++;
    }
    return from == image.getWidth() ? "white" : "black from " + from + " to " + to;
  }

  private static boolean isLight(BufferedImage image, int x, int y) {
    return (image.getRGB(x, y) & 0xFF) > 128;
  }
}
