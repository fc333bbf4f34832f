package toothmark.chart;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.jfree.data.Range;
import toothmark.chart.LabelsLayer.Label;
import toothmark.chart.LabelsLayer.Place;
import toothmark.examination.Examination;
import toothmark.receiver.SyncLoss;
import toothmark.rotation.DecodedCrank;
import toothmark.rotation.SpeedTrace;
import toothmark.timing.Limiter;
import toothmark.units.Interval;
import toothmark.units.Say;

/** Speed over time, from tooth to tooth and from turn to turn. */
final class SpeedFigure {

  private static final int HEIGHT = 250;

  private final Examination examination;
  private final Ink ink;

  SpeedFigure(Examination examination, Ink ink) {
    this.examination = examination;
    this.ink = ink;
  }

  Optional<Figure> draw() {
    return examination.observations().crank().map(this::draw);
  }

  private Figure draw(DecodedCrank crank) {
    SpeedTrace speed = crank.speed();
    double[] times = new double[speed.size()];
    double[] rpm = new double[times.length];
    for (int i = 0; i < times.length; i++) {
      times[i] = speed.time(i);
      rpm[i] = speed.rpm(i);
    }
    double longestStep = 60 / Math.max(1, speed.minRpm());
    List<Layer> layers = new ArrayList<>();
    List<Label> labels = new ArrayList<>();
    spans(crank, layers, labels);
    layers.add(
        new CurveLayer(
            new SeriesCurve(times, rpm, longestStep), ink.thin(ink.crank(), 0.5), Ink.line(1)));
    List<Points> shown = List.of(turns(layers, labels), logged(layers, labels));
    flags(layers, labels);
    layers.add(new LabelsLayer(labels, Lettering.regular(11), ink.paper(), shown));
    Range span = Timeline.span(examination);
    return new Figure(
        Wording.of("speed.question"),
        answer(speed),
        Plots.chart(
            Plots.plot(
                Axes.time(span, ink), Axes.linear(Wording.of("axis.speed"), 50, ink), layers, ink)),
        HEIGHT);
  }

  private void spans(DecodedCrank crank, List<Layer> layers, List<Label> labels) {
    List<Interval> undecided = crank.wheel().undecided();
    if (!undecided.isEmpty()) {
      layers.add(new SpansLayer(undecided, ink.thin(ink.trouble(), 0.2)));
      labels.add(upperEdge(undecided.get(0), Wording.of("mark.undecided")));
    }
    List<Limiter> limiters = examination.observations().timing().limiters();
    if (!limiters.isEmpty()) {
      layers.add(
          new SpansLayer(
              limiters.stream().map(Limiter::during).toList(), ink.thin(ink.commanded(), 0.25)));
      labels.add(upperEdge(limiters.get(0).during(), Wording.of("mark.limiter")));
    }
  }

  private Label upperEdge(Interval span, String text) {
    double middle = (span.startInclusive() + span.endExclusive()) / 2;
    return new Label(middle, Double.NaN, text, Place.BELOW, ink.text());
  }

  /** The speed of whole turns, which the places of the teeth cannot touch. */
  private Points turns(List<Layer> layers, List<Label> labels) {
    Points turns = Timeline.turnSpeeds(examination);
    if (turns.size() < 2) {
      return turns;
    }
    double[] xs = new double[turns.size()];
    double[] ys = new double[xs.length];
    double longest = 0;
    for (int i = 0; i < xs.length; i++) {
      xs[i] = turns.x(i);
      ys[i] = turns.y(i);
      longest = Math.max(longest, 60 / ys[i]);
    }
    layers.add(new CurveLayer(new SeriesCurve(xs, ys, 2.5 * longest), ink.text(), Ink.line(1.4)));
    int at = xs.length * 3 / 5;
    labels.add(new Label(xs[at], ys[at], Wording.of("mark.turn"), Place.RIGHT, ink.text()));
    int early = xs.length / 3;
    labels.add(new Label(xs[early], ys[early], Wording.of("mark.tooth"), Place.ABOVE, ink.crank()));
    return turns;
  }

  /** The speeds of the controller's log, where its clock was laid over the capture's. */
  private Points logged(List<Layer> layers, List<Label> labels) {
    Points rows = new Points();
    examination.observations().timing().log().stream()
        .flatMap(l -> l.speeds().stream())
        .forEach(s -> rows.add(s.timeSeconds(), s.rpm()));
    if (!rows.isEmpty()) {
      layers.add(
          new MarksLayer(rows, Mark.HOLLOW, 6, new MarksLayer.Style(ink.commanded(), ink.paper())));
      int at = rows.size() * 4 / 5;
      labels.add(
          new Label(rows.x(at), rows.y(at), Wording.of("mark.log"), Place.RIGHT, ink.text()));
    }
    return rows;
  }

  private void flags(List<Layer> layers, List<Label> labels) {
    Points flags = new Points();
    var angle = examination.observations().crank().orElseThrow().angle();
    for (SyncLoss loss : examination.observations().receiver().losses()) {
      double t = loss.timeSeconds();
      flags.add(t, angle.covers(t) ? angle.rpmAt(t) : loss.rpm());
    }
    if (!flags.isEmpty()) {
      layers.add(
          new MarksLayer(flags, Mark.FLAG, 9, new MarksLayer.Style(ink.trouble(), ink.paper())));
      int last = flags.size() - 1;
      labels.add(
          new Label(
              flags.x(last), flags.y(last), Wording.of("mark.sync"), Place.BELOW, ink.trouble()));
    }
  }

  private static String answer(SpeedTrace speed) {
    return Wording.of(
        "speed.answer",
        Say.number(speed.minRpm(), 0),
        Say.rpm(speed.maxRpm()),
        Say.rpm(speed.meanRpm()));
  }
}
