package toothmark.chart;

import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.geom.Path2D;
import java.util.Optional;
import org.jfree.data.Range;

/** Bars that lie along a lane: from the x of each start to the x of the end of the same number. */
record BarsLayer(Points starts, Points ends, double thickness, Color colour) implements Layer {

  @Override
  public Optional<Range> up() {
    return starts.up();
  }

  @Override
  public void paint(Graphics2D g, Frame frame) {
    Path2D path = new Path2D.Double();
    for (int i = 0; i < starts.size(); i++) {
      double from = Math.max(frame.fromX(), starts.x(i));
      double to = Math.min(frame.toX(), ends.x(i));
      if (from < to) {
        double y = frame.y(starts.y(i));
        path.moveTo(frame.x(from), y);
        path.lineTo(frame.x(to), y);
      }
    }
    g.setPaint(colour);
    g.setStroke(Ink.line(thickness));
    g.draw(path);
  }

  @Override
  public void tell(Range shown, Telling to) {
    to.series("start", starts);
    to.series("end", ends);
  }
}
