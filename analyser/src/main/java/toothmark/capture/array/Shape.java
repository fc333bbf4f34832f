package toothmark.capture.array;

import java.util.List;
import java.util.Optional;

/**
 * How an array becomes columns: its longer axis is time.
 *
 * @param rows length of the longer axis
 * @param columns length of the shorter one; 1 where there is only one
 * @param byColumn whether the file holds column after column; else row after row
 */
record Shape(long rows, int columns, boolean byColumn) {

  /**
   * The shape of an array.
   *
   * @param axes their lengths; those of length 1 do not count
   * @param firstRunsFastest whether neighbours in the file differ in the first index
   * @return empty when there are more than two axes, or no numbers
   */
  static Optional<Shape> of(List<Long> axes, boolean firstRunsFastest) {
    List<Long> real = axes.stream().filter(n -> n != 1).toList();
    if (real.size() > 2 || real.contains(0L)) {
      return Optional.empty();
    }
    long first = real.isEmpty() ? 1 : real.get(0);
    long second = real.size() < 2 ? 1 : real.get(1);
    boolean firstIsTime = first >= second;
    return Optional.of(
        new Shape(
            Math.max(first, second),
            (int) Math.min(Integer.MAX_VALUE, Math.min(first, second)),
            firstIsTime == firstRunsFastest));
  }
}
