package toothmark.capture.text;

/** Hexadecimal words, as logic analysers write the state of a bus. */
final class HexText {

  private HexText() {}

  /** Whether a cell is {@code 0x…}. */
  static boolean hasPrefix(String cell) {
    return cell.length() > 2
        && cell.charAt(0) == '0'
        && (cell.charAt(1) == 'x' || cell.charAt(1) == 'X')
        && value(cell) >= 0;
  }

  /** Digits of a word, without prefix and suffix. */
  static String digits(String cell) {
    String c = cell;
    if (c.startsWith("0x") || c.startsWith("0X")) {
      c = c.substring(2);
    } else if (c.startsWith("$")) {
      c = c.substring(1);
    } else if (c.endsWith("h") || c.endsWith("H")) {
      c = c.substring(0, c.length() - 1);
    }
    return c;
  }

  /** A word of noughts and ones as a number; -1 when the cell is none of up to 52 bits. */
  static long binary(String cell) {
    return cell.length() > 52 ? -1 : number(cell, 2);
  }

  /** The word as a number; -1 when the cell is no hexadecimal word of up to 52 bits. */
  static long value(String cell) {
    String d = digits(cell);
    return d.length() > 13 ? -1 : number(d, 16);
  }

  private static long number(String digits, int base) {
    long v = 0;
    for (int i = 0; i < digits.length(); i++) {
      int digit = Character.digit(digits.charAt(i), base);
      if (digit < 0) {
        return -1;
      }
      v = v * base + digit;
    }
    return digits.isEmpty() ? -1 : v;
  }
}
