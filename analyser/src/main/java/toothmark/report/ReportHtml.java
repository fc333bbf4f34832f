package toothmark.report;

import java.io.IOException;
import java.io.OutputStream;
import java.io.OutputStreamWriter;
import java.io.Writer;
import java.nio.charset.StandardCharsets;
import toothmark.examination.Examination;
import toothmark.findings.Finding;

/** The page to read: one file that needs no network and no script. */
final class ReportHtml {

  private ReportHtml() {}

  /** Writes the page in UTF-8; the caller closes the stream. */
  static void write(Examination e, OutputStream out) throws IOException {
    HtmlWriter html = new HtmlWriter();
    html.line("<!DOCTYPE html>").open("html", "lang", "en").open("head");
    html.empty("meta", "charset", "utf-8");
    html.element("title", e.observations().capture().file()).close();
    html.open("body").element("h1", e.diagnosis().verdict());
    html.element("p", e.diagnosis().nextStep());
    for (Finding f : e.diagnosis().findings()) {
      html.element("h2", f.title());
      f.evidence().forEach(s -> html.element("p", s));
      html.element("p", f.nextTest()).element("p", f.caution());
    }
    html.close().close();
    Writer writer = new OutputStreamWriter(out, StandardCharsets.UTF_8);
    writer.write(html.toString());
    writer.flush();
  }
}
