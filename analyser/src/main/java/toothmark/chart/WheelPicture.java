package toothmark.chart;

import java.awt.Graphics2D;
import java.awt.geom.Ellipse2D;
import java.awt.geom.Path2D;
import java.awt.geom.Point2D;
import java.awt.geom.Rectangle2D;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import toothmark.examination.Examination;
import toothmark.units.CrankAngle;
import toothmark.wheel.WheelPattern;

/** The wheel alone, with a tooth picked out and the sensor where it stands against the teeth. */
public final class WheelPicture {

  private static final double MARGIN = 26;
  private static final double SENSOR = 9;

  private final WheelPattern pattern;
  private final WheelDrawing drawing;
  private final Ink ink;

  private WheelPicture(WheelPattern pattern, WheelDrawing drawing, Ink ink) {
    this.pattern = pattern;
    this.drawing = drawing;
    this.ink = ink;
  }

  /**
   * The wheel of an examination.
   *
   * @param examination what was found
   * @param ink for which ground
   * @return empty when no wheel was found
   */
  public static Optional<WheelPicture> of(Examination examination, Ink ink) {
    return examination
        .observations()
        .crank()
        .map(
            c ->
                new WheelPicture(
                    c.wheel().pattern(),
                    WheelDrawing.of(examination, c.wheel(), OddTeeth.of(c.wheel().geometry()), ink),
                    ink));
  }

  /**
   * Draws the wheel.
   *
   * @param g where
   * @param square where on it
   * @param tooth the one picked out; empty for none
   * @param sensorDegrees angle after tooth 1 that is at the sensor; empty for none
   */
  public void draw(
      Graphics2D g, Rectangle2D square, OptionalInt tooth, OptionalDouble sensorDegrees) {
    drawing.draw(g, square);
    if (tooth.isPresent() && tooth.getAsInt() >= 1 && tooth.getAsInt() <= pattern.teeth()) {
      double a = pattern.degreesAfterTooth1(tooth.getAsInt());
      double r = 0.86 * radius(square);
      double size = Math.max(6, Math.toRadians(pattern.pitchDegrees()) * r * 0.55);
      g.setPaint(ink.text());
      g.setStroke(Ink.line(2));
      g.draw(
          new Ellipse2D.Double(x(square, a, r) - size, y(square, a, r) - size, 2 * size, 2 * size));
    }
    sensorDegrees.ifPresent(a -> sensor(g, square, a));
  }

  private void sensor(Graphics2D g, Rectangle2D square, double degrees) {
    double near = 0.96 * radius(square);
    double far = near + SENSOR * 1.5;
    double half = Math.toDegrees(SENSOR * 0.7 / far);
    Path2D wedge = new Path2D.Double();
    wedge.moveTo(x(square, degrees, near), y(square, degrees, near));
    wedge.lineTo(x(square, degrees - half, far), y(square, degrees - half, far));
    wedge.lineTo(x(square, degrees + half, far), y(square, degrees + half, far));
    wedge.closePath();
    g.setPaint(ink.text());
    g.fill(wedge);
  }

  /**
   * The angle of a place, after tooth 1.
   *
   * @param square where the wheel was drawn
   * @param place on the paper
   * @return degrees, in [0, 360)
   */
  public double degreesAt(Rectangle2D square, Point2D place) {
    double dx = place.getX() - square.getCenterX();
    double dy = square.getCenterY() - place.getY();
    return CrankAngle.wrap(Math.toDegrees(Math.atan2(dx, dy)));
  }

  /**
   * The tooth nearest to an angle.
   *
   * @param degrees after tooth 1
   * @return its number; empty in a gap
   */
  public OptionalInt toothAt(double degrees) {
    int best = 0;
    double nearest = 0.6 * pattern.pitchDegrees();
    for (int k = 1; k <= pattern.teeth(); k++) {
      double d = Math.abs(CrankAngle.wrapDifference(degrees - pattern.degreesAfterTooth1(k)));
      if (d < nearest) {
        nearest = d;
        best = k;
      }
    }
    return best == 0 ? OptionalInt.empty() : OptionalInt.of(best);
  }

  private static double radius(Rectangle2D square) {
    return square.getWidth() / 2 - MARGIN;
  }

  private static double x(Rectangle2D square, double degrees, double r) {
    return square.getCenterX() + r * Math.sin(Math.toRadians(degrees));
  }

  private static double y(Rectangle2D square, double degrees, double r) {
    return square.getCenterY() - r * Math.cos(Math.toRadians(degrees));
  }
}
