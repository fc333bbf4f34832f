package toothmark.chart;

import org.jfree.data.Range;

/**
 * A line over time or speed that can be asked for any part of itself at any fineness.
 *
 * <p>However coarse the picture, the largest and smallest value of each column of it are kept, so
 * that a single odd sample stays visible.
 */
public interface Curve {

  /**
   * From where to where it goes.
   *
   * @return in the unit of the axis across
   */
  Range across();

  /**
   * Smallest and largest value.
   *
   * @param from start of the part asked for, inclusive
   * @param to end of it
   * @return in the unit of the axis upwards
   */
  Range up(double from, double to);

  /**
   * A part of the line.
   *
   * @param from start of the part, inclusive
   * @param to end of it
   * @param columns how many columns the picture has for it, at least 1
   * @param line takes the points in order, at most four a column and one beyond either end
   */
  void trace(double from, double to, int columns, Line line);

  /** Takes the points of a line. */
  interface Line {

    /**
     * Starts anew, so that a break stays empty.
     *
     * @param x across
     * @param y upwards
     */
    void moveTo(double x, double y);

    /**
     * Goes on.
     *
     * @param x across
     * @param y upwards
     */
    void lineTo(double x, double y);
  }
}
