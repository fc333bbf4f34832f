package toothmark.report;

import static org.assertj.core.api.Assertions.assertThat;

import java.awt.image.BufferedImage;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.OptionalInt;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.rendering.PDFRenderer;
import org.apache.pdfbox.text.PDFTextStripper;
import org.junit.jupiter.api.Test;
import toothmark.chart.Lettering;
import toothmark.chart.SampleRun;
import toothmark.examination.Examination;
import toothmark.findings.Finding;

class ReportPdfTest {

  @Test
  void saysWhatThePageSaysSheetBySheet() throws IOException {
    Examination examination = SampleRun.full();
    try (PDDocument document = Loader.loadPDF(pdf(examination))) {
      String text = new PDFTextStripper().getText(document).replaceAll("\\s+", " ");
      assertThat(text).contains(examination.diagnosis().verdict());
      for (Finding f : examination.diagnosis().findings()) {
        assertThat(text).contains(f.title());
      }
      assertThat(text)
          .containsSubsequence(
              "Findings", "Is any tooth out of place or weak?", "Figures", "Cautions");
      int sheets = document.getNumberOfPages();
      for (int sheet = 1; sheet <= sheets; sheet++) {
        assertThat(sheet(document, sheet)).contains("Page " + sheet + " of " + sheets);
      }
      assertThat(sheet(document, sheets)).contains("What happens next", "Technician");
    }
  }

  /** Drawn as lines, not as dots: no page holds an image. */
  @Test
  void drawsChartsAsLinesAndText() throws IOException {
    try (PDDocument document = Loader.loadPDF(pdf(SampleRun.full()))) {
      for (PDPage page : document.getPages()) {
        assertThat(page.getResources().getXObjectNames()).isEmpty();
      }
      assertThat(new PDFTextStripper().getText(document)).contains("speed (rev/min)");
    }
  }

  @Test
  void givesTheSameBytesEachTime() throws IOException {
    assertThat(pdf(SampleRun.full())).isEqualTo(pdf(SampleRun.full()));
  }

  @Test
  void isWrittenForACaptureThatCannotBeDecodedToo() throws IOException {
    try (PDDocument document = Loader.loadPDF(pdf(SampleRun.undecodable()))) {
      assertThat(document.getNumberOfPages()).isPositive();
    }
  }

  @Test
  void printsNamesWithLettersThatOurTypefaceLacks() throws IOException {
    String name = "\u70b9\u706b \u0000\u202E\n".repeat(40);
    try (PDDocument document = Loader.loadPDF(pdf(ReportHtmlTest.named(name)))) {
      assertThat(new PDFTextStripper().getText(document)).contains("Findings");
    }
  }

  /**
   * Every sheet as it comes from the printer, at two dots a millimetre: 15 mm at the sides hold
   * nothing, as {@link PageFlow} has it, 12 mm above, since a rule stands over a heading, and 8 mm
   * below, which no printer cuts off. Words with no blank in them and long texts tempt it to run
   * over.
   */
  @Test
  void leavesTheMarginsOfEverySheetWhite() throws IOException {
    String word = "Donaudampfschifffahrtselektrizitätenhauptbetriebswerkbauunterbeamte".repeat(3);
    String lines =
        "Bolt of the pulley was loose, new bolt and key fitted; customer told. ".repeat(40);
    for (String name : new String[] {"Van", word, lines}) {
      Examination examination = ReportHtmlTest.named(name);
      assertThat(inkInMargins(pdf(examination))).as(name.substring(0, 3)).isEmpty();
    }
    assertThat(inkInMargins(pdf(SampleRun.full()))).isEmpty();
    assertThat(inkInMargins(pdf(SampleRun.undecodable()))).isEmpty();
  }

  @Test
  void inkInAMarginIsSeen() throws IOException {
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    try (PdfPages pages = new PdfPages("over")) {
      pages.add(
          210,
          297,
          g -> {
            g.setFont(Lettering.regular(10));
            g.drawString("over the edge", 540, 300); // a sheet is 595 points wide
          });
      pages.write(out);
    }
    assertThat(inkInMargins(out.toByteArray())).containsExactly("sheet 1: right");
  }

  private static List<String> inkInMargins(byte[] pdf) throws IOException {
    List<String> found = new ArrayList<>();
    try (PDDocument document = Loader.loadPDF(pdf)) {
      PDFRenderer renderer = new PDFRenderer(document);
      for (int i = 0; i < document.getNumberOfPages(); i++) {
        BufferedImage sheet = renderer.renderImageWithDPI(i, 2 * 25.4f);
        int side = 2 * 15 - 2; // less a millimetre for the thickness of lines
        int w = sheet.getWidth();
        int h = sheet.getHeight();
        String name = "sheet " + (i + 1) + ": ";
        ink(sheet, 0, 0, side, h).ifPresent(p -> found.add(name + "left"));
        ink(sheet, w - side, 0, side, h).ifPresent(p -> found.add(name + "right"));
        ink(sheet, 0, 0, w, 24).ifPresent(p -> found.add(name + "above"));
        ink(sheet, 0, h - 16, w, 16).ifPresent(p -> found.add(name + "below"));
      }
    }
    return found;
  }

  private static OptionalInt ink(BufferedImage sheet, int x, int y, int w, int h) {
    return Arrays.stream(sheet.getRGB(x, y, w, h, null, 0, w))
        .filter(p -> (p & 0xFF) < 0xF0 || (p >> 8 & 0xFF) < 0xF0 || (p >> 16 & 0xFF) < 0xF0)
        .findFirst();
  }

  private static String sheet(PDDocument document, int number) throws IOException {
    PDFTextStripper stripper = new PDFTextStripper();
    stripper.setStartPage(number);
    stripper.setEndPage(number);
    return stripper.getText(document);
  }

  private static byte[] pdf(Examination examination) throws IOException {
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    ReportPdf.write(examination, out);
    return out.toByteArray();
  }
}
