package toothmark.chart;

import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.geom.Path2D;
import java.util.Optional;
import org.jfree.data.Range;

/** Upright lines from a base to each point. */
record StemsLayer(Points points, double base, double thickness, Color colour) implements Layer {

  @Override
  public Optional<Range> across() {
    return points.across();
  }

  @Override
  public Optional<Range> up() {
    return points.up().map(r -> Range.expandToInclude(r, base));
  }

  @Override
  public void paint(Graphics2D g, Frame frame) {
    Path2D path = new Path2D.Double();
    double foot = frame.y(base);
    for (int i = 0; i < points.size(); i++) {
      if (frame.showsX(points.x(i))) {
        double x = frame.x(points.x(i));
        path.moveTo(x, foot);
        path.lineTo(x, frame.y(points.y(i)));
      }
    }
    g.setPaint(colour);
    g.setStroke(Ink.line(thickness));
    g.draw(path);
  }

  @Override
  public void tell(Range shown, Telling to) {
    to.series("stems", points);
  }
}
