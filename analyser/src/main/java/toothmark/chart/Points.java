package toothmark.chart;

import java.util.Arrays;
import java.util.Optional;
import org.jfree.data.Range;

/** Points of a picture, in the units of its axes. */
final class Points {

  private double[] xs = new double[64];
  private double[] ys = new double[64];
  private int size;

  void add(double x, double y) {
    if (size == xs.length) {
      xs = Arrays.copyOf(xs, 2 * size);
      ys = Arrays.copyOf(ys, 2 * size);
    }
    xs[size] = x;
    ys[size++] = y;
  }

  int size() {
    return size;
  }

  boolean isEmpty() {
    return size == 0;
  }

  double x(int i) {
    return xs[i];
  }

  double y(int i) {
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
