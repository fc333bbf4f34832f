package toothmark.chart;

import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.RenderingHints;
import java.awt.geom.Path2D;

/**
 * A curve for the screen: smooth where each sample shows, and without smoothing, which would cost
 * most of a frame, where every column is a stroke.
 */
record QuickCurveLayer(Curve curve, Color colour) implements Layer {

  /** Points a column above which the line is a row of strokes. */
  private static final double DENSE = 1.5;

  @Override
  public void paint(Graphics2D g, Frame frame) {
    Outline outline = new Outline(frame);
    curve.trace(frame.fromX(), frame.toX(), frame.columns(), outline);
    boolean dense = outline.points > DENSE * frame.columns();
    Object before = g.getRenderingHint(RenderingHints.KEY_ANTIALIASING);
    if (dense) {
      g.setRenderingHint(RenderingHints.KEY_ANTIALIASING, RenderingHints.VALUE_ANTIALIAS_OFF);
    }
    g.setPaint(colour);
    g.setStroke(Ink.line(dense ? 1 : 1.4));
    g.draw(outline.path);
    if (before != null) {
      g.setRenderingHint(RenderingHints.KEY_ANTIALIASING, before);
    }
  }

  /** Puts the points of a line on the paper; the axes of a trace are straight. */
  private static final class Outline implements Curve.Line {

    private final Path2D.Float path = new Path2D.Float(Path2D.WIND_NON_ZERO, 4096);
    private final double x0;
    private final double y0;
    private final double perX;
    private final double perY;
    private final double zeroX;
    private final double zeroY;
    private int points;

    Outline(Frame f) {
      zeroX = f.fromX();
      zeroY = f.yAxis().getLowerBound();
      x0 = f.x(zeroX);
      y0 = f.y(zeroY);
      perX = (f.x(f.toX()) - x0) / (f.toX() - zeroX);
      perY = (f.y(f.yAxis().getUpperBound()) - y0) / (f.yAxis().getUpperBound() - zeroY);
    }

    @Override
    public void moveTo(double x, double y) {
      points++;
      path.moveTo(x0 + (x - zeroX) * perX, y0 + (y - zeroY) * perY);
    }

    @Override
    public void lineTo(double x, double y) {
      points++;
      path.lineTo(x0 + (x - zeroX) * perX, y0 + (y - zeroY) * perY);
    }
  }
}
