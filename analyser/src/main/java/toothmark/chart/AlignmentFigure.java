package toothmark.chart;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.jfree.data.Range;
import toothmark.chart.LabelsLayer.Label;
import toothmark.chart.LabelsLayer.Place;
import toothmark.examination.Examination;
import toothmark.timing.Alignment;
import toothmark.timing.AlignmentPoint;
import toothmark.units.Measured;
import toothmark.units.Say;

/**
 * The angle from tooth 1 to top dead centre at each reading, against what the controller is told.
 */
final class AlignmentFigure {

  private static final int HEIGHT = 210;

  private final Examination examination;
  private final Ink ink;

  AlignmentFigure(Examination examination, Ink ink) {
    this.examination = examination;
    this.ink = ink;
  }

  Optional<Figure> draw() {
    return examination
        .observations()
        .timing()
        .alignment()
        .filter(a -> !a.points().isEmpty())
        .map(this::draw);
  }

  private Figure draw(Alignment a) {
    Points kept = points(a, AlignmentPoint.Use.KEPT);
    Points rejected = points(a, AlignmentPoint.Use.REJECTED);
    Range span = Timeline.span(examination);
    List<Layer> layers = new ArrayList<>();
    List<Label> labels = new ArrayList<>();
    a.tooth1BtdcDegrees().ifPresent(m -> measured(m, span, layers, labels));
    a.nominalDegrees().ifPresent(n -> nominal(n, span, layers, labels));
    layers.add(new MarksLayer(kept, Mark.DOT, 3.5, new MarksLayer.Style(ink.text(), ink.paper())));
    layers.add(
        new MarksLayer(rejected, Mark.CROSS, 6, new MarksLayer.Style(ink.quiet(), ink.paper())));
    layers.add(new LabelsLayer(labels, Lettering.regular(11), ink.paper()));
    return new Figure(
        Wording.of("alignment.question"),
        answer(a),
        Plots.chart(
            Plots.plot(
                Axes.time(span, ink), Axes.linear(Wording.of("axis.tooth1"), 2, ink), layers, ink)),
        HEIGHT);
  }

  private void measured(Measured m, Range span, List<Layer> layers, List<Label> labels) {
    double half = Say.EXPAND * m.standardUncertainty();
    layers.add(
        new BandLayer(
            level(span, m.value() - half),
            level(span, m.value() + half),
            ink.thin(ink.tdc(), 0.3)));
    labels.add(
        new Label(
            span.getCentralValue(),
            m.value(),
            Wording.of("alignment.measured", Say.degrees(m)),
            Place.ABOVE,
            ink.text()));
  }

  private void nominal(double n, Range span, List<Layer> layers, List<Label> labels) {
    layers.add(
        new RulesLayer(new double[] {n}, RulesLayer.Way.LEVEL, ink.commanded(), Ink.dashed(2)));
    labels.add(
        new Label(
            span.getCentralValue(),
            n,
            Wording.of("alignment.told", Axes.figures().format(n)),
            Place.BELOW,
            ink.text()));
  }

  private static Points level(Range span, double value) {
    Points p = new Points();
    p.add(span.getLowerBound(), value);
    p.add(span.getUpperBound(), value);
    return p;
  }

  private static Points points(Alignment a, AlignmentPoint.Use use) {
    Points p = new Points();
    for (AlignmentPoint point : a.points()) {
      if (point.used() == use) {
        p.add(point.timeSeconds(), point.tooth1BtdcDegrees());
      }
    }
    return p;
  }

  private static String answer(Alignment a) {
    if (a.slip().isPresent()) {
      return Wording.of(
          "alignment.moved",
          Say.degrees(a.slip().get().degrees()),
          Say.at(a.slip().get().during().startInclusive()),
          Say.at(a.slip().get().during().endExclusive()));
    }
    if (a.errorDegrees().isEmpty()) {
      return Wording.of("alignment.unknown");
    }
    Measured error = a.errorDegrees().get();
    if (!Say.isSeen(error)) {
      return Wording.of("alignment.yes", Say.bound(error, "°"));
    }
    return Wording.of(error.value() > 0 ? "alignment.early" : "alignment.late", Say.degrees(error));
  }
}
