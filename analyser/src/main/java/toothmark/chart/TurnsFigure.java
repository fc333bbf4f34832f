package toothmark.chart;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.jfree.chart.axis.NumberAxis;
import toothmark.capture.Channel;
import toothmark.chart.LabelsLayer.Label;
import toothmark.chart.LabelsLayer.Place;
import toothmark.examination.Examination;
import toothmark.rotation.AngleTimeline;
import toothmark.rotation.DecodedCrank;
import toothmark.timing.Alignment;
import toothmark.units.CrankAngle;
import toothmark.units.Measured;
import toothmark.units.Say;
import toothmark.wheel.ToothEvents;
import toothmark.wheel.ToothKind;

/** The crank signal of many turns, laid over each other from tooth 1 to tooth 1. */
final class TurnsFigure {

  private static final int HEIGHT = 260;
  private static final int MOST_TURNS = 24;
  private static final int COLUMNS = 720;

  private final Examination examination;
  private final Ink ink;

  TurnsFigure(Examination examination, Ink ink) {
    this.examination = examination;
    this.ink = ink;
  }

  Optional<Figure> draw() {
    Optional<Channel> channel =
        examination.observations().capture().channel(examination.roles().crank());
    Optional<Curve> curve = channel.flatMap(c -> SignalCurve.of(c.signal()));
    Optional<AngleTimeline> angle = examination.observations().crank().map(DecodedCrank::angle);
    List<Double> starts =
        new ArrayList<>(examination.teeth().map(TurnsFigure::starts).orElse(List.of()));
    starts.removeIf(t -> angle.isEmpty() || !angle.get().covers(t));
    return curve.isPresent() && angle.isPresent() && starts.size() > 2
        ? Optional.of(draw(channel.get(), curve.get(), angle.get(), starts))
        : Optional.empty();
  }

  /** When tooth 1 passed, in turns that follow one another. */
  private static List<Double> starts(ToothEvents teeth) {
    List<Double> starts = new ArrayList<>();
    for (int i = 0; i < teeth.size(); i++) {
      if (teeth.kind(i) != ToothKind.STRAY && teeth.tooth(i) == 1) {
        starts.add(teeth.time(i));
      }
    }
    return starts;
  }

  private Figure draw(Channel channel, Curve curve, AngleTimeline angle, List<Double> starts) {
    int turns = starts.size() - 1;
    int shown = Math.min(turns, MOST_TURNS);
    List<Layer> layers = new ArrayList<>();
    for (int k = 0; k < shown; k++) {
      int turn = (int) ((long) k * turns / shown);
      layers.add(
          new CurveLayer(
              turn(curve, angle, starts.get(turn), starts.get(turn + 1)),
              ink.thin(ink.crank(), 0.55),
              Ink.line(0.8)));
    }
    layers.addAll(topDeadCentre());
    NumberAxis across = Axes.linear("degrees after tooth 1", 1, ink);
    across.setRange(0, CrankAngle.REVOLUTION);
    String unit = channel.unit().isEmpty() ? "level" : channel.unit();
    NumberAxis up = Axes.linear(channel.name() + " (" + unit + ")", 1e-9, ink);
    String answer =
        (shown < turns ? shown + " of " + Say.count(turns) : "All " + turns)
            + " turns laid over each other from tooth 1 to tooth 1;"
            + " what differs from turn to turn stands out.";
    return new Figure(
        "Does every turn look the same?",
        answer,
        Plots.chart(Plots.plot(across, up, layers, ink)),
        HEIGHT);
  }

  /** One turn over its angle. */
  private static Curve turn(Curve curve, AngleTimeline angle, double from, double to) {
    Points points = new Points();
    double zero = angle.degreesAt(from);
    curve.trace(
        from,
        to,
        COLUMNS,
        new Curve.Line() {
          @Override
          public void moveTo(double x, double y) {
            if (angle.covers(x)) {
              points.add(angle.degreesAt(x) - zero, y);
            }
          }

          @Override
          public void lineTo(double x, double y) {
            moveTo(x, y);
          }
        });
    return SeriesCurve.through(points);
  }

  private List<Layer> topDeadCentre() {
    Optional<Measured> tooth1 =
        examination.observations().timing().alignment().flatMap(Alignment::tooth1BtdcDegrees);
    if (tooth1.isEmpty()) {
      return List.of();
    }
    double at = CrankAngle.wrap(tooth1.get().value());
    return List.of(
        new RulesLayer(new double[] {at}, RulesLayer.Way.UPRIGHT, ink.tdc(), Ink.line(1.6)),
        new LabelsLayer(
            List.of(new Label(at, Double.NaN, "TDC", Place.BELOW, ink.tdc())),
            Lettering.regular(11),
            ink.paper()));
  }
}
