package toothmark.report;

import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import toothmark.findings.Diagnosis;
import toothmark.findings.Finding;
import toothmark.findings.Severity;
import toothmark.units.Interval;
import toothmark.units.Say;

/** The findings by rank, each beside the picture that proves it. */
final class FindingsSection {

  private static final int MOST_PLACES = 6;

  private final HtmlWriter html;
  private final PageFigures figures;

  FindingsSection(HtmlWriter html, PageFigures figures) {
    this.html = html;
    this.figures = figures;
  }

  void write(Diagnosis diagnosis) {
    if (!diagnosis.findings().isEmpty()) {
      html.element("h2", Wording.of("findings"), "id", "findings");
      diagnosis.findings().forEach(this::finding);
    }
  }

  private void finding(Finding f) {
    Optional<PageFigures.Drawn> proof = figures.proof(f);
    boolean here = proof.filter(d -> !figures.isShown(d)).isPresent();
    html.open("section", "class", here ? "finding pictured" : "finding", "id", f.id());
    html.open("div");
    html.open("div", "class", "keep");
    badge(html, f.severity());
    html.element("span", Wording.sure(f.probability()), "class", "sure");
    html.element("h3", f.title()).close();
    list(f.evidence());
    marked("do", Wording.of("findings.next"), f.nextTest());
    marked("caution", Wording.of("findings.care"), f.caution());
    told(Wording.of("findings.against"), f.against());
    told(Wording.of("findings.apart"), f.toldApartFrom());
    where(f.where());
    if (!here) {
      proof.ifPresent(this::pointTo);
    }
    html.close();
    if (here) {
      figures.show(html, proof.get());
    }
    html.close();
  }

  private void pointTo(PageFigures.Drawn d) {
    html.open("p", "class", "small quiet").text(Wording.of("findings.see"));
    html.element("a", d.figure().question(), "href", "#" + d.id()).close();
  }

  private void list(List<String> evidence) {
    if (!evidence.isEmpty()) {
      html.open("ul");
      evidence.forEach(s -> html.element("li", s));
      html.close();
    }
  }

  private void marked(String role, String label, String text) {
    if (!text.isEmpty()) {
      html.open("p", "class", role).element("span", label, "class", "label").text(text).close();
    }
  }

  private void told(String label, List<String> sentences) {
    if (!sentences.isEmpty()) {
      html.open("p", "class", "small quiet").element("span", label, "class", "label");
      html.text(String.join(" ", sentences)).close();
    }
  }

  private void where(List<Interval> where) {
    if (where.isEmpty()) {
      return;
    }
    String shown =
        where.stream()
                .limit(MOST_PLACES)
                .map(FindingsSection::place)
                .collect(Collectors.joining(", "))
            + Say.THIN
            + "s";
    told(
        Wording.of("findings.where"),
        List.of(
            where.size() > MOST_PLACES
                ? Wording.of("findings.more", shown, where.size() - MOST_PLACES)
                : shown));
  }

  private static String place(Interval i) {
    String start = Say.number(i.startInclusive(), 3);
    return i.seconds() < 5e-4
        ? start
        : Wording.of("findings.span", start, Say.number(i.endExclusive(), 3));
  }

  /** Severity as a word and a shape: square, triangle or circle. */
  static void badge(HtmlWriter html, Severity severity) {
    String shape =
        switch (severity) {
          case FAULT -> "<path d=\"M1 1h10v10H1z\"/>";
          case WATCH -> "<path d=\"M6 0l6 12H0z\"/>";
          case NOTE -> "<circle cx=\"6\" cy=\"6\" r=\"5.5\"/>";
        };
    html.open("span", "class", "badge " + severity.label());
    html.markup("<svg viewBox=\"0 0 12 12\" aria-hidden=\"true\">" + shape + "</svg>");
    html.text(Wording.capital(Wording.severity(severity.label()))).close();
  }
}
