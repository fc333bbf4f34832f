package toothmark.chart;

import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.geom.Rectangle2D;
import java.util.List;
import toothmark.units.Interval;

/** Spans of time as shaded columns, at least one unit wide so that none is lost. */
record SpansLayer(List<Interval> spans, Color colour) implements Layer {

  @Override
  public void paint(Graphics2D g, Frame frame) {
    g.setPaint(colour);
    for (Interval s : spans) {
      double from = Math.max(frame.fromX(), s.startInclusive());
      double to = Math.min(frame.toX(), s.endExclusive());
      if (from <= to) {
        double x = frame.x(from);
        double width = Math.max(1, frame.x(to) - x);
        g.fill(new Rectangle2D.Double(x, frame.area().getY(), width, frame.area().getHeight()));
      }
    }
  }
}
