package toothmark.chart;

import java.awt.Color;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import org.jfree.chart.axis.NumberAxis;
import org.jfree.chart.axis.ValueAxis;
import org.jfree.chart.plot.XYPlot;
import org.jfree.data.Range;
import toothmark.capture.Channel;
import toothmark.chart.LabelsLayer.Label;
import toothmark.chart.LabelsLayer.Place;
import toothmark.edges.SensorKind;
import toothmark.edges.SignalQuality;
import toothmark.examination.Examination;
import toothmark.receiver.SyncLoss;
import toothmark.timing.AlignmentPoint;
import toothmark.timing.SparkTiming;
import toothmark.units.Interval;
import toothmark.units.Say;
import toothmark.wheel.ToothEvents;
import toothmark.wheel.ToothKind;

/** The crank signal of a few turns, its teeth numbered, the coils at work beneath it. */
final class WaveformFigure {

  private static final int HEIGHT = 260;
  private static final int LANE = 26;

  /** Excerpts to each side whose teeth are marked: zoomed out as far they are one smear. */
  private static final double REACH = 200;

  private final Examination examination;
  private final Ink ink;

  WaveformFigure(Examination examination, Ink ink) {
    this.examination = examination;
    this.ink = ink;
  }

  Optional<Figure> draw(Interval excerpt) {
    Optional<Channel> channel =
        examination.observations().capture().channel(examination.roles().crank());
    return excerpt.seconds() > 0 && channel.isPresent()
        ? Optional.of(draw(channel.get(), excerpt))
        : Optional.empty();
  }

  private Figure draw(Channel channel, Interval excerpt) {
    double decade = Math.pow(10, Math.floor(Math.log10(excerpt.seconds())));
    double zero = Math.floor(excerpt.startInclusive() / decade) * decade;
    NumberAxis time =
        Axes.excerpt(new Range(excerpt.startInclusive(), excerpt.endExclusive()), zero, ink);
    List<SparkTiming> sparks = sparksIn(excerpt);
    XYPlot signal = signal(channel, excerpt, sparks);
    int coils = examination.observations().coils().size();
    String question =
        Wording.of(
            "waveform.question", Say.at((excerpt.startInclusive() + excerpt.endExclusive()) / 2));
    if (sparks.isEmpty()) {
      signal.setDomainAxis(time);
      return new Figure(question, answer(excerpt), Plots.chart(signal), HEIGHT);
    }
    int lanes = 14 + LANE * coils;
    return new Figure(
        question,
        answer(excerpt),
        Plots.chart(Plots.stack(time, List.of(signal, coils(sparks)), HEIGHT - 50, lanes)),
        HEIGHT + lanes);
  }

  private XYPlot signal(Channel channel, Interval excerpt, List<SparkTiming> sparks) {
    List<Layer> layers = new ArrayList<>();
    for (SparkTiming s : sparks) {
      layers.add(
          upright(new double[] {s.spark().timeSeconds()}, ink.coil(s.coil()), Ink.dashed(1)));
    }
    double[] tdc = tdcTimes();
    if (tdc.length > 0) {
      layers.add(upright(tdc, ink.tdc(), Ink.line(1.6)));
    }
    Optional<Curve> curve = SignalCurve.of(channel.signal());
    curve.ifPresent(c -> layers.add(new CurveLayer(c, ink.crank(), Ink.line(1.3))));
    double level = crossingLevel();
    List<Label> labels = new ArrayList<>();
    teeth(layers, labels, level, excerpt);
    losses(layers, labels, level);
    for (double t : tdc) {
      labels.add(new Label(t, Double.NaN, Wording.of("mark.tdc"), Place.BELOW, ink.tdc()));
    }
    layers.add(new LabelsLayer(labels, Lettering.regular(11), ink.paper()));
    return Plots.plot(null, upAxis(channel, curve, excerpt), layers, ink);
  }

  private static Layer upright(double[] at, Color colour, java.awt.Stroke stroke) {
    return new RulesLayer(at, RulesLayer.Way.UPRIGHT, colour, stroke);
  }

  private ValueAxis upAxis(Channel channel, Optional<Curve> curve, Interval excerpt) {
    if (curve.isEmpty()) {
      ValueAxis axis = Axes.lanes(List.of(Wording.of("axis.edges")), ink);
      axis.setRange(-1, 1.3);
      return axis;
    }
    String unit = channel.unit().isEmpty() ? Wording.of("axis.level") : channel.unit();
    NumberAxis axis = Axes.linear(Wording.of("axis.unit", channel.name(), unit), 1e-9, ink);
    Range r = curve.get().up(excerpt.startInclusive(), excerpt.endExclusive());
    double room = Math.max(r.getLength(), 1e-9);
    axis.setRange(r.getLowerBound() - 0.06 * room, r.getUpperBound() + 0.2 * room);
    return axis;
  }

  /** The level at which a tooth is timed: the mean of a wave, half way between two levels. */
  private double crossingLevel() {
    SignalQuality q = examination.observations().edges().quality();
    return switch (examination.observations().edges().kind()) {
      case VARIABLE_RELUCTANCE -> q.offset();
      case HALL -> (q.low() + q.high()) / 2;
      case EDGES_ONLY -> 0;
    };
  }

  private void teeth(List<Layer> layers, List<Label> labels, double level, Interval excerpt) {
    if (examination.teeth().isEmpty()) {
      return;
    }
    ToothEvents teeth = examination.teeth().get();
    List<Label> plain = new ArrayList<>();
    int step = step(teeth, excerpt);
    for (ToothKind kind : ToothKind.values()) {
      Points points = new Points();
      for (int i = 0; i < teeth.size(); i++) {
        if (teeth.kind(i) == kind && isNear(teeth.time(i), excerpt)) {
          points.add(teeth.time(i), level);
          if (kind != ToothKind.SEEN || NumbersLayer.isNumbered(teeth.tooth(i), step)) {
            label(teeth, i, kind == ToothKind.SEEN ? plain : labels);
          }
        }
      }
      layers.add(new MarksLayer(points, mark(kind), kind == ToothKind.SEEN ? 5 : 9, style(kind)));
    }
    plain.stream().filter(l -> l.text().equals("1")).forEach(labels::add);
    labels.addAll(plain);
  }

  /** Numbers at even steps, as many as have room where the figure is as wide as it is laid out. */
  private static int step(ToothEvents teeth, Interval excerpt) {
    long there =
        IntStream.range(0, teeth.size())
            .filter(i -> teeth.kind(i) != ToothKind.STRAY && excerpt.contains(teeth.time(i)))
            .count();
    return NumbersLayer.step((double) Figure.WIDTH / Math.max(1, there)).orElse(Integer.MAX_VALUE);
  }

  private static boolean isNear(double time, Interval excerpt) {
    double reach = REACH * excerpt.seconds();
    return time > excerpt.startInclusive() - reach && time < excerpt.endExclusive() + reach;
  }

  private void label(ToothEvents teeth, int i, List<Label> labels) {
    String text =
        switch (teeth.kind(i)) {
          case SEEN -> Integer.toString(teeth.tooth(i));
          case MISSING -> Wording.of("mark.missing", Integer.toString(teeth.tooth(i)));
          case STRAY -> Wording.of("mark.stray");
        };
    Color colour = teeth.kind(i) == ToothKind.SEEN ? ink.quiet() : ink.trouble();
    labels.add(new Label(teeth.time(i), Double.NaN, text, Place.BELOW, colour));
  }

  private static Mark mark(ToothKind kind) {
    return switch (kind) {
      case SEEN -> Mark.DOT;
      case MISSING -> Mark.HOLLOW;
      case STRAY -> Mark.CROSS;
    };
  }

  private MarksLayer.Style style(ToothKind kind) {
    return new MarksLayer.Style(kind == ToothKind.SEEN ? ink.text() : ink.trouble(), ink.paper());
  }

  private void losses(List<Layer> layers, List<Label> labels, double level) {
    Points flags = new Points();
    for (SyncLoss loss : examination.observations().receiver().losses()) {
      flags.add(loss.timeSeconds(), level);
      labels.add(
          new Label(
              loss.timeSeconds(), level, Wording.of("mark.sync"), Place.BELOW, ink.trouble()));
    }
    layers.add(
        new MarksLayer(flags, Mark.FLAG, 12, new MarksLayer.Style(ink.trouble(), ink.paper())));
  }

  private double[] tdcTimes() {
    return examination.observations().timing().alignment().stream()
        .flatMap(a -> a.points().stream())
        .mapToDouble(AlignmentPoint::timeSeconds)
        .toArray();
  }

  private List<SparkTiming> sparksIn(Interval excerpt) {
    return examination.observations().timing().sparks().stream()
        .filter(s -> excerpt.contains(s.spark().timeSeconds()))
        .toList();
  }

  private XYPlot coils(List<SparkTiming> sparks) {
    List<String> names =
        examination.observations().coils().stream().map(t -> t.coil().name()).toList();
    List<Layer> layers = new ArrayList<>();
    for (int coil = 0; coil < names.size(); coil++) {
      Points starts = new Points();
      Points ends = new Points();
      double lane = names.size() - 1.0 - coil;
      for (SparkTiming s : sparks) {
        if (s.coil() == coil) {
          double fired = s.spark().timeSeconds();
          starts.add(s.spark().chargeStartSeconds().orElse(fired), lane);
          ends.add(fired, lane);
        }
      }
      layers.add(new BarsLayer(starts, ends, 9, ink.coil(coil)));
      layers.add(
          new MarksLayer(ends, Mark.coil(coil), 9, new MarksLayer.Style(ink.text(), ink.paper())));
    }
    XYPlot plot = Plots.plot(null, Axes.lanes(names, ink), layers, ink);
    plot.setRangeGridlinesVisible(false);
    return plot;
  }

  private String answer(Interval excerpt) {
    int[] counts = new int[ToothKind.values().length];
    examination
        .teeth()
        .ifPresent(
            teeth -> {
              for (int i = 0; i < teeth.size(); i++) {
                if (excerpt.contains(teeth.time(i))) {
                  counts[teeth.kind(i).ordinal()]++;
                }
              }
            });
    long losses =
        examination.observations().receiver().losses().stream()
            .filter(l -> excerpt.contains(l.timeSeconds()))
            .count();
    boolean wave = examination.observations().edges().kind() == SensorKind.VARIABLE_RELUCTANCE;
    return Wording.of(
            "waveform.answer",
            Wording.count(counts[0], "waveform.seen"),
            Wording.count(counts[1], "waveform.missing"),
            Wording.count(counts[2], "waveform.stray"),
            Wording.count(losses, "waveform.sync"))
        + (wave && counts[0] > 0 ? Wording.of("waveform.dots") : "");
  }
}
