package toothmark.capture.text;

import java.math.BigDecimal;
import java.util.Locale;

/**
 * What one cell says.
 *
 * @param kind what it is
 * @param number the number in the base unit of {@code unit}; a clock time in seconds since
 *     midnight; null for every other kind
 * @param unit a unit glued to the number; {@link Unit#NONE} when there is none
 */
record Cell(Kind kind, BigDecimal number, Unit unit) {

  /** What a cell can be. */
  enum Kind {
    NUMBER,
    CLOCK,
    EMPTY,
    MISSING,
    ABOVE_RANGE,
    BELOW_RANGE,
    TEXT
  }

  private static final Cell EMPTY = new Cell(Kind.EMPTY, null, Unit.NONE);
  private static final Cell MISSING = new Cell(Kind.MISSING, null, Unit.NONE);
  private static final Cell ABOVE = new Cell(Kind.ABOVE_RANGE, null, Unit.NONE);
  private static final Cell BELOW = new Cell(Kind.BELOW_RANGE, null, Unit.NONE);
  private static final Cell TEXT = new Cell(Kind.TEXT, null, Unit.NONE);

  /** Whether a cell may stand in a column of numbers. */
  boolean isNumberLike() {
    return kind != Kind.TEXT && kind != Kind.CLOCK;
  }

  /**
   * Understands a cell.
   *
   * @param text without quotes
   * @param decimalMark {@code .} or {@code ,}
   */
  static Cell of(String text, char decimalMark) {
    String t = text.strip();
    if (t.isEmpty()) {
      return EMPTY;
    }
    Cell number = number(t, decimalMark);
    if (number != null) {
      return number;
    }
    BigDecimal clock = ClockText.seconds(t, decimalMark);
    return clock != null ? new Cell(Kind.CLOCK, clock, Unit.NONE) : word(t);
  }

  private static Cell word(String t) {
    boolean negative = t.startsWith("-") || t.startsWith("\u2212");
    String w = negative || t.startsWith("+") ? t.substring(1).strip() : t;
    switch (w.toLowerCase(Locale.ROOT)) {
      case "nan",
          "na",
          "n/a",
          "null",
          "none",
          "?",
          "",
          "-",
          "--",
          "---",
          "#n/a",
          "1.#qnan",
          "1.#ind",
          "nan(ind)" -> {
        return MISSING;
      }
      case "under", "underflow", "underrange", "under range", "ul" -> {
        return negative ? ABOVE : BELOW;
      }
      case "inf",
          "infinity",
          "\u221e",
          "ol",
          "o.l",
          "0.l",
          "ovl",
          "ovld",
          "ovr",
          "over",
          "overflow",
          "overrange",
          "over range",
          "overload",
          "clip",
          "clipped",
          "1.#inf" -> {
        return negative ? BELOW : ABOVE;
      }
      default -> {
        return allOf(w, '*') || allOf(w, '#') ? negative ? BELOW : ABOVE : TEXT;
      }
    }
  }

  private static boolean allOf(String w, char c) {
    for (int i = 0; i < w.length(); i++) {
      if (w.charAt(i) != c) {
        return false;
      }
    }
    return w.length() > 1;
  }

  /** A number with optional thousands marks, exponent and unit; null when it is none. */
  private static Cell number(String t, char decimalMark) {
    StringBuilder digits = new StringBuilder(t.length());
    int p = sign(t, 0, digits);
    int end = integerPart(t, p, decimalMark, digits);
    if (end < 0) {
      return null;
    }
    boolean any = end > p;
    p = end;
    boolean open = false;
    if (p < t.length() && t.charAt(p) == decimalMark) {
      digits.append('.');
      int q = digits(t, p + 1, digits);
      any |= q > p + 1;
      open = q == p + 1 && decimalMark == ','; // a comma before a letter parts columns
      p = q;
    }
    if (!any) {
      return null;
    }
    p = exponent(t, p, digits);
    Unit unit = Unit.NONE;
    if (p < t.length()) {
      unit = open ? null : Unit.parse(t.substring(p));
      if (unit == null) {
        return null;
      }
    }
    BigDecimal number = new BigDecimal(digits.toString()).scaleByPowerOfTen(unit.power());
    return new Cell(Kind.NUMBER, number, unit);
  }

  private static int sign(String t, int p, StringBuilder digits) {
    char c = t.charAt(p);
    if (c == '-' || c == '\u2212' || c == '\u2013') {
      digits.append('-');
      return p + 1;
    }
    return c == '+' ? p + 1 : p;
  }

  private static int digits(String t, int from, StringBuilder digits) {
    int p = from;
    while (p < t.length() && t.charAt(p) >= '0' && t.charAt(p) <= '9') {
      digits.append(t.charAt(p++));
    }
    return p;
  }

  /** Digits, perhaps in groups of three; -1 when a mark between them makes no sense. */
  private static int integerPart(String t, int from, char decimalMark, StringBuilder digits) {
    int p = digits(t, from, digits);
    if (p == from
        || p - from > 3
        || p >= t.length()
        || !isThousandsMark(t.charAt(p), decimalMark)) {
      return p;
    }
    char mark = t.charAt(p);
    if (p + 1 >= t.length() || !isDigit(t.charAt(p + 1))) {
      return mark == ' ' ? p : -1;
    }
    if (t.charAt(from) == '0') {
      return -1;
    }
    while (p + 1 < t.length() && t.charAt(p) == mark && (mark != ' ' || isDigit(t.charAt(p + 1)))) {
      int q = digits(t, p + 1, digits);
      if (q != p + 4) {
        return -1;
      }
      p = q;
    }
    return p;
  }

  private static boolean isDigit(char c) {
    return c >= '0' && c <= '9';
  }

  private static boolean isThousandsMark(char c, char decimalMark) {
    return switch (c) {
      case '.', ',' -> c != decimalMark;
      case '\'', '\u2019', ' ', '\u00a0', '\u202f', '\u2009', '_' -> true;
      default -> false;
    };
  }

  private static int exponent(String t, int from, StringBuilder digits) {
    if (from >= t.length() || "eEdD".indexOf(t.charAt(from)) < 0) {
      return from;
    }
    int p = from + 1;
    StringBuilder power = new StringBuilder(4).append('e');
    if (p < t.length()) {
      p = sign(t, p, power);
    }
    int end = digits(t, p, power);
    if (end == p || end > p + 3) {
      return from;
    }
    digits.append(power);
    return end;
  }
}
