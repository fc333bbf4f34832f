package toothmark.chart;

import java.util.Arrays;
import org.jfree.data.Range;

/** A line through points in memory, broken where the next point is too far off. */
final class SeriesCurve implements Curve {

  private final double[] xs;
  private final double[] ys;
  private final double longestStep;

  /**
   * Joins points.
   *
   * @param xs rising, at least one
   * @param ys as many
   * @param longestStep steps longer than this are left open
   */
  SeriesCurve(double[] xs, double[] ys, double longestStep) {
    this.xs = xs;
    this.ys = ys;
    this.longestStep = longestStep;
  }

  /** Joins all points, of which there is at least one, in rising order. */
  static SeriesCurve through(Points points) {
    double[] xs = new double[points.size()];
    double[] ys = new double[xs.length];
    for (int i = 0; i < xs.length; i++) {
      xs[i] = points.x(i);
      ys[i] = points.y(i);
    }
    return new SeriesCurve(xs, ys, Double.POSITIVE_INFINITY);
  }

  @Override
  public Range across() {
    return new Range(xs[0], xs[xs.length - 1]);
  }

  @Override
  public Range up(double from, double to) {
    double low = Double.POSITIVE_INFINITY;
    double high = Double.NEGATIVE_INFINITY;
    for (int i = first(from); i < xs.length && (xs[i] <= to || low > high); i++) {
      low = Math.min(low, ys[i]);
      high = Math.max(high, ys[i]);
    }
    return low <= high ? new Range(low, high) : new Range(0, 0);
  }

  @Override
  public void trace(double from, double to, int columns, Line line) {
    Thinner thinner = new Thinner(from, (to - from) / columns, line);
    int i = Math.max(0, first(from) - 1);
    for (int last = -1; i < xs.length; last = i++) {
      if (last >= 0 && xs[i] - xs[last] > longestStep) {
        thinner.interrupt();
      }
      thinner.add(xs[i], ys[i]);
      if (xs[i] > to) {
        break;
      }
    }
    thinner.flush();
  }

  private int first(double from) {
    int i = Arrays.binarySearch(xs, from);
    return i < 0 ? -i - 1 : i;
  }
}
