package toothmark.chart;

import java.awt.Graphics2D;
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
  Optional<Range> across();

  /** What the value axis must show of it; empty when it has no say. */
  Optional<Range> up();

  /** Draws it. */
  void paint(Graphics2D g, Frame frame);

  /**
   * Tells the points that it is drawn from; nothing where it only guides the eye.
   *
   * @param shown what the axis across shows, for those that are drawn from more than can be told
   */
  default void tell(Range shown, Telling to) {}

  /** Takes points, with what they are of. */
  interface Telling {
    void series(String kind, Points points);
  }
}
