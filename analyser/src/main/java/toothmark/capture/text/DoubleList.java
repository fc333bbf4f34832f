package toothmark.capture.text;

import java.util.Arrays;

/** A growing list of doubles. */
final class DoubleList {

  private double[] values = new double[64];
  private int size;

  void add(double value) {
    if (size == values.length) {
      values = Arrays.copyOf(values, 2 * size);
    }
    values[size++] = value;
  }

  int size() {
    return size;
  }

  double get(int index) {
    return values[index];
  }

  double last() {
    return values[size - 1];
  }

  void removeLast() {
    size--;
  }

  void add(int index, double more) {
    values[index] += more;
  }

  double[] toArray() {
    return Arrays.copyOf(values, size);
  }
}
