package toothmark.chart;

import java.awt.Graphics2D;
import java.awt.geom.Point2D;
import java.util.Optional;
import org.jfree.data.Range;

/**
 * One thing drawn over the axes of a plot: a curve, marks, a band, labels.
 *
 * <p>A layer draws all of itself at once, since then the picture costs what its width costs and not
 * what its data cost.
 */
interface Layer {

  /** What the time or speed axis must show of it; empty when it has no say. */
  default Optional<Range> across() {
    return Optional.empty();
  }

  /** What the value axis must show of it; empty when it has no say. */
  default Optional<Range> up() {
    return Optional.empty();
  }

  /** Draws it. */
  void paint(Graphics2D g, Frame frame);

  /**
   * Tells the points that it is drawn from; nothing where it only guides the eye.
   *
   * @param shown what the axis across shows, for those that are drawn from more than can be told
   */
  default void tell(Range shown, Telling to) {}

  /** Marks what of it is picked out; nothing where it shows nothing that can be. */
  default void mark(Graphics2D g, Frame frame, Picked picked, Ink ink) {}

  /**
   * What of it stands at a place; empty where it shows nothing that can be picked out.
   *
   * @param picked what is picked out now
   */
  default Optional<Near> at(Point2D place, Frame frame, Picked picked) {
    return Optional.empty();
  }

  /** A thing, and how far it is from a place on the paper. */
  record Near(Picked what, double distance) {}

  /** Takes points, with what they are of. */
  interface Telling {
    void series(String kind, Points points);
  }
}
