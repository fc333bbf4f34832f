package toothmark.report;

import java.net.URLEncoder;
import java.nio.charset.StandardCharsets;

/** The frame of the pages beside a report: an index, a comparison, a drift. */
final class SidePage {

  private SidePage() {}

  /** Begins a page; what follows goes into its main part. */
  static HtmlWriter open(String title) {
    HtmlWriter html = new HtmlWriter();
    html.markup("<!DOCTYPE html>\n").open("html", "lang", "en").open("head");
    html.empty("meta", "charset", "utf-8");
    html.empty("meta", "name", "viewport", "content", "width=device-width, initial-scale=1");
    html.element("title", Wording.of("page.title", title));
    html.open("style").markup(ReportHtml.style()).close().close().open("body");
    html.open("header").open("div", "class", "masthead");
    html.element("span", "Toothmark", "class", "name");
    html.element("span", Wording.of("page.about")).close();
    html.markup(ReportHtml.toothStrip()).close();
    html.open("main").element("p", title, "class", "captured");
    return html;
  }

  static String close(HtmlWriter html) {
    return html.close().close().close().toString();
  }

  /** A relative link to a file in a folder beside the page. */
  static String link(String folder, String file) {
    return URLEncoder.encode(folder, StandardCharsets.UTF_8).replace("+", "%20") + "/" + file;
  }
}
