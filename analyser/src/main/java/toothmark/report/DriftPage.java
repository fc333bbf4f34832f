package toothmark.report;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.function.Function;
import toothmark.compare.Change;
import toothmark.compare.Course;
import toothmark.compare.Drift;
import toothmark.compare.RecordedExamination;
import toothmark.compare.RecordedFinding;
import toothmark.compare.Visit;
import toothmark.units.Measured;
import toothmark.units.Say;

/** A drift as one page: each figure over the examinations, and when each finding was there. */
public final class DriftPage {

  /** The page's file. */
  public static final String FILE = "drift.html";

  private static final int WIDTH = 300;
  private static final int HEIGHT = 64;
  private static final int MARGIN = 14;

  private final Drift drift;
  private final HtmlWriter html = SidePage.open(Wording.of("drift.title"));

  private DriftPage(Drift drift) {
    this.drift = drift;
  }

  /**
   * Writes the page whole or not at all.
   *
   * @param drift what to show
   * @param folder made when missing; an earlier page in it is replaced
   * @return the page
   * @throws IOException if it could not be written
   */
  public static Path write(Drift drift, Path folder) throws IOException {
    String page = new DriftPage(drift).page();
    return WholeFile.write(folder.resolve(FILE), page.getBytes(StandardCharsets.UTF_8));
  }

  private String page() {
    html.element("p", DriftText.verdict(drift), "class", "verdict");
    html.element("h2", Wording.of("measures"));
    html.element(
        "p", Wording.of(drift.isTimed() ? "drift.bars" : "drift.bars.even"), "class", "quiet");
    html.open("div", "class", "scroll").open("table").open("tr");
    html.element("th", "").element("th", Wording.of("drift.first")).element("th", "");
    html.element("th", Wording.of("drift.last")).element("th", "");
    html.close();
    drift.courses().forEach(this::figure);
    html.close().close();
    findings();
    html.element("h2", Wording.of("index.title"));
    html.element("p", DriftText.order(drift), "class", "quiet");
    html.open("div", "class", "scroll").open("table");
    List<String> labels = drift.labels();
    for (int i = 0; i < labels.size(); i++) {
      RecordedExamination e = drift.visits().get(i).examination();
      html.open("tr").element("td", labels.get(i), "class", "figure");
      html.element("td", e.name()).element("td", e.verdict()).close();
    }
    html.close().close();
    return SidePage.close(html);
  }

  private void figure(Course c) {
    html.open("tr").element("td", c.name());
    html.element("td", value(c, Change::before), "class", "figure");
    html.open("td").markup(chart(c)).close();
    html.element("td", value(c, Change::after), "class", "figure");
    html.element("td", DriftText.outcome(c)).close();
  }

  private static String value(Course c, Function<Change, Optional<Measured>> end) {
    return c.overall().map(o -> ComparisonText.value(end.apply(o), c.unit())).orElse("");
  }

  private void findings() {
    if (drift.findings().isEmpty()) {
      return;
    }
    html.element("h2", Wording.of("findings"));
    html.open("div", "class", "scroll").open("table").open("tr").element("th", "");
    drift.labels().forEach(label -> html.element("th", label));
    html.close();
    for (RecordedFinding f : drift.findings()) {
      html.open("tr").element("td", f.title());
      for (Visit v : drift.visits()) {
        html.open("td");
        severity(v, f)
            .ifPresent(s -> html.element("span", Wording.severity(s), "class", "badge " + s));
        html.close();
      }
      html.close();
    }
    html.close().close();
  }

  private static Optional<String> severity(Visit v, RecordedFinding finding) {
    return v.examination().findings().stream()
        .filter(f -> f.id().equals(finding.id()))
        .map(RecordedFinding::severity)
        .findFirst();
  }

  /** The values with their intervals, on one scale. */
  private String chart(Course c) {
    List<Measured> known = c.values().stream().flatMap(Optional::stream).toList();
    double low = known.stream().mapToDouble(m -> m.value() - half(m)).min().orElse(0);
    double high = known.stream().mapToDouble(m -> m.value() + half(m)).max().orElse(0);
    double scale = (HEIGHT - 2.0 * MARGIN) / Math.max(high - low, 1e-9);
    List<Double> places = drift.places();
    StringBuilder svg = new StringBuilder();
    svg.append("<svg role=\"img\" aria-label=\"")
        .append(Wording.of("drift.chart"))
        .append("\" viewBox=\"0 0 ");
    svg.append(WIDTH).append(' ').append(HEIGHT).append("\" width=\"").append(WIDTH);
    svg.append("\" height=\"").append(HEIGHT).append("\">");
    for (int i = 0; i < c.values().size(); i++) {
      double x = MARGIN + places.get(i) * (WIDTH - 2.0 * MARGIN);
      c.values().get(i).ifPresent(m -> svg.append(mark(m, x, high, scale)));
    }
    return svg.append("</svg>").toString();
  }

  private static String mark(Measured m, double x, double high, double scale) {
    double y = MARGIN + (high - m.value()) * scale;
    double half = half(m) * scale;
    return String.format(
        Locale.ROOT,
        "<path d=\"M%.1f %.1fV%.1f\" stroke=\"#0072b2\" stroke-width=\"2\"/>"
            + "<circle cx=\"%.1f\" cy=\"%.1f\" r=\"4\" fill=\"#0072b2\"/>",
        x,
        y - half,
        y + half,
        x,
        y);
  }

  private static double half(Measured m) {
    return Say.EXPAND * m.standardUncertainty();
  }
}
