package toothmark.capture.store;

/**
 * A run of numbers of one column as a reader understood them: decimal mantissas with a power of ten
 * each, or a mark that a cell holds no number. Filled by a reader, packed, and filled again.
 */
public final class NumberBlock {

  /** Mark in place of a power: the mantissa is the bit pattern of a double, already scaled. */
  public static final byte BITS = 127;

  /** Mark in place of a power: there is no number. */
  public static final byte MISSING = 126;

  /** Mark in place of a power: the recorder said that the value was above its range. */
  public static final byte ABOVE_RANGE = 125;

  /** Mark in place of a power: the recorder said that the value was below its range. */
  public static final byte BELOW_RANGE = 124;

  static final byte FIRST_MARK = BELOW_RANGE;

  final long[] mantissas;
  final byte[] powers;

  /**
   * Makes an empty block.
   *
   * @param capacity how many numbers it holds at most
   */
  public NumberBlock(int capacity) {
    mantissas = new long[capacity];
    powers = new byte[capacity];
  }

  /**
   * Puts a number, or a mark, in its place.
   *
   * @param row from 0, below the capacity
   * @param mantissa decimal mantissa, or the bits of a double
   * @param power power of ten from -100 to 100, or one of the marks
   */
  public void set(int row, long mantissa, byte power) {
    mantissas[row] = mantissa;
    powers[row] = power;
  }

  /**
   * A mantissa.
   *
   * @param row from 0
   * @return what was set
   */
  public long mantissa(int row) {
    return mantissas[row];
  }

  /**
   * A power or mark.
   *
   * @param row from 0
   * @return what was set
   */
  public byte power(int row) {
    return powers[row];
  }
}
