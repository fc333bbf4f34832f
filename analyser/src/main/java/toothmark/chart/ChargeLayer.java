package toothmark.chart;

import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.geom.Rectangle2D;

/**
 * Spans in which a coil charges, shaded over the height of its plot while they can be told apart.
 */
final class ChargeLayer implements Layer {

  private static final double NARROWEST = 1.5;

  private final double[] starts;
  private final double[] ends;
  private final Instants byEnd;
  private final Color colour;

  ChargeLayer(Points starts, Points ends, Color colour) {
    this.starts = new double[starts.size()];
    this.ends = new double[ends.size()];
    for (int i = 0; i < this.starts.length; i++) {
      this.starts[i] = starts.x(i);
      this.ends[i] = ends.x(i);
    }
    this.byEnd = Instants.of(this.ends);
    this.colour = colour;
  }

  @Override
  public void paint(Graphics2D g, Frame frame) {
    int from = byEnd.from(frame.fromX());
    int to = Math.min(ends.length, byEnd.from(frame.toX()) + 1);
    if (to - from > frame.area().getWidth() / NARROWEST / 2) {
      return;
    }
    g.setPaint(colour);
    for (int i = from; i < to; i++) {
      double a = frame.x(Math.max(frame.fromX(), starts[i]));
      double b = frame.x(Math.min(frame.toX(), ends[i]));
      if (b - a >= 0) {
        g.fill(
            new Rectangle2D.Double(
                a, frame.area().getY(), Math.max(NARROWEST, b - a), frame.area().getHeight()));
      }
    }
  }
}
