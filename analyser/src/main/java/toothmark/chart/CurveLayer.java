package toothmark.chart;

import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.Stroke;
import java.awt.geom.Path2D;
import java.util.Optional;
import org.jfree.data.Range;

/** A curve as a line. */
record CurveLayer(Curve curve, Color colour, Stroke stroke) implements Layer {

  private static final int TOLD_COLUMNS = 20_000;

  @Override
  public Optional<Range> across() {
    return Optional.of(curve.across());
  }

  @Override
  public Optional<Range> up() {
    return Optional.of(curve.up(curve.across().getLowerBound(), curve.across().getUpperBound()));
  }

  @Override
  public void paint(Graphics2D g, Frame frame) {
    Path2D path = new Path2D.Double();
    curve.trace(frame.fromX(), frame.toX(), frame.columns(), frame.onto(path));
    g.setPaint(colour);
    g.setStroke(stroke);
    g.draw(path);
  }

  /** At most so many columns of extremes where the curve has more points. */
  @Override
  public void tell(Range shown, Telling to) {
    Points points = new Points();
    curve.trace(
        Math.max(shown.getLowerBound(), curve.across().getLowerBound()),
        Math.min(shown.getUpperBound(), curve.across().getUpperBound()),
        TOLD_COLUMNS,
        points.asLine());
    to.series("line", points);
  }
}
