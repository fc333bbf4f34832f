package toothmark.chart;

import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.geom.AffineTransform;
import java.awt.geom.Path2D;
import java.awt.geom.PathIterator;

/**
 * A curve for the screen: a smooth line where each sample shows, and columns of pixels where every
 * column is a stroke, since outlining thousands of strokes would cost most of a frame.
 */
record QuickCurveLayer(Curve curve, Color colour) implements Layer {

  /** Points a column above which the line is a row of strokes. */
  private static final double DENSE = 1.5;

  @Override
  public void paint(Graphics2D g, Frame frame) {
    Outline outline = new Outline(frame);
    curve.trace(frame.fromX(), frame.toX(), frame.columns(), outline);
    g.setPaint(colour);
    if (outline.points > DENSE * frame.columns()) {
      Columns.fill(g, outline.path);
    } else {
      g.setStroke(Ink.line(1.4));
      g.draw(outline.path);
    }
  }

  /**
   * Fills each column of pixels from the lowest to the highest point of a line in it, which is what
   * a line one unit thick covers.
   */
  private static final class Columns implements Curve.Line {

    private final Graphics2D g;
    private final int thickness;
    private int column;
    private double lastX;
    private double lastY;
    private double top = Double.POSITIVE_INFINITY;
    private double bottom = Double.NEGATIVE_INFINITY;

    private Columns(Graphics2D g, double scale) {
      this.g = g;
      this.thickness = Math.max(1, (int) Math.round(scale));
    }

    static void fill(Graphics2D g, Path2D path) {
      AffineTransform device = g.getTransform();
      Columns columns = new Columns(g, device.getScaleX());
      g.setTransform(new AffineTransform());
      double[] p = new double[6];
      for (PathIterator i = path.getPathIterator(device); !i.isDone(); i.next()) {
        if (i.currentSegment(p) == PathIterator.SEG_MOVETO) {
          columns.moveTo(p[0], p[1]);
        } else {
          columns.lineTo(p[0], p[1]);
        }
      }
      columns.finish();
      g.setTransform(device);
    }

    @Override
    public void moveTo(double x, double y) {
      finish();
      column = (int) Math.floor(x);
      reach(x, y);
    }

    @Override
    public void lineTo(double x, double y) {
      int to = (int) Math.floor(x);
      double fromX = lastX;
      double slope = (y - lastY) / (x - lastX);
      double fromY = lastY;
      while (column < to) {
        double edge = column + 1;
        double across = fromY + (edge - fromX) * slope;
        reach(edge, across);
        finish();
        column++;
        reach(edge, across);
      }
      reach(x, y);
    }

    private void reach(double x, double y) {
      top = Math.min(top, y);
      bottom = Math.max(bottom, y);
      lastX = x;
      lastY = y;
    }

    private void finish() {
      if (top <= bottom) {
        int y = (int) Math.round(top - thickness / 2.0);
        int height = Math.max(thickness, (int) Math.round(bottom + thickness / 2.0) - y);
        g.fillRect(column - thickness / 2, y, thickness, height);
      }
      top = Double.POSITIVE_INFINITY;
      bottom = Double.NEGATIVE_INFINITY;
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
