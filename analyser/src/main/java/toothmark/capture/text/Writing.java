package toothmark.capture.text;

import java.util.Arrays;

/** How the cells of one column are written, behind their sign: two words of bytes. */
final class Writing {

  /** Bytes of a word. */
  static final int WORD = 8;

  /** What makes the sign and the two digits of an exponent nought. */
  static final int PLUS_NOUGHT = 0x0030302b;

  /** The power of no number yet: every cell lies below it. */
  static final int NO_POWER = 1 << 20;

  /** Digits of the first word; those before the mark stand in it. */
  private static final int MOST_IN_FIRST = 7;

  /** So many digits are always below 2^53. */
  private static final int MOST_DIGITS = 15;

  /** With the byte that ends it a cell then lies within two words. */
  private static final int MOST_BYTES = 15;

  /** Digits that a long holds whatever they are. */
  private static final int MOST_KEPT = 18;

  private static final int EXPONENT_BYTES = 4;
  private static final int LARGEST_EXPONENT = 39;
  private static final int MINUS = 6 << 5;

  /** Bytes that must stand there, '0' for a digit and '+' for the sign of an exponent. */
  long like;

  long likeThen;

  /** What is added to the difference, so that it carries into the bits where it is wrong. */
  long carry;

  long carryThen;
  long wrong;
  long wrongThen;

  /** Whether it can be read by its places. */
  final boolean usable;

  /** Bytes, without the sign and the byte that ends the cell. */
  final int length;

  /** Whether there is one, of a sign and two digits. */
  final boolean exponent;

  /** Power of ten to which the numbers are brought. */
  int power;

  /** Digits of the first word before the mark, and after it. */
  final long whole;

  final long after;

  /** By how many bits they move to the end of a word. */
  final int first;

  /** Digits of the second word, and by how many bits they move to the end of a word. */
  final long secondDigits;

  final int second;

  /** What the first digits are times before the second ones. */
  final long factor;

  /**
   * What a number is times for each exponent, by {@link #code}, to come to the power; 0 where it
   * does not.
   */
  final long[] factors = new long[256];

  /** Least of the factors used since the power was brought here, or looked at; 0 for none. */
  long least;

  private final int decimals;
  private final int digits;

  /**
   * Learns from a cell.
   *
   * @param text holds it
   * @param start first byte behind its sign
   * @param decimalMark of the text
   */
  Writing(byte[] text, int start, byte decimalMark) {
    int p = endOfDigits(text, start);
    int before = p - start;
    int mark = p;
    if (text[p] == decimalMark) {
      p = endOfDigits(text, p + 1);
    }
    decimals = Math.max(0, p - mark - 1);
    digits = before + decimals;
    exponent = (text[p] | 0x20) == 'e';
    length = p - start + (exponent ? EXPONENT_BYTES : 0);
    usable = digits > 0 && before <= MOST_IN_FIRST && digits <= MOST_DIGITS && length <= MOST_BYTES;
    int inFirst = Math.min(digits, MOST_IN_FIRST);
    whole = lowBytes(before);
    after = lowBytes(1 + inFirst) & ~lowBytes(1 + before);
    first = 8 * (MOST_IN_FIRST - inFirst);
    secondDigits = lowBytes(digits - inFirst);
    second = 8 * (WORD - digits + inFirst);
    factor = usable ? Digits.powerOfTen(digits - inFirst) : 0;
    for (int i = 0; usable && i <= length; i++) {
      expect(i, text[start + i], i - p + start);
    }
    bringTo(exponent ? NO_POWER : -decimals);
  }

  private static int endOfDigits(byte[] text, int from) {
    int p = from;
    while (isDigit(text[p])) {
      p++;
    }
    return p;
  }

  private static boolean isDigit(byte b) {
    return b >= '0' && b <= '9';
  }

  private static long lowBytes(int count) {
    return count >= WORD ? -1 : (1L << 8 * count) - 1;
  }

  private void expect(int at, byte one, int inExponent) {
    if (exponent && inExponent == 1) {
      expect(at, '+', 0, 0xf9); // '-' too, or two bytes between them, which have no factor
    } else if (exponent && inExponent == 2) {
      expect(at, '0', 0, 0xfc); // a digit up to 3
    } else if (isDigit(one)) {
      expect(at, '0', 0x06, 0xf0);
    } else {
      expect(at, one, 0x7f, 0x80);
    }
  }

  private void expect(int at, int byteLike, int carries, int bits) {
    int shift = 8 * (at % WORD);
    if (at < WORD) {
      like |= (long) byteLike << shift;
      carry |= (long) carries << shift;
      wrong |= (long) bits << shift;
    } else {
      likeThen |= (long) byteLike << shift;
      carryThen |= (long) carries << shift;
      wrongThen |= (long) bits << shift;
    }
  }

  /**
   * Has the numbers brought to another power.
   *
   * @param power of ten
   */
  void bringTo(int power) {
    this.power = power;
    least = 1;
    Arrays.fill(factors, 0);
    for (int e = 0; exponent && e <= LARGEST_EXPONENT; e++) {
      int size = e / 10 << 4 | e % 10;
      factors[size] = factorFor(e);
      factors[size | MINUS] = factorFor(-e);
    }
  }

  /** Brings the numbers that follow to the lowest power that those since the last call needed. */
  void raise() {
    int higher = 0;
    while (least < Long.MAX_VALUE && least >= Digits.powerOfTen(higher + 1)) {
      higher++;
    }
    if (higher > 0) {
      bringTo(power + higher);
    }
    least = Long.MAX_VALUE;
  }

  private long factorFor(int e) {
    int above = e - decimals - power;
    return above < 0 || above > MOST_KEPT - digits ? 0 : Digits.powerOfTen(above);
  }

  /**
   * The exponent of a cell in a byte: its sign, two bits of its first digit and four of its second.
   *
   * @param text holds it
   * @param end behind the byte that ends the cell
   */
  static int code(byte[] text, int end) {
    int e = (int) Digits.word(text, end - EXPONENT_BYTES) ^ PLUS_NOUGHT;
    return (e & 6) << 5 | (e >>> 8 & 3) << 4 | e >>> 16 & 15;
  }
}
