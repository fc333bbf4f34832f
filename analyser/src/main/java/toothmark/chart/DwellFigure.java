package toothmark.chart;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import toothmark.chart.LabelsLayer.Label;
import toothmark.chart.LabelsLayer.Place;
import toothmark.examination.Examination;
import toothmark.ignition.CoilTrack;
import toothmark.ignition.Spark;
import toothmark.units.Say;

/** How long each coil charged, over speed. */
final class DwellFigure {

  private static final int HEIGHT = 220;

  private final List<CoilTrack> coils;
  private final Ink ink;

  DwellFigure(Examination examination, Ink ink) {
    this.coils = examination.observations().coils();
    this.ink = ink;
  }

  Optional<Figure> draw() {
    List<Layer> layers = new ArrayList<>();
    List<Label> labels = new ArrayList<>();
    for (int i = 0; i < coils.size(); i++) {
      Points points = points(coils.get(i));
      if (!points.isEmpty()) {
        Mark mark = i % 2 == 0 ? Mark.DOT : Mark.TRIANGLE;
        layers.add(
            new MarksLayer(points, mark, 4.5, new MarksLayer.Style(ink.coil(i), ink.paper())));
        int at = (int) ((points.size() - 1) * (i + 1.0) / (coils.size() + 1));
        labels.add(
            new Label(
                points.x(at),
                points.y(at),
                coils.get(i).coil().name(),
                i % 2 == 0 ? Place.ABOVE : Place.BELOW,
                ink.text()));
      }
    }
    if (layers.isEmpty()) {
      return Optional.empty();
    }
    layers.add(new LabelsLayer(labels, Lettering.regular(11), ink.paper()));
    return Optional.of(
        new Figure(
            Wording.of("dwell.question"),
            answer(),
            Plots.chart(
                Plots.plot(
                    Axes.linear(Wording.of("axis.speed"), 50, ink),
                    Axes.linear(Wording.of("axis.dwell"), 0.5, ink),
                    layers,
                    ink)),
            HEIGHT));
  }

  private static Points points(CoilTrack coil) {
    Points points = new Points();
    for (Spark s : coil.sparks()) {
      OptionalDouble dwell = s.dwellSeconds();
      if (dwell.isPresent() && s.crank().isPresent() && s.turn() == Spark.Turn.FIRST) {
        points.add(s.crank().get().rpm(), 1e3 * dwell.getAsDouble(), s.timeSeconds());
      }
    }
    return points;
  }

  private String answer() {
    List<String> parts = new ArrayList<>();
    for (CoilTrack c : coils) {
      c.dwell()
          .ifPresent(
              d ->
                  parts.add(
                      Wording.of("dwell.coil", c.coil().name(), Say.seconds(d.meanSeconds()))));
    }
    return Wording.of("dwell.answer", String.join(", ", parts));
  }
}
