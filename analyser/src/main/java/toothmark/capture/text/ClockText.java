package toothmark.capture.text;

import java.math.BigDecimal;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Times of day, as recorders that follow the wall clock write them. */
final class ClockText {

  private static final Pattern BEHIND =
      Pattern.compile("(?: ?([aApP])\\.?[mM]\\.?| ?Z| ?[+-]\\d\\d:?\\d\\d)$");

  private ClockText() {}

  /**
   * Seconds since midnight.
   *
   * <p>Twelve hours and {@code am} or {@code pm} are understood, and a zone behind the time passed
   * over.
   *
   * @param text {@code h:mm:ss} or {@code m:ss} with or without a fraction, perhaps behind a date
   *     and a blank or {@code T}
   * @param decimalMark of the file; a point is understood as well
   * @return seconds, or null when the text is no time of day
   */
  static BigDecimal seconds(String text, char decimalMark) {
    int colon = text.indexOf(':');
    if (colon < 1) {
      return null;
    }
    Matcher m = BEHIND.matcher(text.substring(afterDate(text, colon)));
    String t = m.replaceFirst("");
    boolean twelve = m.reset().find() && m.group(1) != null;
    int second = t.indexOf(':', t.indexOf(':') + 1);
    int first = t.indexOf(':');
    int hours = second < 0 ? 0 : small(t, 0, first);
    int minutes = second < 0 ? small(t, 0, first) : small(t, first + 1, second);
    BigDecimal rest = fraction(t.substring((second < 0 ? first : second) + 1), decimalMark);
    if (hours < 0 || minutes < 0 || rest == null) {
      return null;
    }
    if (twelve && hours <= 12) {
      hours = hours % 12 + (Character.toLowerCase(m.group(1).charAt(0)) == 'p' ? 12 : 0);
    }
    return rest.add(BigDecimal.valueOf(3600L * hours + 60L * minutes));
  }

  private static int afterDate(String text, int colon) {
    int p = colon;
    while (p > 0 && Character.isDigit(text.charAt(p - 1))) {
      p--;
    }
    return p > 0 && (text.charAt(p - 1) == ' ' || text.charAt(p - 1) == 'T')
        ? p
        : p > 0 ? colon : 0;
  }

  private static int small(String t, int from, int to) {
    if (to <= from || to > from + 3) {
      return -1;
    }
    int n = 0;
    for (int i = from; i < to; i++) {
      if (t.charAt(i) < '0' || t.charAt(i) > '9') {
        return -1;
      }
      n = 10 * n + t.charAt(i) - '0';
    }
    return n;
  }

  private static BigDecimal fraction(String t, char decimalMark) {
    String s = t;
    boolean point = false;
    for (int i = 0; i < s.length(); i++) {
      char c = s.charAt(i);
      boolean mark = c == '.' || c == decimalMark || c == ':' && i == 2;
      if (mark && !point && i > 0) {
        point = true;
      } else if (c < '0' || c > '9') {
        return null;
      }
    }
    return s.isEmpty() ? null : new BigDecimal(s.replace(decimalMark, '.').replace(':', '.'));
  }
}
