package toothmark.capture.store;

/** Powers of ten that a double, or a long, holds exactly. */
final class PowersOfTen {

  /**
   * Largest power of ten that is exact in a double: 10^22 = 2^22 · 5^22, and 5^22 is below 2^53.
   */
  static final int EXACT_DOUBLE = 22;

  /** Largest integer up to which every integer is a double. */
  static final long EXACT_INTEGER = 1L << 53;

  private static final double[] DOUBLES = new double[EXACT_DOUBLE + 1];
  private static final long[] LONGS = new long[19];

  static {
    double d = 1;
    for (int i = 0; i <= EXACT_DOUBLE; i++) {
      DOUBLES[i] = d;
      d *= 10;
    }
    long l = 1;
    for (int i = 0; i < LONGS.length; i++) {
      LONGS[i] = l;
      l *= 10;
    }
  }

  private PowersOfTen() {}

  static double asDouble(int power) {
    return DOUBLES[power];
  }

  static long asLong(int power) {
    return LONGS[power];
  }

  /** Whether a power of ten fits a long. */
  static boolean fitsLong(int power) {
    return power >= 0 && power < LONGS.length;
  }

  /**
   * The double nearest to mantissa · 10^power, by one rounded operation on two exact doubles.
   *
   * <p>Source: W. D. Clinger, How to read floating point numbers accurately, PLDI 1990,
   * doi:10.1145/93542.93557.
   *
   * @param mantissa of magnitude up to 2^53
   * @param power from -22 to 22
   */
  static double scale(long mantissa, int power) {
    return power < 0 ? mantissa / DOUBLES[-power] : mantissa * DOUBLES[power];
  }

  static boolean isExact(long mantissa, int power) {
    return mantissa <= EXACT_INTEGER
        && mantissa >= -EXACT_INTEGER
        && power <= EXACT_DOUBLE
        && power >= -EXACT_DOUBLE;
  }
}
