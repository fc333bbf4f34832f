package toothmark.capture.text;

import java.util.Arrays;

/** A growing list of longs. */
final class LongList {

  private long[] values = new long[64];
  private int size;

  void add(long value) {
    if (size == values.length) {
      values = Arrays.copyOf(values, 2 * size);
    }
    values[size++] = value;
  }

  int size() {
    return size;
  }

  long get(int index) {
    return values[index];
  }

  long[] toArray() {
    return Arrays.copyOf(values, size);
  }
}
