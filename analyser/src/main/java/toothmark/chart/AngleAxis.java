package toothmark.chart;

import java.awt.FontMetrics;
import java.awt.Graphics2D;
import java.awt.geom.Rectangle2D;
import java.util.ArrayList;
import java.util.List;
import org.jfree.chart.axis.AxisState;
import org.jfree.chart.axis.NumberAxis;
import org.jfree.chart.axis.NumberTick;
import org.jfree.chart.ui.RectangleEdge;
import org.jfree.chart.ui.TextAnchor;
import toothmark.rotation.AngleTimeline;
import toothmark.units.Say;

/**
 * An axis of time whose figures are crank angles, each where the crank was at that angle; so the
 * picture stays the same and a change of speed shows as a change of the distance between figures.
 */
final class AngleAxis extends NumberAxis {

  private static final long serialVersionUID = 1L;

  private static final double ROOM = 64;

  /** How far beyond the end of the axis there is paper. */
  private static final double BEYOND = 8;

  private static final int HALVINGS = 24;
  private static final int[] STEPS = {1, 2, 5, 10, 30, 90, 180};
  private static final int[] TURNS = {1, 2, 5, 10, 20, 50, 100, 200, 500, 1000, 5000, 20000};

  private final transient Instants turns;
  private final transient int firstTurn;
  private final transient AngleTimeline angle;

  /** Makes the axis from the instants of tooth 1, turn by turn, and the angle between them. */
  AngleAxis(String name, Instants turns, AngleTimeline angle) {
    super(name);
    this.turns = turns;
    this.angle = angle;
    this.firstTurn = turns.size() == 0 ? 0 : Integer.parseInt(turns.word(0));
  }

  @Override
  public List<NumberTick> refreshTicks(
      Graphics2D g, AxisState state, Rectangle2D area, RectangleEdge edge) {
    List<NumberTick> ticks = new ArrayList<>();
    int from = Math.max(0, turns.from(getLowerBound()) - 1);
    int to = Math.min(turns.size() - 1, turns.from(getUpperBound()));
    if (turns.size() < 2 || from >= to) {
      return ticks;
    }
    double perTurn =
        area.getWidth()
            * (turns.times()[to] - turns.times()[from])
            / (to - from)
            / getRange().getLength();
    for (int step : STEPS) {
      if (perTurn * step / 360 >= ROOM) {
        for (int i = from; i < to; i++) {
          within(ticks, i, step);
        }
        return inside(ticks, g, area, edge);
      }
    }
    for (int step : TURNS) {
      if (perTurn * step >= ROOM) {
        for (int i = from; i <= to; i++) {
          if ((firstTurn + i) % step == 0) {
            tick(ticks, turns.times()[i], Wording.of("axis.turn", turns.word(i)));
          }
        }
        return inside(ticks, g, area, edge);
      }
    }
    return ticks;
  }

  /** Without figures that would be cut at the end of the picture. */
  private List<NumberTick> inside(
      List<NumberTick> ticks, Graphics2D g, Rectangle2D area, RectangleEdge edge) {
    FontMetrics m = g.getFontMetrics(getTickLabelFont());
    return ticks.stream()
        .filter(
            t ->
                valueToJava2D(t.getValue(), area, edge) + m.stringWidth(t.getText()) / 2.0
                    <= area.getMaxX() + BEYOND)
        .toList();
  }

  private void within(List<NumberTick> ticks, int turn, int step) {
    double start = turns.times()[turn];
    double end = turns.times()[turn + 1];
    int number = Integer.parseInt(turns.word(turn));
    tick(ticks, start, Wording.of("axis.turn", Integer.toString(number)));
    if (Integer.parseInt(turns.word(turn + 1)) == number + 1) {
      for (int a = step; a < 360; a += step) {
        tick(ticks, timeOf(360.0 * number + a, start, end), Say.number(a, 0) + "°");
      }
    }
  }

  /** When the crank was at an angle, by halving the span of its turn; NaN where it is not known. */
  private double timeOf(double degrees, double start, double end) {
    double low = start;
    double high = end;
    for (int i = 0; i < HALVINGS; i++) {
      double middle = (low + high) / 2;
      if (!angle.covers(middle)) {
        return Double.NaN;
      }
      if (angle.degreesAt(middle) < degrees) {
        low = middle;
      } else {
        high = middle;
      }
    }
    return low;
  }

  private void tick(List<NumberTick> ticks, double time, String word) {
    if (getRange().contains(time)) {
      ticks.add(new NumberTick(time, word, TextAnchor.TOP_CENTER, TextAnchor.TOP_CENTER, 0));
    }
  }
}
