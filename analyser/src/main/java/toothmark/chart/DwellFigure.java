package toothmark.chart;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.jfree.chart.plot.XYPlot;
import toothmark.chart.LabelsLayer.Label;
import toothmark.chart.LabelsLayer.Place;
import toothmark.examination.Examination;
import toothmark.ignition.CoilTrack;
import toothmark.ignition.Spark;
import toothmark.units.Say;

/** How long each coil charged, over speed, and for which share of the time. */
final class DwellFigure {

  private static final int HEIGHT = 300;
  private static final int DWELL_HEIGHT = 3;
  private static final int DUTY_HEIGHT = 2;

  private final List<CoilTrack> coils;
  private final Ink ink;

  DwellFigure(Examination examination, Ink ink) {
    this.coils = examination.observations().coils();
    this.ink = ink;
  }

  Optional<Figure> draw() {
    XYPlot dwell = plot("axis.dwell", 0.5, (c, s) -> scaled(s.dwellSeconds(), 1e3));
    if (dwell.getDatasetCount() == 0) {
      return Optional.empty();
    }
    XYPlot duty = plot("axis.duty", 5, (c, s) -> scaled(c.duty(s), 1e2));
    return Optional.of(
        new Figure(
            Wording.of("dwell.question"),
            answer(),
            Plots.chart(
                Plots.stack(
                    Axes.linear(Wording.of("axis.speed"), 50, ink),
                    List.of(dwell, duty),
                    DWELL_HEIGHT,
                    DUTY_HEIGHT)),
            HEIGHT));
  }

  /** What is drawn of a coil's spark. */
  private interface Value {
    OptionalDouble of(CoilTrack coil, Spark spark);
  }

  private static OptionalDouble scaled(OptionalDouble value, double by) {
    return value.isPresent() ? OptionalDouble.of(by * value.getAsDouble()) : value;
  }

  /** One value of all coils over speed; without layers where none has it. */
  private XYPlot plot(String axis, double leastSpan, Value value) {
    List<Layer> layers = new ArrayList<>();
    List<Label> labels = new ArrayList<>();
    List<Points> all = new ArrayList<>();
    for (int i = 0; i < coils.size(); i++) {
      Points points = points(coils.get(i), value);
      if (!points.isEmpty()) {
        all.add(points);
        layers.add(
            new MarksLayer(
                points, Mark.coil(i), 6, new MarksLayer.Style(ink.coil(i), ink.paper())));
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
    if (!layers.isEmpty()) {
      layers.add(new LabelsLayer(labels, Lettering.regular(11), ink.paper(), all));
    }
    return Plots.plot(null, Axes.linear(Wording.of(axis), leastSpan, ink), layers, ink);
  }

  private static Points points(CoilTrack coil, Value value) {
    Points points = new Points();
    for (Spark s : coil.sparks()) {
      OptionalDouble v = value.of(coil, s);
      if (v.isPresent() && s.crank().isPresent() && s.turn() == Spark.Turn.FIRST) {
        points.add(s.crank().get().rpm(), v.getAsDouble(), s.timeSeconds());
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
                      c.duties().getCount() == 0
                          ? Wording.of("dwell.alone", c.coil().name(), Say.seconds(d.meanSeconds()))
                          : Wording.of(
                              "dwell.coil",
                              c.coil().name(),
                              Say.seconds(d.meanSeconds()),
                              Say.percent(c.duties().getMax()))));
    }
    return Wording.of("dwell.answer", String.join(", ", parts));
  }
}
