package toothmark.chart;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import toothmark.examination.Examination;
import toothmark.rotation.DecodedCrank;
import toothmark.units.Say;
import toothmark.wheel.ToothGeometry;

/** The wheel as its signal shows it: the place and the strength of each tooth. */
final class WheelFigure {

  private static final int HEIGHT = 360;

  private final Examination examination;
  private final Ink ink;

  WheelFigure(Examination examination, Ink ink) {
    this.examination = examination;
    this.ink = ink;
  }

  Optional<Figure> draw() {
    return examination.observations().crank().map(this::draw);
  }

  private Figure draw(DecodedCrank crank) {
    OddTeeth odd = OddTeeth.of(crank.wheel().geometry());
    return new Figure(
        "Is any tooth out of place or weak?",
        answer(crank.wheel().geometry(), odd),
        Plots.chart(new WheelPlot(examination, crank.wheel(), odd, ink)),
        HEIGHT);
  }

  private static String answer(ToothGeometry g, OddTeeth odd) {
    if (g.turns() == 0) {
      return "The capture is too short to tell; the wheel is drawn as it should be.";
    }
    if (odd.teeth().isEmpty()) {
      return "No: all teeth pass within "
          + Say.degrees(odd.largestEven())
          + " of their place, over "
          + g.turns()
          + " turns.";
    }
    List<String> parts = new ArrayList<>();
    for (int tooth : odd.teeth().subList(0, Math.min(3, odd.teeth().size()))) {
      parts.add(
          "tooth "
              + tooth
              + " passes "
              + Say.degrees(Math.abs(g.offsetDegrees(tooth)))
              + (g.offsetDegrees(tooth) > 0 ? " late" : " early")
              + " with a signal of "
              + Say.percent(g.amplitude(tooth)));
    }
    int more = odd.teeth().size() - parts.size();
    return "Yes: "
        + String.join("; ", parts)
        + (more > 0 ? "; and " + more + " more" : "")
        + ". The others lie within "
        + Say.degrees(odd.largestEven())
        + ".";
  }
}
