package toothmark.report;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Stream;
import toothmark.chart.Figure;
import toothmark.compare.Change;
import toothmark.compare.Comparison;
import toothmark.compare.RecordedExamination;
import toothmark.compare.RecordedFinding;
import toothmark.units.Measured;
import toothmark.units.Say;

/**
 * A comparison as one page: findings that went, stayed and came, both captures laid over each
 * other, and each figure twice.
 */
public final class ComparisonPage {

  /** The page's file. */
  public static final String FILE = "compare.html";

  private static final int WIDTH = 320;
  private static final int MARGIN = 12;

  private final Comparison comparison;
  private final List<Figure> curves;
  private final List<String> bare;
  private final HtmlWriter html = SidePage.open(Wording.of("compare.title"));

  private ComparisonPage(Comparison comparison, List<Figure> curves, List<String> bare) {
    this.comparison = comparison;
    this.curves = curves;
    this.bare = bare;
  }

  /**
   * Writes the page whole or not at all.
   *
   * @param comparison what to show
   * @param curves both captures laid over each other
   * @param bare those of the two whose results hold less than is drawn of others, by name
   * @param folder made when missing; an earlier page in it is replaced
   * @return the page
   * @throws IOException if it could not be written
   */
  public static Path write(
      Comparison comparison, List<Figure> curves, List<String> bare, Path folder)
      throws IOException {
    String page = new ComparisonPage(comparison, curves, bare).page();
    return WholeFile.write(folder.resolve(FILE), page.getBytes(StandardCharsets.UTF_8));
  }

  private String page() {
    html.element("p", ComparisonText.verdict(comparison), "class", "verdict");
    ComparisonText.counted(comparison).ifPresent(s -> html.element("p", s));
    capture("compare.before", comparison.before());
    capture("compare.after", comparison.after());
    html.element("h2", Wording.of("findings"));
    if (comparison.gone().isEmpty() && comparison.after().findings().isEmpty()) {
      html.element("p", Wording.of("compare.none"), "class", "quiet");
    }
    findings("compare.head.gone", comparison.gone());
    findings("compare.head.come", comparison.come());
    findings("compare.head.graver", comparison.graver());
    findings("compare.head.milder", comparison.milder());
    findings("compare.head.stayed", comparison.stayed());
    curves();
    figures();
    return SidePage.close(html);
  }

  private void capture(String when, RecordedExamination e) {
    html.open("p").element("span", Wording.of(when) + ": ", "class", "label");
    html.text(e.name() + ". " + e.verdict()).close();
  }

  private void findings(String key, List<RecordedFinding> findings) {
    if (findings.isEmpty()) {
      return;
    }
    html.element("h3", Wording.of(key)).open("ul");
    for (RecordedFinding f : findings) {
      html.open("li")
          .element("span", Wording.severity(f.severity()), "class", "badge " + f.severity());
      html.text(" " + f.title() + ComparisonText.regraded(comparison, f)).close();
    }
    html.close();
  }

  private void curves() {
    html.element("h2", Wording.of("compare.curves"));
    bare.forEach(name -> html.element("p", Wording.of("compare.curves.bare", name)));
    if (curves.isEmpty()) {
      html.element("p", Wording.of("compare.curves.none"), "class", "quiet");
      return;
    }
    html.element("p", Wording.of("compare.curves.key"), "class", "quiet");
    PageFigures drawn = PageFigures.of(curves);
    drawn.notYetShown().forEach(d -> drawn.show(html, d));
  }

  private void figures() {
    html.element("h2", Wording.of("measures"));
    html.element("p", Wording.of("compare.bars"), "class", "quiet");
    html.open("div", "class", "scroll").open("table").open("tr");
    html.element("th", "").element("th", Wording.of("compare.before"));
    html.element("th", Wording.of("compare.after")).element("th", "");
    html.element("th", Wording.of("compare.change"));
    html.close();
    comparison.changes().forEach(this::row);
    html.close().close();
  }

  private void row(Change c) {
    html.open("tr").element("td", c.name());
    html.element("td", ComparisonText.value(c.before(), c.unit()), "class", "figure");
    html.element("td", ComparisonText.value(c.after(), c.unit()), "class", "figure");
    html.open("td").markup(pair(c)).close();
    html.element("td", ComparisonText.outcome(c)).close();
  }

  /** Both values with their intervals on one scale. */
  private static String pair(Change c) {
    List<Measured> both = Stream.of(c.before(), c.after()).flatMap(Optional::stream).toList();
    double low = both.stream().mapToDouble(m -> m.value() - half(m)).min().orElse(0);
    double high = both.stream().mapToDouble(m -> m.value() + half(m)).max().orElse(0);
    double scale = (WIDTH - 2 * MARGIN) / Math.max(high - low, 1e-9);
    StringBuilder svg = new StringBuilder();
    svg.append("<svg role=\"img\" aria-label=\"" + Wording.of("compare.pair") + "\" viewBox=\"0 0 ")
        .append(WIDTH);
    svg.append(" 32\" width=\"").append(WIDTH).append("\" height=\"32\">");
    c.before().ifPresent(m -> svg.append(bar(m, low, scale, 10, "#59636e")));
    c.after().ifPresent(m -> svg.append(bar(m, low, scale, 22, "#0072b2")));
    return svg.append("</svg>").toString();
  }

  private static String bar(Measured m, double low, double scale, int y, String colour) {
    double x = MARGIN + (m.value() - low) * scale;
    double half = half(m) * scale;
    return String.format(
        Locale.ROOT,
        "<path d=\"M%.1f %dH%.1f\" stroke=\"%s\" stroke-width=\"2\"/>"
            + "<circle cx=\"%.1f\" cy=\"%d\" r=\"4\" fill=\"%s\"/>",
        x - half,
        y,
        x + half,
        colour,
        x,
        y,
        colour);
  }

  private static double half(Measured m) {
    return Say.EXPAND * m.standardUncertainty();
  }
}
