package toothmark.report;

import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.io.OutputStreamWriter;
import java.io.Writer;
import java.nio.charset.StandardCharsets;
import java.util.Base64;
import java.util.List;
import toothmark.capture.Capture;
import toothmark.capture.Channel;
import toothmark.chart.Lettering;
import toothmark.examination.Examination;
import toothmark.examination.JobSheet;
import toothmark.units.Say;

/**
 * The page to read: one file that needs no network and no script, on a screen, a telephone or
 * paper. First the technician's page, then the customer's sheet.
 */
final class ReportHtml {

  private static final String STYLE = style();

  private final Examination examination;
  private final HtmlWriter html = new HtmlWriter();
  private final LossesSection losses;
  private final CircuitsSection circuits;
  private final PageFigures figures;

  private ReportHtml(Examination examination) {
    this.examination = examination;
    this.losses = LossesSection.of(examination);
    this.circuits = CircuitsSection.of(examination);
    this.figures = PageFigures.of(examination, losses.pictures());
    circuits.levels().ifPresent(figures::add);
    page();
  }

  /** Makes the page. */
  static ReportHtml of(Examination examination) {
    return new ReportHtml(examination);
  }

  /** Writes the page in UTF-8; the caller closes the stream. */
  static void write(Examination examination, OutputStream out) throws IOException {
    Writer writer = new OutputStreamWriter(out, StandardCharsets.UTF_8);
    writer.write(of(examination).markup());
    writer.flush();
  }

  String markup() {
    return html.toString();
  }

  PageFigures figures() {
    return figures;
  }

  private void page() {
    html.markup("<!DOCTYPE html>\n").open("html", "lang", "en").open("head");
    html.empty("meta", "charset", "utf-8");
    html.empty("meta", "name", "viewport", "content", "width=device-width, initial-scale=1");
    html.element("title", title());
    html.open("style").markup(STYLE).close();
    html.close().open("body");
    masthead();
    html.open("main");
    verdict();
    new FindingsSection(html, figures).write(examination.diagnosis());
    new MeasuresSection(html, examination).write();
    losses.write(html, figures);
    circuits.write(html, figures);
    pictures();
    new MethodSection(html, examination).write();
    html.close();
    new CustomerSheet(html, examination).write();
    html.close().close();
  }

  /** What a reader shows in place of the file's name. */
  String title() {
    String stated = examination.sheet().heading().title();
    return Wording.of(
        "page.title", stated.isEmpty() ? examination.observations().capture().file() : stated);
  }

  private void masthead() {
    JobSheet.Heading heading = examination.sheet().heading();
    html.open("header").open("div", "class", "masthead");
    html.element("span", "Toothmark", "class", "name");
    html.element("span", Wording.of("page.about"));
    if (!heading.shop().isEmpty()) {
      html.element("span", heading.shop());
    }
    html.open("nav").element("a", Wording.of("page.sheet"), "href", "#customer").close().close();
    html.markup(toothStrip()).close();
  }

  /** A strip of teeth with the gap of the wheel that was found, as a rule under the heading. */
  static String toothStrip() {
    StringBuilder path = new StringBuilder();
    for (int slot = 0; slot < 72; slot++) {
      if (slot % 36 != 35) {
        path.append('M').append(slot * 10 + 2).append(" 12V4h6V12z");
      }
    }
    return "<svg class=\"teeth\" viewBox=\"0 0 720 12\" preserveAspectRatio=\"none\""
        + " aria-hidden=\"true\"><path d=\""
        + path
        + "M0 10.6h720V12H0z\" fill=\"#0072b2\"/></svg>\n";
  }

  private void verdict() {
    JobSheet.Heading heading = examination.sheet().heading();
    html.element("p", captured(), "class", "captured");
    if (!heading.title().isEmpty()) {
      html.element("h1", heading.title());
    }
    html.element("p", examination.diagnosis().verdict(), "class", "verdict");
    if (!examination.diagnosis().nextStep().isEmpty()) {
      html.open("p", "class", "next")
          .element("span", Wording.of("findings.next"), "class", "label");
      html.text(examination.diagnosis().nextStep()).close();
    }
    if (!heading.notes().isEmpty()) {
      html.element("p", heading.notes(), "class", "notes quiet");
    }
  }

  private String captured() {
    Capture capture = examination.observations().capture();
    double rate = examination.observations().edges().quality().sampleRateHz();
    String span = Say.seconds(capture.span().seconds());
    List<String> names = capture.channels().stream().map(Channel::name).toList();
    return capture.file()
        + " · "
        + (rate > 0 ? Wording.of("page.rate", span, Say.scaled(rate, "Sa/s")) : span)
        + " · "
        + Wording.count(names.size(), "page.channels", String.join(", ", names));
  }

  private void pictures() {
    List<PageFigures.Drawn> rest = figures.notYetShown();
    if (!rest.isEmpty()) {
      html.element("h2", Wording.of("page.pictures"), "id", "pictures");
      rest.forEach(d -> figures.show(html, d));
    }
  }

  static String style() {
    try (InputStream css = ReportHtml.class.getResourceAsStream("report.css")) {
      return "\n"
          + face(Lettering.REGULAR)
          + face(Lettering.STRONG)
          + new String(css.readAllBytes(), StandardCharsets.UTF_8);
    } catch (IOException e) {
      throw new IllegalStateException("the style of the report cannot be read", e);
    }
  }

  private static String face(String family) {
    return "@font-face { font-family: \""
        + family
        + "\"; src: url(data:font/woff2;base64,"
        + Base64.getEncoder().encodeToString(Lettering.webFont(family))
        + ") format(\"woff2\"); }\n";
  }
}
