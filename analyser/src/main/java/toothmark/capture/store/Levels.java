package toothmark.capture.store;

/** Keeps count of the different numbers of a column, up to two. */
final class Levels {

  private double first;
  private double second;
  private int size;
  private boolean more;

  void add(PackedBlock block) {
    if (!block.twoLevels) {
      more = true;
    } else if (block.lowest <= block.highest) {
      add(block.lowest);
      add(block.highest);
    }
  }

  private void add(double level) {
    if (size == 0) {
      first = level;
      size = 1;
    } else if (level != first) {
      if (size == 1) {
        second = level;
        size = 2;
      } else {
        more |= level != second;
      }
    }
  }

  boolean atMostTwo() {
    return !more;
  }
}
