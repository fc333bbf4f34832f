package toothmark.chart;

import java.awt.Color;
import java.awt.Font;
import java.awt.FontMetrics;
import java.awt.Graphics2D;
import java.awt.geom.Rectangle2D;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.stream.Stream;

/**
 * Words beside what they name, on a patch of paper. One that would cover an earlier one is left
 * out, so the more important ones come first. From points that must be seen they keep clear, as
 * near to their place as can be.
 *
 * @param clear the points that must be seen; empty where words stay at their place
 */
record LabelsLayer(List<Label> labels, Font font, Color paper, List<Points> clear)
    implements Layer {

  private static final double PAD = 2;

  /** How far from a point its words may stand, on its side first; the nearest first. */
  private static final double[] AWAY = {4, 8, 12, 17, 23, 30, 38};

  /** A mark is larger than its point. */
  private static final double MARK = 3;

  /** Of a long train of points every so many are enough to keep clear of. */
  private static final int ENOUGH = 3000;

  LabelsLayer(List<Label> labels, Font font, Color paper) {
    this(labels, font, paper, List.of());
  }

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
    boxes(metrics, frame)
        .forEach(
            written -> {
              g.setPaint(paper);
              g.fill(written.box());
              g.setPaint(written.label().colour());
              g.drawString(
                  written.label().text(),
                  (float) (written.box().getX() + PAD),
                  (float) (written.box().getY() + metrics.getAscent() - 1));
            });
  }

  /** Words that have found a place. */
  record Written(Label label, Rectangle2D box) {}

  /** Where the words stand that are written. */
  List<Written> boxes(FontMetrics metrics, Frame frame) {
    List<double[]> seen = seen(frame);
    List<Written> boxes = new ArrayList<>();
    for (Label label : labels) {
      if (Double.isNaN(label.x()) || frame.showsX(label.x())) {
        Stream<Rectangle2D> away =
            clear.isEmpty()
                ? Stream.empty()
                : places(label, metrics, frame)
                    .filter(b -> seen.stream().noneMatch(p -> covers(b, p)));
        Stream<Rectangle2D> usual =
            atHome(label.place()).map(side -> box(label, side, AWAY[0], metrics, frame));
        Stream.concat(away, usual)
            .filter(b -> boxes.stream().noneMatch(w -> b.intersects(w.box())))
            .findFirst()
            .ifPresent(b -> boxes.add(new Written(label, b)));
      }
    }
    return boxes;
  }

  private static boolean covers(Rectangle2D box, double[] point) {
    return point[0] > box.getMinX() - MARK
        && point[0] < box.getMaxX() + MARK
        && point[1] > box.getMinY() - MARK
        && point[1] < box.getMaxY() + MARK;
  }

  /** The points that must be seen, on the paper. */
  private List<double[]> seen(Frame frame) {
    List<double[]> seen = new ArrayList<>();
    for (Points points : clear) {
      for (int i = 0; i < points.size(); i += 1 + points.size() / ENOUGH) {
        if (frame.showsX(points.x(i))) {
          seen.add(new double[] {frame.x(points.x(i)), frame.y(points.y(i))});
        }
      }
    }
    return seen;
  }

  /** Beside a point there are two sides, and the other serves where one is taken. */
  private static Stream<Place> atHome(Place place) {
    return place == Place.RIGHT ? Stream.of(place, Place.LEFT) : Stream.of(place);
  }

  /** Where words may stand: at their place, further off, or on the other side. */
  private Stream<Rectangle2D> places(Label label, FontMetrics metrics, Frame frame) {
    List<Place> sides =
        switch (label.place()) {
          case ABOVE, RIGHT -> List.of(label.place(), Place.ABOVE, Place.BELOW);
          case BELOW, LEFT -> List.of(label.place(), Place.BELOW, Place.ABOVE);
        };
    return sides.stream()
        .flatMap(
            side -> Arrays.stream(AWAY).mapToObj(away -> box(label, side, away, metrics, frame)));
  }

  private static Rectangle2D box(
      Label label, Place place, double away, FontMetrics metrics, Frame frame) {
    double w = metrics.stringWidth(label.text()) + 2 * PAD;
    double h = metrics.getAscent() + metrics.getDescent() - 1.0;
    Rectangle2D area = frame.area();
    double x = Double.isNaN(label.x()) ? area.getMaxX() : frame.x(label.x());
    double y = Double.isNaN(label.y()) ? area.getMinY() : frame.y(label.y());
    double left =
        switch (place) {
          case ABOVE, BELOW -> x - w / 2;
          case RIGHT -> x + away + 2;
          case LEFT -> x - away - 2 - w;
        };
    double top =
        switch (place) {
          case ABOVE -> y - h - away;
          case BELOW -> y + away;
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
