package toothmark.chart;

import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.Stroke;
import java.awt.geom.Path2D;
import java.util.Optional;
import org.jfree.data.Range;

/** Straight lines across the whole plot at given values. */
record RulesLayer(double[] values, Way way, Color colour, Stroke stroke) implements Layer {

  /** Which way the lines run. */
  enum Way {
    /** At values of the axis across. */
    UPRIGHT,
    /** At values of the axis upwards. */
    LEVEL
  }

  @Override
  public Optional<Range> up() {
    if (way == Way.UPRIGHT) {
      return Optional.empty();
    }
    Points p = new Points();
    for (double v : values) {
      p.add(0, v);
    }
    return p.up();
  }

  @Override
  public void paint(Graphics2D g, Frame frame) {
    Path2D path = new Path2D.Double();
    for (double v : values) {
      if (way == Way.LEVEL) {
        path.moveTo(frame.area().getMinX(), frame.y(v));
        path.lineTo(frame.area().getMaxX(), frame.y(v));
      } else if (frame.showsX(v)) {
        path.moveTo(frame.x(v), frame.area().getMinY());
        path.lineTo(frame.x(v), frame.area().getMaxY());
      }
    }
    g.setPaint(colour);
    g.setStroke(stroke);
    g.draw(path);
  }
}
