package toothmark.units;

import java.util.Locale;

/**
 * Numbers as people read them: a true minus, a thin space before the unit, and no more digits than
 * the uncertainty deserves.
 */
public final class Say {

  /** Factor from a standard uncertainty to the 95 % interval. JCGM 100:2008 (GUM), table G.1. */
  public static final double EXPAND = 1.96;

  /** Thin space between a number and its unit, at which no line breaks. */
  public static final String THIN = "\u202f";

  private static final String PLUS_MINUS = "\u00a0±\u00a0";

  private static final String MINUS = "\u2212";

  /** Decimals that a bare number shows at most. */
  private static final int MOST_PLACES = 9;

  private Say() {}

  /**
   * A number with a fixed count of decimals.
   *
   * @param value finite
   * @param decimals 0 to 9
   * @return such as {@code −2.63}
   */
  public static String number(double value, int decimals) {
    String digits = PlainNumber.fixed(value, decimals);
    return digits.startsWith("-") ? MINUS + digits.substring(1) : digits;
  }

  /**
   * A count, its thousands set apart.
   *
   * @param value any
   * @return such as {@code 12 345}, with thin spaces
   */
  public static String count(long value) {
    return String.format(Locale.ROOT, "%,d", value).replace(",", THIN);
  }

  /**
   * A value with its 95 % interval, both with the digits that two digits of the interval decide
   * (GUM 7.2.6).
   *
   * @param measured value and standard uncertainty
   * @param unit with its space in front; empty for a bare number
   * @return such as {@code −2.63 ± 0.08°}
   */
  public static String interval(Measured measured, String unit) {
    double half = EXPAND * measured.standardUncertainty();
    int decimals = decimals(half);
    return number(measured.value(), decimals) + PLUS_MINUS + number(half, decimals) + unit;
  }

  /**
   * Whether a value can be told from zero.
   *
   * @param measured value and standard uncertainty
   * @return whether zero is outside its 95 % interval
   */
  public static boolean isSeen(Measured measured) {
    return Math.abs(measured.value()) > EXPAND * measured.standardUncertainty();
  }

  /**
   * How large a value may be, either way.
   *
   * @param measured value and standard uncertainty
   * @param unit with its space in front; empty for a bare number
   * @return the outer end of its 95 % interval, such as {@code 0.13°}
   */
  public static String bound(Measured measured, String unit) {
    double half = EXPAND * measured.standardUncertainty();
    return number(Math.abs(measured.value()) + half, decimals(half)) + unit;
  }

  /**
   * Decimals that show two significant digits of an uncertainty.
   *
   * @param half half width of an interval, not negative
   * @return 0 to 4; 3 for an uncertainty of 0
   */
  public static int decimals(double half) {
    if (half <= 0) {
      return 3;
    }
    int firstDigit = (int) Math.floor(Math.log10(half * (1 + 1e-12)));
    return Math.max(0, Math.min(1 - firstDigit, 4));
  }

  /**
   * An angle.
   *
   * @param value degrees
   * @return two decimals under 10 degrees, else one
   */
  public static String degrees(double value) {
    return number(value, Math.abs(value) < 10 ? 2 : 1) + "°";
  }

  /**
   * An angle with its 95 % interval.
   *
   * @param measured degrees
   * @return such as {@code 87.37 ± 0.04°}
   */
  public static String degrees(Measured measured) {
    return interval(measured, "°");
  }

  /**
   * A speed.
   *
   * @param value rev/min
   * @return whole revolutions
   */
  public static String rpm(double value) {
    return number(value, 0) + THIN + "rev/min";
  }

  /**
   * A length of time, in the unit that suits it.
   *
   * @param seconds s
   * @return three digits or so, such as {@code 12.5 µs}
   */
  public static String seconds(double seconds) {
    double size = Math.abs(seconds);
    if (size >= 1 || size == 0) {
      return threeDigits(seconds) + THIN + "s";
    }
    return size >= 1e-3
        ? threeDigits(seconds * 1e3) + THIN + "ms"
        : threeDigits(seconds * 1e6) + THIN + "µs";
  }

  /**
   * An instant of the capture.
   *
   * @param seconds s from the capture's own zero
   * @return to the millisecond
   */
  public static String at(double seconds) {
    return number(seconds, 3) + THIN + "s";
  }

  /**
   * A share.
   *
   * @param share 0 to 1
   * @return percent
   */
  public static String percent(double share) {
    double p = share * 100;
    return number(p, p < 10 && p > 0 ? 1 : 0) + THIN + "%";
  }

  /**
   * A number with a unit prefix.
   *
   * @param value any, in the plain unit
   * @param unit such as {@code Hz} or {@code V}; empty for a bare number, which gets no prefix
   * @return such as {@code 1.00 MHz}
   */
  public static String scaled(double value, String unit) {
    double size = Math.abs(value);
    if (unit.isEmpty()) {
      int places = size == 0 ? 0 : Math.max(0, 2 - (int) Math.floor(Math.log10(size)));
      return number(value, Math.min(MOST_PLACES, places));
    }
    if (size >= 1e6) {
      return threeDigits(value / 1e6) + THIN + "M" + unit;
    }
    if (size >= 1e3) {
      return threeDigits(value / 1e3) + THIN + "k" + unit;
    }
    return size >= 1 || size == 0
        ? threeDigits(value) + THIN + unit
        : threeDigits(value * 1e3) + THIN + "m" + unit;
  }

  private static String threeDigits(double value) {
    double size = Math.abs(value);
    return number(value, size >= 99.95 ? 0 : size >= 9.995 ? 1 : 2);
  }
}
