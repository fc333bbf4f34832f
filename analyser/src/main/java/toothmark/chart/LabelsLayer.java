package toothmark.chart;

import java.awt.Color;
import java.awt.Font;
import java.awt.FontMetrics;
import java.awt.Graphics2D;
import java.awt.geom.Rectangle2D;
import java.util.ArrayList;
import java.util.List;

/**
 * Words beside what they name, on a patch of paper. One that would cover an earlier one is left
 * out, so the more important ones come first.
 */
record LabelsLayer(List<Label> labels, Font font, Color paper) implements Layer {

  private static final double PAD = 2;

  /**
   * Words at a point.
   *
   * @param x across; NaN for the right edge
   * @param y upwards; NaN for the upper edge
   * @param text the words
   * @param place where they stand from the point
   * @param colour of the words
   */
  record Label(double x, double y, String text, Place place, Color colour) {}

  /** Where words stand from their point. */
  enum Place {
    /** Above it, centred. */
    ABOVE,
    /** Below it, centred. */
    BELOW,
    /** To its right. */
    RIGHT,
    /** To its left. */
    LEFT
  }

  @Override
  public void paint(Graphics2D g, Frame frame) {
    g.setFont(font);
    FontMetrics metrics = g.getFontMetrics();
    List<Rectangle2D> taken = new ArrayList<>();
    for (Label label : labels) {
      if (Double.isNaN(label.x()) || frame.showsX(label.x())) {
        Rectangle2D box = box(label, metrics, frame);
        if (taken.stream().noneMatch(box::intersects)) {
          taken.add(box);
          g.setPaint(paper);
          g.fill(box);
          g.setPaint(label.colour());
          g.drawString(
              label.text(),
              (float) (box.getX() + PAD),
              (float) (box.getY() + metrics.getAscent() - 1));
        }
      }
    }
  }

  private static Rectangle2D box(Label label, FontMetrics metrics, Frame frame) {
    double w = metrics.stringWidth(label.text()) + 2 * PAD;
    double h = metrics.getAscent() + metrics.getDescent() - 1.0;
    Rectangle2D area = frame.area();
    double x = Double.isNaN(label.x()) ? area.getMaxX() : frame.x(label.x());
    double y = Double.isNaN(label.y()) ? area.getMinY() : frame.y(label.y());
    double left =
        switch (label.place()) {
          case ABOVE, BELOW -> x - w / 2;
          case RIGHT -> x + 6;
          case LEFT -> x - 6 - w;
        };
    double top =
        switch (label.place()) {
          case ABOVE -> y - h - 4;
          case BELOW -> y + 4;
          case RIGHT, LEFT -> y - h / 2;
        };
    return new Rectangle2D.Double(
        clamp(left, area.getMinX() + 1, area.getMaxX() - w - 1),
        clamp(top, area.getMinY() + 1, area.getMaxY() - h - 1),
        w,
        h);
  }

  private static double clamp(double value, double low, double high) {
    return Math.max(low, Math.min(high, value));
  }
}
