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
    html.element("h2", Wording.of("losses"), "id", "losses");
    html.open("div", "class", "scroll").open("table").open("tr");
    List.of("time", "tooth", "speed", "heard", "cause")
        .forEach(h -> html.element("th", Wording.of("losses.head." + h)));
    html.close();
    losses.stream().limit(MOST_ROWS).forEach(l -> row(html, l));
    html.close().close();
    if (losses.size() > MOST_ROWS) {
      html.element(
          "p",
          Wording.of("losses.more", Say.count(losses.size() - MOST_ROWS)),
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
    String cause = l.cause().isEmpty() ? Wording.of("losses.unexplained") : Finding.name(l.cause());
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
      parts.add(Wording.count(l.strays(), "losses.strays"));
    }
    if (!l.unheard().isEmpty()) {
      parts.add(Wording.of("losses.unheard", teeth(l.unheard())));
    }
    if (!l.silent().isEmpty()) {
      parts.add(Wording.of("losses.silent", teeth(l.silent())));
    }
    return parts.isEmpty() ? Wording.of("losses.uneven") : String.join("; ", parts);
  }

  private static String teeth(List<Integer> numbers) {
    if (numbers.size() > MOST_NAMED) {
      return Wording.of("losses.teeth.from", numbers.size(), numbers.get(0));
    }
    return Wording.count(
        numbers.size(),
        "losses.teeth",
        String.join(", ", numbers.stream().map(String::valueOf).toList()));
  }
}
