package toothmark.capture.text;

import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;

/** Numbers as a person reads them; the same everywhere, whatever the locale. */
final class Shown {

  private static final MathContext DIGITS = new MathContext(7);

  private Shown() {}

  /** A time with the prefix that suits it, such as {@code 12.5 µs}. */
  static String seconds(double seconds) {
    return withPrefix(seconds, "s");
  }

  /** A rate with the prefix that suits it, such as {@code 80 kHz}. */
  static String hertz(double hertz) {
    return withPrefix(hertz, "Hz");
  }

  private static String withPrefix(double value, String symbol) {
    if (value == 0) {
      return "0 " + symbol;
    }
    int third = (int) Math.floor(Math.log10(Math.abs(value)) / 3 + 1e-9);
    third = Math.max(-4, Math.min(2, third));
    String[] prefixes = {"p", "n", "µ", "m", "", "k", "M"};
    BigDecimal scaled = new BigDecimal(value).scaleByPowerOfTen(-3 * third);
    return number(scaled) + " " + prefixes[third + 4] + symbol;
  }

  /** A number without an exponent. */
  static String number(double value) {
    return number(new BigDecimal(value));
  }

  private static String number(BigDecimal value) {
    return value.round(DIGITS).stripTrailingZeros().toPlainString();
  }

  /** A time of day, {@code h:mm:ss} with up to six decimals. */
  static String timeOfDay(double secondsSinceMidnight) {
    long minutes = (long) Math.floor(secondsSinceMidnight / 60);
    BigDecimal seconds =
        new BigDecimal(secondsSinceMidnight - 60.0 * minutes)
            .setScale(6, RoundingMode.HALF_UP)
            .stripTrailingZeros();
    String s = seconds.toPlainString();
    return minutes / 60
        + (minutes % 60 < 10 ? ":0" : ":")
        + minutes % 60
        + (s.indexOf('.') == 1 || s.length() == 1 ? ":0" : ":")
        + s;
  }

  /** A count with its noun: {@code 1 row}, {@code 12 rows}. */
  static String count(long n, String noun) {
    return n + " " + noun + (n == 1 ? "" : "s");
  }
}
