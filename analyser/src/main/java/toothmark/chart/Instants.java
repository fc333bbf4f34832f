package toothmark.chart;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.function.DoubleUnaryOperator;

/** Instants in time order, each with a word, so that those in view are found at once. */
record Instants(double[] times, String[] words) {

  static Instants of(double[] times) {
    return new Instants(times, new String[0]);
  }

  int size() {
    return times.length;
  }

  String word(int i) {
    return words.length == 0 ? "" : words[i];
  }

  /** Index of the first instant not before a time. */
  int from(double time) {
    int i = Arrays.binarySearch(times, time);
    if (i < 0) {
      return -i - 1;
    }
    while (i > 0 && times[i - 1] == time) {
      i--;
    }
    return i;
  }

  /**
   * Places on the paper for marks of those in a span; where many fall on one place, one stands for
   * them.
   *
   * @param x where an instant is across
   * @param y upwards
   * @param apart the least distance
   */
  List<double[]> places(double from, double to, DoubleUnaryOperator x, double y, double apart) {
    List<double[]> places = new ArrayList<>();
    double last = Double.NEGATIVE_INFINITY;
    for (int i = from(from); i < times.length && times[i] <= to; i++) {
      double at = x.applyAsDouble(times[i]);
      if (at - last >= apart) {
        places.add(new double[] {at, y});
        last = at;
      }
    }
    return places;
  }
}
