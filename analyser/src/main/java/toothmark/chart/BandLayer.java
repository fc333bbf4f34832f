package toothmark.chart;

import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.geom.Path2D;
import java.util.Optional;
import org.jfree.data.Range;

/** The strip between a lower and an upper line, such as a 95 % interval. */
record BandLayer(Points lower, Points upper, Color colour) implements Layer {

  @Override
  public Optional<Range> across() {
    return lower.across();
  }

  @Override
  public Optional<Range> up() {
    return lower.up().map(r -> Range.combine(r, upper.up().orElseThrow()));
  }

  @Override
  public void paint(Graphics2D g, Frame frame) {
    Path2D path = new Path2D.Double();
    path.moveTo(frame.x(lower.x(0)), frame.y(lower.y(0)));
    for (int i = 1; i < lower.size(); i++) {
      path.lineTo(frame.x(lower.x(i)), frame.y(lower.y(i)));
    }
    for (int i = upper.size() - 1; i >= 0; i--) {
      path.lineTo(frame.x(upper.x(i)), frame.y(upper.y(i)));
    }
    path.closePath();
    g.setPaint(colour);
    g.fill(path);
  }

  @Override
  public void tell(Range shown, Telling to) {
    to.series("lower", lower);
    to.series("upper", upper);
  }
}
