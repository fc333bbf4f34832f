package toothmark.chart;

import java.awt.Color;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.function.Predicate;
import java.util.stream.Stream;
import org.jfree.chart.axis.NumberAxis;
import org.jfree.chart.plot.XYPlot;
import toothmark.chart.LabelsLayer.Label;
import toothmark.chart.LabelsLayer.Place;
import toothmark.examination.Examination;
import toothmark.ignition.CoilTrack;
import toothmark.timing.GapFit;
import toothmark.timing.SparkTiming;
import toothmark.timing.SpeedBand;
import toothmark.timing.Timing;
import toothmark.units.Measured;
import toothmark.units.Say;

/** Advance, actual and commanded, over speed; beneath it the gap between them and its fit. */
final class AdvanceFigure {

  private static final int ADVANCE_HEIGHT = 230;
  private static final int GAP_HEIGHT = 170;

  private final Timing timing;
  private final List<CoilTrack> coils;
  private final Ink ink;

  AdvanceFigure(Examination examination, Ink ink) {
    this.timing = examination.observations().timing();
    this.coils = examination.observations().coils();
    this.ink = ink;
  }

  Optional<Figure> draw() {
    Points actual = points(Value.ACTUAL, List.of(SparkTiming.Standing.values()));
    if (actual.isEmpty()) {
      return Optional.empty();
    }
    NumberAxis speed = Axes.linear(Wording.of("axis.speed"), 50, ink);
    List<XYPlot> plots = new ArrayList<>();
    plots.add(advance(actual));
    boolean compared = !points(Value.GAP, List.of(SparkTiming.Standing.values())).isEmpty();
    if (compared) {
      plots.add(gap());
    }
    return Optional.of(
        new Figure(
            Wording.of("advance.question"),
            answer(),
            Plots.chart(
                compared
                    ? Plots.stack(speed, plots, ADVANCE_HEIGHT, GAP_HEIGHT)
                    : alone(plots.get(0), speed)),
            ADVANCE_HEIGHT + (compared ? GAP_HEIGHT : 0)));
  }

  private static XYPlot alone(XYPlot plot, NumberAxis speed) {
    plot.setDomainAxis(speed);
    return plot;
  }

  private XYPlot advance(Points actual) {
    List<Layer> layers = new ArrayList<>();
    List<Label> labels = new ArrayList<>();
    Points commanded = points(Value.COMMANDED, List.of(SparkTiming.Standing.values()));
    layers.add(marks(commanded, Mark.DOT, 2, ink.thin(ink.commanded(), 0.7)));
    Points means = new Points();
    for (SpeedBand b : timing.bands()) {
      b.commandedDegrees().ifPresent(c -> means.add(b.rpm(), c));
    }
    if (means.size() > 1) {
      layers.add(new CurveLayer(SeriesCurve.through(means), ink.commanded(), Ink.dashed(2)));
    }
    byCoil(Value.ACTUAL, List.of(SparkTiming.Standing.values()), ink.text(), layers);
    label(
        labels,
        commanded.isEmpty() ? means : commanded,
        Wording.of("advance.commanded"),
        Place.ABOVE);
    coils(labels, actual);
    layers.add(
        new LabelsLayer(
            labels, Lettering.regular(12), ink.paper(), List.of(actual, commanded, means)));
    return Plots.plot(null, Axes.linear(Wording.of("axis.advance"), 4, ink), layers, ink);
  }

  private XYPlot gap() {
    List<Layer> layers = new ArrayList<>();
    List<Label> labels = new ArrayList<>();
    Points all = points(Value.GAP, List.of(SparkTiming.Standing.values()));
    timing.gap().ifPresent(fit -> band(fit, layers));
    layers.add(
        new RulesLayer(new double[] {0}, RulesLayer.Way.LEVEL, ink.commanded(), Ink.dashed(2)));
    Points left = points(Value.GAP, List.of(SparkTiming.Standing.REJECTED));
    Points limited = points(Value.GAP, List.of(SparkTiming.Standing.LIMITED));
    byCoil(
        Value.GAP,
        List.of(SparkTiming.Standing.FITTED, SparkTiming.Standing.NOT_COMPARABLE),
        ink.thin(ink.text(), 0.6),
        layers);
    layers.add(marks(left, Mark.CROSS, 6, ink.quiet()));
    layers.add(marks(limited, Mark.HOLLOW, 6, ink.quiet()));
    timing.gap().ifPresent(fit -> line(fit, layers, labels));
    label(labels, left, Wording.of("advance.out"), Place.ABOVE);
    label(labels, limited, Wording.of("advance.limited"), Place.ABOVE);
    layers.add(new LabelsLayer(labels, Lettering.regular(11), ink.paper(), List.of(all)));
    return Plots.plot(null, Axes.linear(Wording.of("axis.gap"), 2, ink), layers, ink);
  }

  /** Each coil's sparks in a shape of their own; dots where there is one coil. */
  private void byCoil(
      Value value, List<SparkTiming.Standing> standings, Color colour, List<Layer> layers) {
    for (int i = 0; i < coils.size(); i++) {
      int coil = i;
      Mark mark = coils.size() == 1 ? Mark.DOT : Mark.coil(i);
      double size = coils.size() == 1 ? 3 : 4.5;
      layers.add(marks(points(value, standings, s -> s.coil() == coil), mark, size, colour));
    }
  }

  /** Names the actual advance, and of several coils each. */
  private void coils(List<Label> labels, Points actual) {
    if (coils.size() == 1) {
      label(labels, actual, Wording.of("advance.actual"), Place.BELOW);
      return;
    }
    for (int i = 0; i < coils.size(); i++) {
      int coil = i;
      Points own =
          points(Value.ACTUAL, List.of(SparkTiming.Standing.values()), s -> s.coil() == coil);
      if (!own.isEmpty()) {
        int at = (int) ((own.size() - 1) * (i + 1.0) / (coils.size() + 1));
        String words = Wording.of("advance.actual.coil", coils.get(i).coil().name());
        labels.add(new Label(own.x(at), own.y(at), words, Place.BELOW, ink.text()));
      }
    }
  }

  private void band(GapFit fit, List<Layer> layers) {
    Points lower = new Points();
    Points upper = new Points();
    for (double rpm : steps(fit)) {
      Measured m = fit.gapAt(rpm);
      double half = Say.EXPAND * m.standardUncertainty();
      lower.add(rpm, m.value() - half);
      upper.add(rpm, m.value() + half);
    }
    layers.add(new BandLayer(lower, upper, ink.thin(ink.trouble(), 0.3)));
  }

  private void line(GapFit fit, List<Layer> layers, List<Label> labels) {
    Points line = new Points();
    for (double rpm : steps(fit)) {
      line.add(rpm, fit.gapAt(rpm).value());
    }
    layers.add(new CurveLayer(SeriesCurve.through(line), ink.trouble(), Ink.line(1.8)));
    int at = line.size() * 4 / 5;
    labels.add(
        new Label(
            line.x(at),
            line.y(at),
            Wording.of("advance.fit", Say.percent(0.95)),
            Place.ABOVE,
            ink.trouble()));
  }

  private static double[] steps(GapFit fit) {
    double[] steps = new double[25];
    for (int i = 0; i < steps.length; i++) {
      steps[i] = fit.fromRpm() + (fit.toRpm() - fit.fromRpm()) * i / (steps.length - 1);
    }
    return steps;
  }

  private Layer marks(Points points, Mark mark, double size, Color colour) {
    return new MarksLayer(points, mark, size, new MarksLayer.Style(colour, ink.paper()));
  }

  private void label(List<Label> labels, Points points, String text, Place place) {
    if (!points.isEmpty()) {
      int i = points.size() / 2;
      labels.add(new Label(points.x(i), points.y(i), text, place, ink.text()));
    }
  }

  private enum Value {
    ACTUAL,
    COMMANDED,
    GAP
  }

  private Points points(Value value, List<SparkTiming.Standing> standings) {
    return points(value, standings, s -> true);
  }

  private Points points(
      Value value, List<SparkTiming.Standing> standings, Predicate<SparkTiming> which) {
    Points points = new Points();
    for (SparkTiming s : timing.sparks()) {
      if (s.spark().crank().isPresent() && standings.contains(s.standing()) && which.test(s)) {
        var degrees =
            switch (value) {
              case ACTUAL -> s.advanceDegrees();
              case COMMANDED -> s.commandedDegrees();
              case GAP -> s.gapDegrees();
            };
        double rpm = s.spark().crank().get().rpm();
        degrees.ifPresent(d -> points.add(rpm, d, s.spark().timeSeconds()));
      }
    }
    return points;
  }

  private String answer() {
    return timing.gap().map(AdvanceFigure::answer).orElseGet(() -> Wording.of("advance.unknown"))
        + (timing.reference() == Timing.Reference.NOMINAL ? Wording.of("advance.told") : "");
  }

  private static String answer(GapFit fit) {
    Optional<Measured> delay = fit.delaySeconds().map(d -> d.times(1e6));
    List<String> parts = new ArrayList<>();
    if (Say.isSeen(fit.offsetDegrees())) {
      parts.add(size(fit.offsetDegrees(), "°", "advance.earlier", "advance.later"));
    }
    if (delay.filter(Say::isSeen).isPresent()) {
      parts.add(size(delay.get(), Say.THIN + "µs", "advance.late", "advance.early"));
    }
    String blind = delay.isEmpty() ? Wording.of("advance.blind") : "";
    return parts.isEmpty()
        ? Wording.of("advance.yes", Say.bound(largest(fit), "°")) + blind
        : Wording.of("advance.no", String.join(Wording.of("advance.and"), parts)) + blind;
  }

  /** The gap at that end of the speeds where it may be larger. */
  private static Measured largest(GapFit fit) {
    return Stream.of(fit.gapAt(fit.fromRpm()), fit.gapAt(fit.toRpm()))
        .max(Comparator.comparingDouble(g -> Math.abs(g.value()) + g.standardUncertainty()))
        .orElseThrow();
  }

  private static String size(Measured m, String unit, String above, String below) {
    Measured size = new Measured(Math.abs(m.value()), m.standardUncertainty());
    return Wording.of(m.value() > 0 ? above : below, Say.interval(size, unit));
  }
}
