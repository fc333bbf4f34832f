package toothmark.capture.store;

/** A run of numbers of one column, packed without loss. Made by a {@link BlockPacker}. */
public final class PackedBlock {

  /** What a packed element is. */
  enum Element {
    /** Integer on a line: number = (base + line(j) + element · unit) · 10^power. */
    INTEGER,
    /** IEEE 754 single. */
    SINGLE,
    /** IEEE 754 double. */
    DOUBLE
  }

  final int count;
  final Element element;
  final int width;
  final long base;
  final long unit;
  final long step;
  final int power;
  final int finest;
  final double lowest;
  final double highest;
  final boolean twoLevels;
  final int[] marks;
  byte[] payload;
  long position;

  PackedBlock(Shape shape, byte[] payload, int[] marks) {
    this.count = shape.count;
    this.element = shape.element;
    this.width = shape.width;
    this.base = shape.base;
    this.unit = shape.unit;
    this.step = shape.step;
    this.power = shape.power;
    this.finest = shape.finest;
    this.lowest = shape.lowest;
    this.highest = shape.highest;
    this.twoLevels = shape.twoLevels;
    this.payload = payload;
    this.marks = marks;
  }

  /**
   * How many numbers there are.
   *
   * @return 0 or more
   */
  public int count() {
    return count;
  }

  /** What a packer found out about a block. */
  static final class Shape {
    int count;
    Element element = Element.INTEGER;
    int width;
    long base;
    long unit = 1;
    long step;
    int power;
    int finest = Byte.MAX_VALUE;
    double lowest = Double.POSITIVE_INFINITY;
    double highest = Double.NEGATIVE_INFINITY;
    boolean twoLevels = true;
  }

  /** Part of the line at an element; 16 bits of the step are behind the point. */
  static long line(long step, long element) {
    return step * element >> 16;
  }
}
