package toothmark.report;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.text.PDFTextStripper;
import org.junit.jupiter.api.Test;
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
