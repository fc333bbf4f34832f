package toothmark.chart;

import java.awt.Color;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.BooleanSupplier;
import java.util.stream.DoubleStream;
import java.util.stream.IntStream;
import org.jfree.chart.axis.NumberAxis;
import toothmark.capture.Channel;
import toothmark.chart.LabelsLayer.Label;
import toothmark.chart.LabelsLayer.Place;
import toothmark.examination.Examination;
import toothmark.timing.Alignment;
import toothmark.units.CrankAngle;
import toothmark.units.Measured;
import toothmark.units.Say;

/** A signal laid over itself by one turn or one cycle of the crank, all of them at once. */
final class TurnsFigure {

  private static final int HEIGHT = 260;

  private final Examination examination;
  private final Fold fold;
  private final Ink ink;

  TurnsFigure(Examination examination, Fold fold, Ink ink) {
    this.examination = examination;
    this.fold = fold;
    this.ink = ink;
  }

  /** Draws a channel; empty where fewer than two turns or cycles of it were decoded. */
  Optional<Figure> draw(Channel channel, BooleanSupplier cancelled) {
    return CrankTurns.of(examination, channel, fold)
        .filter(t -> t.size() > 1)
        .map(
            t ->
                draw(t, new TraceLayers(Optional.of(examination), ink).colour(channel), cancelled));
  }

  private Figure draw(CrankTurns all, Color colour, BooleanSupplier cancelled) {
    List<Layer> layers = new ArrayList<>(List.of(FoldLayer.of(all, fold, colour, ink, cancelled)));
    layers.addAll(topDeadCentre());
    NumberAxis across = Axes.linear(Wording.of("axis.angle"), 1, ink);
    across.setRange(0, fold.degrees());
    NumberAxis up = Axes.linear(all.nameAndUnit(), 1e-9, ink);
    return new Figure(
        Wording.of("turns.question." + fold),
        Wording.of("turns.answer." + fold, Say.count(all.size())),
        Plots.chart(Plots.plot(across, up, layers, ink)),
        HEIGHT);
  }

  private List<Layer> topDeadCentre() {
    Optional<Measured> tooth1 =
        examination.observations().timing().alignment().flatMap(Alignment::tooth1BtdcDegrees);
    if (tooth1.isEmpty()) {
      return List.of();
    }
    double first = CrankAngle.wrap(tooth1.get().value());
    double[] all =
        IntStream.range(0, fold.turns())
            .mapToDouble(turn -> first + turn * CrankAngle.REVOLUTION)
            .toArray();
    List<Label> labels =
        DoubleStream.of(all)
            .mapToObj(
                at -> new Label(at, Double.NaN, Wording.of("mark.tdc"), Place.BELOW, ink.tdc()))
            .toList();
    return List.of(
        new RulesLayer(all, RulesLayer.Way.UPRIGHT, ink.tdc(), Ink.line(1.6)),
        new LabelsLayer(labels, Lettering.regular(11), ink.paper()));
  }
}
