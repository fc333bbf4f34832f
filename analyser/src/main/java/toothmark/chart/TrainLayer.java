package toothmark.chart;

import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.geom.Path2D;
import java.util.List;

/**
 * Marks of a long train of events at one height; looks only at those in view, and draws one mark
 * where several fall on one place.
 *
 * @param events when
 * @param height of the marks in the unit of the axis; NaN for the upper edge
 * @param drop lines from the marks down the plot
 */
record TrainLayer(Instants events, double height, Look look, Drop drop) implements Layer {

  /** How a mark is drawn, and how close together marks may stand before they are left out. */
  record Look(Mark mark, double size, Color colour, Color paper, Crowd crowd) {}

  /** What happens where marks stand too close to be told apart. */
  enum Crowd {
    /** One stands for several: none may go unseen. */
    THIN,
    /** All are left out: they are the usual thing. */
    HIDE
  }

  /** Whether a line runs from a mark. */
  enum Drop {
    /** None. */
    NONE,
    /** A dashed one over the whole plot; marks at the upper edge leave room for numbers there. */
    DASHED
  }

  private static final double TOP = 9;
  private static final double BELOW_NUMBERS = 25;

  @Override
  public void paint(Graphics2D g, Frame frame) {
    int from = events.from(frame.fromX());
    int to = events.from(Math.nextUp(frame.toX()));
    double room = frame.area().getWidth() / Math.max(1, to - from);
    if (from >= to || look.crowd == Crowd.HIDE && room < look.size * 1.4) {
      return;
    }
    double below = drop == Drop.DASHED ? BELOW_NUMBERS : TOP;
    double y = Double.isNaN(height) ? frame.area().getMinY() + below : frame.y(height);
    List<double[]> places = events.places(frame.fromX(), frame.toX(), frame::x, y, look.size / 3);
    if (drop == Drop.DASHED) {
      lines(g, frame, places);
    }
    look.mark.draw(g, places, look.size, look.colour, look.paper);
  }

  private void lines(Graphics2D g, Frame frame, List<double[]> places) {
    Path2D path = new Path2D.Double();
    for (double[] p : places) {
      path.moveTo(p[0], frame.area().getMinY());
      path.lineTo(p[0], frame.area().getMaxY());
    }
    g.setPaint(look.colour);
    g.setStroke(Ink.dashed(1));
    g.draw(path);
  }
}
