package toothmark.chart;

import java.awt.Graphics2D;
import java.awt.geom.Point2D;
import java.awt.geom.Rectangle2D;
import java.util.Optional;
import java.util.OptionalInt;
import toothmark.examination.Examination;

/** The wheel alone, as it stands under the sensor, with a tooth picked out. */
public final class WheelPicture {

  /** The least side for all words. */
  private static final double LEAST_SIDE = 350;

  /** In a place smaller than this share of that the wheel is drawn with few words. */
  private static final double SMALL = 0.75;

  private static final double LEAST_SPARSE = 210;

  /** Words are not drawn smaller than this. */
  private static final double LEGIBLE = 0.85;

  private final WheelDrawing drawing;

  private WheelPicture(WheelDrawing drawing) {
    this.drawing = drawing;
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
                    WheelDrawing.of(
                        examination, c.wheel(), OddTeeth.of(c.wheel().geometry()), ink)));
  }

  /**
   * By how much to draw the wheel larger: in a small place it is drawn smaller with its words, so
   * that they do not collide; in a smaller one with few words, which can be read.
   *
   * @param side of the place, in the size of ordinary type
   * @return 1 for words of that size
   */
  public static double scale(double side) {
    return side < SMALL * LEAST_SIDE ? Math.max(LEGIBLE, side / LEAST_SPARSE) : side / LEAST_SIDE;
  }

  /**
   * Draws the wheel.
   *
   * @param g where
   * @param area where on it, in its middle
   * @param tooth the one picked out; empty for none
   * @param sensorDegrees angle after tooth 1 that is at the sensor
   */
  public void draw(Graphics2D g, Rectangle2D area, OptionalInt tooth, double sensorDegrees) {
    drawing.draw(g, area, sensorDegrees);
    tooth.ifPresent(k -> drawing.ring(g, k));
  }

  /**
   * The tooth at a place of the wheel as it was drawn last.
   *
   * @param place on the paper
   * @return its number; empty in a gap
   */
  public OptionalInt toothAt(Point2D place) {
    return drawing.toothAt(drawing.degreesAt(place));
  }
}
