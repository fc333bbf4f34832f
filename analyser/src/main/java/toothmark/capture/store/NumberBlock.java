package toothmark.capture.store;

import java.util.Arrays;

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
   * Puts mantissas in their places; their power follows by {@link #setPower}.
   *
   * @param row of the first, from 0
   * @param count how many
   * @param sizes decimal mantissas without their signs
   * @param signs 0, or -1 where it is negative
   */
  public void setMantissas(int row, int count, long[] sizes, long[] signs) {
    for (int i = 0; i < count; i++) {
      mantissas[row + i] = (sizes[i] ^ signs[i]) - signs[i];
    }
  }

  /**
   * Gives rows one power.
   *
   * @param from first row
   * @param to behind the last
   * @param power power of ten from -100 to 100
   */
  public void setPower(int from, int to, byte power) {
    Arrays.fill(powers, from, to, power);
  }

  /**
   * Writes the numbers of one power to a lower one, where all fit.
   *
   * @param rows how many of the first rows are looked at
   * @param power power of ten of those that are changed
   * @param lower their new power
   * @return false, and nothing is changed, where one does not fit
   */
  public boolean lower(int rows, int power, int lower) {
    int first = 0;
    while (first < rows && powers[first] != power) {
      first++;
    }
    if (first == rows) {
      return true;
    }
    if (!PowersOfTen.fitsLong(power - lower)) {
      return false;
    }
    long factor = PowersOfTen.asLong(power - lower);
    for (int i = first; i < rows; i++) {
      long m = mantissas[i];
      if (powers[i] == power && Math.multiplyHigh(m, factor) != m * factor >> 63) {
        return false;
      }
    }
    for (int i = first; i < rows; i++) {
      if (powers[i] == power) {
        mantissas[i] *= factor;
        powers[i] = (byte) lower;
      }
    }
    return true;
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
