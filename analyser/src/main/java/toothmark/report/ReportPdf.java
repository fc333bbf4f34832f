package toothmark.report;

import java.io.IOException;
import java.io.OutputStream;
import java.io.StringReader;
import javax.xml.parsers.DocumentBuilderFactory;
import javax.xml.parsers.ParserConfigurationException;
import org.w3c.dom.Element;
import org.xml.sax.InputSource;
import org.xml.sax.SAXException;
import toothmark.examination.Examination;

/**
 * The page on sheets of A4, to print or to send: the same words, since it is laid out from the page
 * itself, and the same charts as lines and text.
 */
final class ReportPdf {

  private ReportPdf() {}

  /** Writes the document; the caller closes the stream. */
  static void write(Examination examination, OutputStream out) throws IOException {
    ReportHtml page = ReportHtml.of(examination);
    PageFlow flow = new PageFlow();
    new PrintedPage(page.figures(), flow).lay(body(page.markup()));
    try (PdfPages pages = new PdfPages(page.title())) {
      flow.print(pages, page.title());
      pages.write(out);
    }
  }

  private static Element body(String markup) {
    try {
      return (Element)
          DocumentBuilderFactory.newInstance()
              .newDocumentBuilder()
              .parse(new InputSource(new StringReader(markup)))
              .getElementsByTagName("body")
              .item(0);
    } catch (ParserConfigurationException | SAXException | IOException e) {
      throw new IllegalStateException("the page is no well-formed XML", e);
    }
  }
}
