package toothmark.chart;

import java.awt.Graphics2D;
import java.awt.geom.Point2D;
import java.awt.geom.Rectangle2D;
import java.util.Optional;
import java.util.OptionalInt;
import toothmark.examination.Examination;

/** The wheel alone, as it stands under the sensor, with a tooth picked out. */
public final class WheelPicture {

  /** In a smaller square the wheel is drawn smaller with its words, so that they do not collide. */
  public static final double LEAST_SIDE = 350;

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
   * Draws the wheel.
   *
   * @param g where
   * @param square where on it
   * @param tooth the one picked out; empty for none
   * @param sensorDegrees angle after tooth 1 that is at the sensor
   */
  public void draw(Graphics2D g, Rectangle2D square, OptionalInt tooth, double sensorDegrees) {
    drawing.draw(g, square, sensorDegrees);
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
