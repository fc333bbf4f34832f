package toothmark.chart;

import java.util.Arrays;
import java.util.Optional;
import org.jfree.data.Range;

/** Points of a picture, in the units of its axes. */
public final class Points {

  private double[] xs = new double[64];
  private double[] ys = new double[64];
  private double[] times = new double[0];
  private int size;

  /** Adds a point that stands for an instant; of one picture either all points do or none. */
  void add(double x, double y, double timeSeconds) {
    if (size >= times.length) {
      times = Arrays.copyOf(times, Math.max(64, 2 * size));
    }
    times[size] = timeSeconds;
    add(x, y);
  }

  /** Whether each point stands for an instant. */
  boolean isTimed() {
    return times.length > 0;
  }

  /** The instant that a point stands for, s. */
  double time(int i) {
    return times[i];
  }

  /**
   * Adds a point.
   *
   * @param x its place on the axis across
   * @param y its place on the axis up
   */
  public void add(double x, double y) {
    if (size == xs.length) {
      xs = Arrays.copyOf(xs, 2 * size);
      ys = Arrays.copyOf(ys, 2 * size);
    }
    xs[size] = x;
    ys[size++] = y;
  }

  /** Adds each point of a line, whether or not it is joined to the one before. */
  Curve.Line asLine() {
    return new Curve.Line() {
      @Override
      public void moveTo(double x, double y) {
        add(x, y);
      }

      @Override
      public void lineTo(double x, double y) {
        add(x, y);
      }
    };
  }

  /**
   * How many there are.
   *
   * @return 0 or more
   */
  public int size() {
    return size;
  }

  /**
   * Whether there is none.
   *
   * @return true where there is none
   */
  public boolean isEmpty() {
    return size == 0;
  }

  /**
   * Where one stands on the axis across.
   *
   * @param i from 0, in the order in which they were added
   * @return in the unit of that axis
   */
  public double x(int i) {
    return xs[i];
  }

  /**
   * Where one stands on the axis up.
   *
   * @param i from 0, in the order in which they were added
   * @return in the unit of that axis
   */
  public double y(int i) {
    return ys[i];
  }

  Optional<Range> across() {
    return range(xs);
  }

  Optional<Range> up() {
    return range(ys);
  }

  private Optional<Range> range(double[] values) {
    if (size == 0) {
      return Optional.empty();
    }
    double low = values[0];
    double high = values[0];
    for (int i = 1; i < size; i++) {
      low = Math.min(low, values[i]);
      high = Math.max(high, values[i]);
    }
    return Optional.of(new Range(low, high));
  }
}
