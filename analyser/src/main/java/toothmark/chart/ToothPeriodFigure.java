package toothmark.chart;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.jfree.data.Range;
import toothmark.chart.LabelsLayer.Label;
import toothmark.chart.LabelsLayer.Place;
import toothmark.examination.Examination;
import toothmark.wheel.ToothEvents;
import toothmark.wheel.ToothKind;
import toothmark.wheel.WheelPattern;

/** Time from each edge to the next, on an axis of ratios, so that the gap stands clear. */
final class ToothPeriodFigure {

  private static final int HEIGHT = 260;

  private final Examination examination;
  private final Ink ink;
  private final Points even = new Points();
  private final Points gap = new Points();
  private final Points missing = new Points();
  private final Points stray = new Points();

  ToothPeriodFigure(Examination examination, Ink ink) {
    this.examination = examination;
    this.ink = ink;
  }

  Optional<Figure> draw() {
    if (examination.teeth().isEmpty() || examination.observations().crank().isEmpty()) {
      return Optional.empty();
    }
    sort(examination.teeth().get(), examination.observations().crank().get().wheel().pattern());
    Optional<Range> span =
        List.of(even, gap, missing, stray).stream()
            .map(Points::up)
            .flatMap(Optional::stream)
            .reduce(Range::combine);
    return span.map(this::draw);
  }

  private Figure draw(Range span) {
    List<Layer> layers = new ArrayList<>();
    layers.add(marks(even, Mark.DOT, 2.2, ink.thin(ink.crank(), 0.7)));
    layers.add(marks(gap, Mark.DOT, 3, ink.text()));
    layers.add(marks(missing, Mark.HOLLOW, 7, ink.trouble()));
    layers.add(marks(stray, Mark.CROSS, 7, ink.trouble()));
    layers.add(
        new LabelsLayer(
            labels(), Lettering.regular(11), ink.paper(), List.of(even, gap, missing, stray)));
    return new Figure(
        Wording.of("period.question"),
        answer(),
        Plots.chart(
            Plots.plot(
                Axes.time(Timeline.span(examination), ink),
                Axes.ratios(Wording.of("axis.period"), span, ink),
                layers,
                ink)),
        HEIGHT);
  }

  private void sort(ToothEvents teeth, WheelPattern wheel) {
    int last = -1;
    boolean lost = false;
    for (int i = 0; i < teeth.size(); i++) {
      if (teeth.kind(i) == ToothKind.MISSING) {
        lost = true;
        continue;
      }
      if (last >= 0 && teeth.time(i) > teeth.time(last)) {
        double milliseconds = (teeth.time(i) - teeth.time(last)) * 1e3;
        if (teeth.kind(i) == ToothKind.STRAY || teeth.kind(last) == ToothKind.STRAY) {
          stray.add(teeth.time(i), milliseconds);
        } else if (lost) {
          missing.add(teeth.time(i), milliseconds);
        } else {
          (opensAfterGap(wheel, teeth.tooth(i)) ? gap : even).add(teeth.time(i), milliseconds);
        }
      }
      last = i;
      lost = false;
    }
  }

  private static boolean opensAfterGap(WheelPattern wheel, int tooth) {
    int before = tooth == 1 ? wheel.teeth() : tooth - 1;
    double step = wheel.degreesAfterTooth1(tooth) - wheel.degreesAfterTooth1(before);
    return (step < 0 ? step + 360 : step) > 1.5 * wheel.pitchDegrees();
  }

  private Layer marks(Points points, Mark mark, double size, java.awt.Color colour) {
    return new MarksLayer(points, mark, size, new MarksLayer.Style(colour, ink.paper()));
  }

  private List<Label> labels() {
    List<Label> labels = new ArrayList<>();
    label(labels, stray, Wording.of("mark.strays"), Place.BELOW);
    label(labels, missing, Wording.of("mark.lost"), Place.ABOVE);
    label(labels, gap, Wording.of("mark.gap"), Place.ABOVE);
    label(labels, even, Wording.of("mark.tooth"), Place.BELOW);
    return labels;
  }

  private void label(List<Label> labels, Points points, String text, Place place) {
    if (!points.isEmpty()) {
      int i = points.size() / 2;
      labels.add(new Label(points.x(i), points.y(i), text, place, ink.text()));
    }
  }

  private String answer() {
    List<String> parts = new ArrayList<>();
    if (!missing.isEmpty()) {
      parts.add(Wording.count(missing.size(), "period.missing"));
    }
    if (!stray.isEmpty()) {
      parts.add(Wording.count(stray.size(), "period.stray"));
    }
    return parts.isEmpty()
        ? Wording.of("period.yes")
        : Wording.of("period.no", String.join(Wording.of("period.and"), parts));
  }
}
