package toothmark.report;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import toothmark.chart.Figure;
import toothmark.chart.Figures;
import toothmark.chart.Ink;
import toothmark.examination.Examination;
import toothmark.examination.LossAnatomy;
import toothmark.findings.Finding;
import toothmark.units.Interval;
import toothmark.units.Say;

/** Each loss of the reference receiver: when, where, and what happened to the signal there. */
final class LossesSection {

  private static final int MOST_ROWS = 20;
  private static final int MOST_PICTURES = 3;
  private static final int MOST_NAMED = 4;

  private final List<LossAnatomy> losses;
  private final Set<String> findings;
  private final List<Figure> pictures = new ArrayList<>();

  private LossesSection(Examination examination) {
    this.losses = LossAnatomy.of(examination);
    this.findings =
        examination.diagnosis().findings().stream().map(Finding::id).collect(Collectors.toSet());
    Figures figures = Figures.of(examination, Ink.LIGHT);
    Set<String> drawn = new LinkedHashSet<>();
    for (LossAnatomy l : losses) {
      if (drawn.size() < MOST_PICTURES && drawn.add(l.cause())) {
        double t = l.loss().timeSeconds();
        figures.waveform(new Interval(t, t)).ifPresent(pictures::add);
      }
    }
  }

  static LossesSection of(Examination examination) {
    return new LossesSection(examination);
  }

  /** The signal at the first loss of each of the first causes. */
  List<Figure> pictures() {
    return pictures;
  }

  void write(HtmlWriter html, PageFigures figures) {
    if (losses.isEmpty()) {
      return;
    }
    html.element("h2", "Where sync is lost", "id", "losses");
    html.open("div", "class", "scroll").open("table").open("tr");
    List.of("Time", "Tooth", "Speed", "What the receiver heard", "Put down to")
        .forEach(h -> html.element("th", h));
    html.close();
    losses.stream().limit(MOST_ROWS).forEach(l -> row(html, l));
    html.close().close();
    if (losses.size() > MOST_ROWS) {
      html.element(
          "p",
          Say.count(losses.size() - MOST_ROWS) + " more in sync-losses.csv.",
          "class",
          "small quiet");
    }
    pictures.forEach(p -> figures.show(html, p));
  }

  private void row(HtmlWriter html, LossAnatomy l) {
    html.open("tr").element("td", Say.at(l.loss().timeSeconds()));
    html.element("td", l.tooth().isPresent() ? Integer.toString(l.tooth().getAsInt()) : "–");
    html.element("td", Say.rpm(l.loss().rpm())).element("td", heard(l));
    html.open("td");
    String cause = l.cause().isEmpty() ? "nothing found" : l.cause().replace('-', ' ');
    if (findings.contains(l.cause())) {
      html.element("a", cause, "href", "#" + l.cause());
    } else {
      html.text(cause);
    }
    html.close().close();
  }

  private static String heard(LossAnatomy l) {
    List<String> parts = new ArrayList<>();
    if (l.strays() > 0) {
      parts.add(l.strays() == 1 ? "a stray edge" : l.strays() + " stray edges");
    }
    if (!l.unheard().isEmpty()) {
      parts.add("not " + teeth(l.unheard()) + ", which gave an edge");
    }
    if (!l.silent().isEmpty()) {
      parts.add(teeth(l.silent()) + " gave no edge");
    }
    return parts.isEmpty() ? "every tooth, unevenly spaced" : String.join("; ", parts);
  }

  private static String teeth(List<Integer> numbers) {
    if (numbers.size() > MOST_NAMED) {
      return numbers.size() + " teeth from tooth " + numbers.get(0) + " on";
    }
    return (numbers.size() == 1 ? "tooth " : "teeth ")
        + String.join(", ", numbers.stream().map(String::valueOf).toList());
  }
}
