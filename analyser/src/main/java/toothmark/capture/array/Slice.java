package toothmark.capture.array;

import java.lang.reflect.Array;
import java.util.Arrays;

/** Numbers of an array of primitives, or of an array of such arrays, in the order of the file. */
final class Slice {

  private double[] numbers = new double[1 << 16];
  private int size;

  Slice(Object nested) {
    add(nested);
  }

  double at(int index) {
    return numbers[index];
  }

  /** A truth value as a level; any other word is no number. */
  private static double truth(String word) {
    return word.equalsIgnoreCase("true") ? 1 : word.equalsIgnoreCase("false") ? 0 : Double.NaN;
  }

  private void add(Object nested) {
    int n = Array.getLength(nested);
    if (nested instanceof String[] words) {
      nested = Arrays.stream(words).mapToDouble(Slice::truth).toArray();
    } else if (nested instanceof Object[] parts) {
      for (Object part : parts) {
        add(part);
      }
      return;
    }
    if (size + n > numbers.length) {
      numbers = Arrays.copyOf(numbers, 2 * (size + n));
    }
    for (int i = 0; i < n; i++) {
      numbers[size++] = Array.getDouble(nested, i);
    }
  }
}
