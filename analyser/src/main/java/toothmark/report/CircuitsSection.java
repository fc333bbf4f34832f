package toothmark.report;

import java.util.List;
import java.util.Optional;
import java.util.concurrent.CompletableFuture;
import toothmark.chart.Figure;
import toothmark.chart.Figures;
import toothmark.chart.Ink;
import toothmark.examination.Examination;
import toothmark.examination.InputReplay;
import toothmark.examination.InputReplay.ToothMargin;
import toothmark.receiver.Conditioner;
import toothmark.receiver.ConditionerReplay.Result;

/** What other input circuits would have made of the record; only where the reference lost count. */
final class CircuitsSection {

  private final Optional<CompletableFuture<Figure>> levels;
  private final Optional<CompletableFuture<List<Result>>> results;
  private final Optional<CompletableFuture<List<ToothMargin>>> margins;

  private CircuitsSection(Optional<InputReplay> replay) {
    this.levels =
        replay.map(r -> CompletableFuture.supplyAsync(() -> Figures.levels(r.sweep(), Ink.LIGHT)));
    this.results =
        replay.map(r -> CompletableFuture.supplyAsync(() -> r.play(Conditioner.usual())));
    this.margins = replay.map(r -> CompletableFuture.supplyAsync(r::armingMargins));
  }

  static CircuitsSection of(Examination examination) {
    boolean lost = !examination.observations().receiver().losses().isEmpty();
    return new CircuitsSection(lost ? InputReplay.of(examination) : Optional.empty());
  }

  /** The figure of the section, for those who draw them all. */
  Optional<Figure> levels() {
    return levels.map(CompletableFuture::join);
  }

  void write(HtmlWriter html, PageFigures figures) {
    results.ifPresent(r -> write(html, r.join()));
    levels().ifPresent(f -> figures.show(html, f));
  }

  private void write(HtmlWriter html, List<Result> results) {
    html.element("h2", Wording.of("circuits"), "id", "circuits");
    html.element("p", Wording.of("circuits.meaning"));
    html.open("div", "class", "scroll")
        .open("table")
        .open("tr")
        .element("th", Wording.of("circuits.circuit"));
    CircuitsText.HEADS.forEach(
        h -> html.element("th", Wording.of("circuits.head." + h), "class", "right"));
    html.close();
    for (Result r : results) {
      html.open("tr").element("td", r.conditioner().description());
      CircuitsText.counts(r).forEach(c -> html.element("td", c, "class", "right"));
      html.close();
    }
    html.close().close();
    html.element(
        "p", Wording.of("circuits.arming", CircuitsText.margin(margins.orElseThrow().join())));
  }
}
