package toothmark.report;

import java.util.List;
import java.util.Optional;
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
      html.element("h2", "Findings", "id", "findings");
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
    html.element("span", Say.sure(f.probability()), "class", "sure");
    html.element("h3", f.title()).close();
    list(f.evidence());
    marked("do", "Next: ", f.nextTest());
    marked("caution", "Take care: ", f.caution());
    told("Against it: ", f.against());
    told("Told apart: ", f.toldApartFrom());
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
    html.open("p", "class", "small quiet").text("See ");
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
    StringBuilder s = new StringBuilder();
    for (Interval i : where.subList(0, Math.min(MOST_PLACES, where.size()))) {
      s.append(s.length() == 0 ? "" : ", ").append(Say.number(i.startInclusive(), 3));
      if (i.seconds() >= 5e-4) {
        s.append(" to ").append(Say.number(i.endExclusive(), 3));
      }
    }
    s.append(Say.THIN).append('s');
    if (where.size() > MOST_PLACES) {
      s.append(" and ").append(where.size() - MOST_PLACES).append(" more");
    }
    told("Where: ", List.of(s.toString()));
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
    String word = severity.label();
    html.text(Character.toUpperCase(word.charAt(0)) + word.substring(1)).close();
  }
}
