package toothmark.report;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.IdentityHashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.IntStream;
import toothmark.chart.Figure;
import toothmark.chart.Figures;
import toothmark.chart.Ink;
import toothmark.examination.Examination;
import toothmark.findings.Finding;
import toothmark.findings.Picture;

/**
 * The figures of one page: each drawn once, shown beside the first finding that it proves and
 * pointed to from others.
 */
final class PageFigures {

  private final List<Drawn> all;
  private final Map<Finding, Drawn> proofs;
  private final Set<String> shown = new HashSet<>();

  private PageFigures(List<Drawn> all, Map<Finding, Drawn> proofs) {
    this.all = all;
    this.proofs = proofs;
  }

  /** A figure with its place in the page and its markup. */
  record Drawn(String id, Figure figure, String svg) {

    String drawingId() {
      return id + "-" + FigureSvg.DRAWING;
    }
  }

  /**
   * Draws what the page needs: the proofs first, then the figures that every page has.
   *
   * @param examination what was found
   * @param more figures that sections of the page show
   */
  static PageFigures of(Examination examination, List<Figure> more) {
    Figures figures = Figures.of(examination, Ink.LIGHT);
    Map<String, Figure> wanted = new LinkedHashMap<>();
    Map<Finding, String> questions = new IdentityHashMap<>();
    for (Finding finding : examination.diagnosis().findings()) {
      figures
          .draw(finding)
          .ifPresent(
              figure -> {
                wanted.putIfAbsent(figure.question(), figure);
                questions.put(finding, figure.question());
              });
    }
    for (Figure figure : figures.overview()) {
      wanted.putIfAbsent(figure.question(), figure);
    }
    boolean waveform = questions.keySet().stream().anyMatch(f -> f.picture() == Picture.WAVEFORM);
    if (!waveform) {
      figures.draw(Picture.WAVEFORM).ifPresent(f -> wanted.putIfAbsent(f.question(), f));
    }
    more.forEach(f -> wanted.putIfAbsent(f.question(), f));
    List<Drawn> drawn = draw(List.copyOf(wanted.values()));
    Map<Finding, Drawn> proofs = new IdentityHashMap<>();
    for (Map.Entry<Finding, String> e : questions.entrySet()) {
      drawn.stream()
          .filter(d -> d.figure().question().equals(e.getValue()))
          .findFirst()
          .ifPresent(d -> proofs.put(e.getKey(), d));
    }
    return new PageFigures(new ArrayList<>(drawn), proofs);
  }

  /** Figures that prove no finding. */
  static PageFigures of(List<Figure> figures) {
    return new PageFigures(new ArrayList<>(draw(figures)), Map.of());
  }

  /** Each figure has its own document and its own ids, so they can be drawn side by side. */
  private static List<Drawn> draw(List<Figure> figures) {
    return IntStream.range(0, figures.size())
        .parallel()
        .mapToObj(i -> draw(i, figures.get(i)))
        .toList();
  }

  private static Drawn draw(int index, Figure figure) {
    String id = "picture-" + (index + 1);
    return new Drawn(id, figure, FigureSvg.of(figure, id + "-"));
  }

  /** One more that a section of the page shows, unless it is there already. */
  void add(Figure figure) {
    if (all.stream().noneMatch(d -> d.figure().question().equals(figure.question()))) {
      all.add(draw(all.size(), figure));
    }
  }

  /** The figure that proves a finding. */
  Optional<Drawn> proof(Finding finding) {
    return Optional.ofNullable(proofs.get(finding));
  }

  /** The figure whose drawing bears an id. */
  Drawn drawn(String drawingId) {
    return all.stream().filter(d -> d.drawingId().equals(drawingId)).findFirst().orElseThrow();
  }

  boolean isShown(Drawn drawn) {
    return shown.contains(drawn.id());
  }

  List<Drawn> notYetShown() {
    List<Drawn> rest = new ArrayList<>(all);
    rest.removeIf(this::isShown);
    return rest;
  }

  /** Writes one of the figures that sections of the page show, unless it stands above already. */
  void show(HtmlWriter html, Figure figure) {
    all.stream()
        .filter(d -> d.figure().question().equals(figure.question()) && !isShown(d))
        .findFirst()
        .ifPresent(d -> show(html, d));
  }

  /** Writes a figure with its question and answer. */
  void show(HtmlWriter html, Drawn drawn) {
    shown.add(drawn.id());
    html.open("figure", "id", drawn.id()).open("figcaption");
    html.element("h3", drawn.figure().question());
    html.element("p", drawn.figure().answer()).close();
    html.open("div", "class", "chart").markup(drawn.svg()).close().close();
  }
}
