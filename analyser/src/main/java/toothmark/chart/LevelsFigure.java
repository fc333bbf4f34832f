package toothmark.chart;

import java.util.ArrayList;
import java.util.List;
import org.jfree.data.Range;
import toothmark.chart.LabelsLayer.Label;
import toothmark.chart.LabelsLayer.Place;
import toothmark.receiver.LevelWindow;
import toothmark.units.Say;

/** With which fixed levels a record would have been followed without a loss. */
final class LevelsFigure {

  private static final int AXIS = 56;
  private static final int LANE = 26;
  private static final double GROUND = 0.25;
  private static final String VOLTS = Say.THIN + "V";

  private final LevelWindow window;
  private final Ink ink;

  LevelsFigure(LevelWindow window, Ink ink) {
    this.window = window;
    this.ink = ink;
  }

  Figure draw() {
    List<String> names = new ArrayList<>();
    List<Layer> layers = new ArrayList<>();
    List<Label> labels = new ArrayList<>();
    int rows = window.thresholdsVolts().size();
    for (int t = rows - 1; t >= 0; t--) {
      names.add(volts(window.thresholdsVolts().get(t)) + VOLTS);
      for (int h = 0; h < window.hysteresesVolts().size(); h++) {
        cell(t, h, layers, labels);
      }
    }
    layers.add(new LabelsLayer(labels, Lettering.regular(10), ink.paper()));
    List<Double> across = window.hysteresesVolts();
    Range span = new Range(across.get(0), across.get(across.size() - 1));
    return new Figure(
        Wording.of("levels.question"),
        answer(),
        Plots.chart(
            Plots.plot(
                Axes.ratios(Wording.of("axis.hysteresis"), span, ink),
                Axes.lanes(names, ink),
                layers,
                ink)),
        AXIS + LANE * rows);
  }

  /** A coloured cell where nothing is lost, else the number of losses; a dash where it is deaf. */
  private void cell(int t, int h, List<Layer> layers, List<Label> labels) {
    LevelWindow.Cell c = window.cell(t, h);
    double x = window.hysteresesVolts().get(h);
    if (c.clear()) {
      double half = Math.sqrt(2);
      layers.add(
          new BandLayer(
              line(x / half, x * half, t - 0.5),
              line(x / half, x * half, t + 0.5),
              ink.thin(ink.crank(), GROUND)));
    } else {
      String text = c.losses() > 0 ? Say.count(c.losses()) : "–";
      labels.add(new Label(x, t - 0.35, text, Place.ABOVE, ink.quiet()));
    }
  }

  private static Points line(double from, double to, double y) {
    Points points = new Points();
    points.add(from, y);
    points.add(to, y);
    return points;
  }

  private String answer() {
    int middle = window.thresholdsVolts().size() / 2;
    List<Integer> clear = window.clearAt(middle);
    String legend = " " + Wording.of("levels.legend");
    if (clear.isEmpty()) {
      boolean any = window.cells().stream().anyMatch(LevelWindow.Cell::clear);
      return Wording.of(any ? "levels.elsewhere" : "levels.none") + legend;
    }
    return Wording.of(
            "levels.answer",
            volts(window.hysteresesVolts().get(clear.get(0))),
            volts(window.hysteresesVolts().get(clear.get(clear.size() - 1))) + VOLTS)
        + legend;
  }

  private static String volts(double volts) {
    return Say.number(volts, Math.abs(volts) < 0.0995 ? 3 : 2);
  }
}
