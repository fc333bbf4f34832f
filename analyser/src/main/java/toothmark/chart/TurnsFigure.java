package toothmark.chart;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.jfree.chart.axis.NumberAxis;
import toothmark.chart.LabelsLayer.Label;
import toothmark.chart.LabelsLayer.Place;
import toothmark.examination.Examination;
import toothmark.timing.Alignment;
import toothmark.units.CrankAngle;
import toothmark.units.Measured;
import toothmark.units.Say;

/** The crank signal of many turns, laid over each other from tooth 1 to tooth 1. */
final class TurnsFigure {

  private static final int HEIGHT = 260;
  private static final int MOST_TURNS = 24;

  private final Examination examination;
  private final Ink ink;

  TurnsFigure(Examination examination, Ink ink) {
    this.examination = examination;
    this.ink = ink;
  }

  Optional<Figure> draw() {
    return CrankTurns.of(examination).filter(t -> t.size() > 1).map(this::draw);
  }

  private Figure draw(CrankTurns all) {
    int turns = all.size();
    int shown = Math.min(turns, MOST_TURNS);
    List<Layer> layers = new ArrayList<>();
    for (int k = 0; k < shown; k++) {
      int turn = (int) ((long) k * turns / shown);
      layers.add(
          new CurveLayer(
              SeriesCurve.through(all.turn(turn)), ink.thin(ink.crank(), 0.55), Ink.line(0.8)));
    }
    layers.addAll(topDeadCentre());
    NumberAxis across = Axes.linear(Wording.of("axis.angle"), 1, ink);
    across.setRange(0, CrankAngle.REVOLUTION);
    NumberAxis up = Axes.linear(all.nameAndUnit(), 1e-9, ink);
    String answer =
        shown < turns
            ? Wording.of("turns.some", Integer.toString(shown), Say.count(turns))
            : Wording.of("turns.all", Integer.toString(turns));
    return new Figure(
        Wording.of("turns.question"),
        answer,
        Plots.chart(Plots.plot(across, up, layers, ink)),
        HEIGHT);
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
            List.of(new Label(at, Double.NaN, Wording.of("mark.tdc"), Place.BELOW, ink.tdc())),
            Lettering.regular(11),
            ink.paper()));
  }
}
