package toothmark.capture.text;

import ch.randelshofer.fastdoubleparser.JavaDoubleParser;
import toothmark.capture.store.NumberBlock;

/** Reads plain decimal numbers from bytes, eight digits at a time. */
final class Numbers {

  /** What {@link #read} gives when the cell is not a plain number. */
  static final int NOT_PLAIN = -1;

  /** Bytes that must follow the text in the array. */
  static final int PADDING = 32;

  private static final int MOST_DIGITS = 18;
  private static final long MOST_EXACT = 1L << 53;
  private static final int MOST_EXACT_POWER = 22;
  private static final int NO_EXPONENT = Integer.MAX_VALUE;
  private final byte decimalMark;
  private final byte delimiter;
  private final boolean blanks;
  private byte[] text;
  private int position;
  private long mantissa;

  Numbers(Dialect dialect) {
    decimalMark = (byte) dialect.decimalMark();
    delimiter = (byte) dialect.delimiter();
    blanks = dialect.delimiter() == Dialect.BLANKS;
  }

  /** The bytes to read from; {@link #PADDING} of them must follow the last cell. */
  void from(byte[] bytes) {
    text = bytes;
  }

  /** Whether a byte ends a cell. */
  boolean endsCell(byte c) {
    return c == delimiter || c == '\n' || c == '\r' || blanks && c == '\t';
  }

  /**
   * Reads the number that is a whole cell.
   *
   * @param start first byte of the cell
   * @param shift power of ten that is applied when the block is packed
   * @param into where the number goes
   * @param row which place in it
   * @return the byte that ends the cell, or {@link #NOT_PLAIN}
   */
  int read(int start, int shift, NumberBlock into, int row) {
    position = start;
    boolean negative = blanksAndSign();
    int first = position;
    mantissa = 0;
    takeDigits();
    int count = position - first;
    int power = 0;
    if (text[position] == decimalMark) {
      int point = position++;
      takeDigits();
      power = point + 1 - position;
      count -= power;
    }
    if (count == 0) {
      return NOT_PLAIN;
    }
    if ((text[position] | 0x20) == 'e') {
      int exponent = exponent();
      if (exponent == NO_EXPONENT) {
        return NOT_PLAIN;
      }
      power += exponent;
    }
    if (!atCellEnd()) {
      return NOT_PLAIN;
    }
    boolean exact = count <= MOST_DIGITS && mantissa <= MOST_EXACT;
    if (!exact || power < -MOST_EXACT_POWER || power > MOST_EXACT_POWER) {
      return wide(start, shift, into, row);
    }
    into.set(row, negative ? -mantissa : mantissa, (byte) power);
    return position;
  }

  private boolean blanksAndSign() {
    byte c = text[position];
    while (c == ' ' || c == '\t' && delimiter != '\t') {
      c = text[++position];
    }
    if (c == '-' || c == '+') {
      position++;
    }
    return c == '-';
  }

  private boolean atCellEnd() {
    byte c = text[position];
    while (c == ' ' && !blanks) {
      c = text[++position];
    }
    return endsCell(c);
  }

  /** Appends the digits at the position to the mantissa; beyond 18 of them it is of no use. */
  private void takeDigits() {
    int p = position;
    long m = mantissa;
    int n;
    do {
      long w = Digits.word(text, p);
      n = Digits.count(w);
      m = Digits.append(m, w, n);
      p += n;
    } while (n == 8);
    position = p;
    mantissa = m;
  }

  /** The exponent whose letter is at the position; moves behind it. */
  private int exponent() {
    byte[] b = text;
    int p = position + 1;
    byte sign = b[p];
    if (sign == '-' || sign == '+') {
      p++;
    }
    int first = p;
    int e = 0;
    while (b[p] >= '0' && b[p] <= '9' && p < first + 4) {
      e = 10 * e + b[p++] - '0';
    }
    position = p;
    if (p == first || p > first + 3) {
      return NO_EXPONENT;
    }
    return sign == '-' ? -e : e;
  }

  /** Numbers of many digits or of great powers, correctly rounded by the library. */
  private int wide(int start, int shift, NumberBlock into, int row) {
    int end = start;
    while (!endsCell(text[end]) || blanks && end == start) {
      end++;
    }
    int from = start;
    int to = end;
    while (from < to && text[from] <= ' ') {
      from++;
    }
    while (to > from && text[to - 1] <= ' ') {
      to--;
    }
    if (shift != 0 || decimalMark != '.' || !onlyNumberBytes(from, to)) {
      return NOT_PLAIN;
    }
    double value;
    try {
      value = JavaDoubleParser.parseDouble(text, from, to - from);
    } catch (NumberFormatException e) {
      return NOT_PLAIN;
    }
    if (Double.isInfinite(value)) {
      return NOT_PLAIN;
    }
    into.set(row, Double.doubleToRawLongBits(value), NumberBlock.BITS);
    return end;
  }

  /** The library also takes Java's suffixes, hexadecimal floats and words. */
  private boolean onlyNumberBytes(int from, int to) {
    for (int i = from; i < to; i++) {
      byte c = text[i];
      boolean mark = c == '.' || c == '-' || c == '+' || (c | 0x20) == 'e';
      if (!mark && (c < '0' || c > '9')) {
        return false;
      }
    }
    return to > from;
  }
}
