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
        Wording.of("wheel.question"),
        answer(crank.wheel().geometry(), odd),
        Plots.chart(new WheelPlot(examination, crank.wheel(), odd, ink)),
        HEIGHT);
  }

  private static String answer(ToothGeometry g, OddTeeth odd) {
    if (g.turns() == 0) {
      return Wording.of("wheel.short");
    }
    if (odd.teeth().isEmpty()) {
      return Wording.of("wheel.no", Say.degrees(odd.largestEven()), Integer.toString(g.turns()));
    }
    List<String> parts = new ArrayList<>();
    for (int tooth : odd.teeth().subList(0, Math.min(3, odd.teeth().size()))) {
      parts.add(
          Wording.of(
              g.offsetDegrees(tooth) > 0 ? "wheel.late" : "wheel.early",
              Integer.toString(tooth),
              Say.degrees(Math.abs(g.offsetDegrees(tooth))),
              Say.percent(g.amplitude(tooth))));
    }
    int more = odd.teeth().size() - parts.size();
    return Wording.of(
        more > 0 ? "wheel.more" : "wheel.yes",
        String.join("; ", parts),
        Say.degrees(odd.largestEven()),
        Integer.toString(more));
  }
}
