package toothmark.units;

import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;
import java.nio.charset.StandardCharsets;

/**
 * Numbers for scripts and spreadsheets: decimal point, no grouping, ASCII.
 *
 * <p>The digits come from the exact binary value, rounded half up, so that every Java gives the
 * same bytes; {@link Double#toString(double)} changed with JDK 19.
 */
public final class PlainNumber {

  /** Enough for any measured quantity: a part in 10^9. */
  private static final MathContext SIGNIFICANT = new MathContext(9, RoundingMode.HALF_UP);

  /** Under this power of ten below the point zeros are no longer spelled out. */
  private static final int LONGEST_SCALE = 15;

  private static final long[] POWERS = {
    1L, 10L, 100L, 1_000L, 10_000L, 100_000L, 1_000_000L, 10_000_000L, 100_000_000L, 1_000_000_000L
  };

  private PlainNumber() {}

  /**
   * Nine significant digits, trailing zeros dropped.
   *
   * @param value finite
   * @return a number as JSON and CSV write it
   * @throws IllegalArgumentException if the value is not finite, for which neither has a number
   */
  public static String significant(double value) {
    requireFinite(value);
    BigDecimal rounded = new BigDecimal(value).round(SIGNIFICANT).stripTrailingZeros();
    return rounded.scale() > LONGEST_SCALE || rounded.scale() < -LONGEST_SCALE
        ? rounded.toString()
        : rounded.toPlainString();
  }

  /**
   * A fixed number of decimals.
   *
   * @param value finite
   * @param decimals 0 to 9
   * @return such as {@code -0.250}; never a negative zero
   * @throws IllegalArgumentException if the value is not finite
   */
  public static String fixed(double value, int decimals) {
    byte[] digits = new byte[32];
    int length = putFixed(value, decimals, digits, 0);
    return length > 0
        ? new String(digits, 0, length, StandardCharsets.US_ASCII)
        : new BigDecimal(value).setScale(decimals, RoundingMode.HALF_UP).toPlainString();
  }

  /**
   * Writes a fixed number of decimals without making garbage, where the value leaves room for it.
   *
   * @param value finite
   * @param decimals 0 to 9
   * @param into where to put the ASCII digits; needs 20 places from {@code at} on
   * @param at index of the first
   * @return bytes written; 0 where the value is too large for whole arithmetic and nothing was
   *     written
   * @throws IllegalArgumentException if the value is not finite
   */
  public static int putFixed(double value, int decimals, byte[] into, int at) {
    requireFinite(value);
    double scaled = Math.abs(value) * POWERS[decimals];
    if (scaled >= 1e13) {
      return 0;
    }
    long whole = (long) (scaled + 0.5);
    int from = at;
    if (value < 0 && whole != 0) {
      into[from++] = '-';
    }
    int end = from + Math.max(digits(whole), decimals + 1) + (decimals > 0 ? 1 : 0);
    for (int i = end - 1; i >= from; i--) {
      if (decimals > 0 && end - 1 - i == decimals) {
        into[i] = '.';
      } else {
        into[i] = (byte) ('0' + whole % 10);
        whole /= 10;
      }
    }
    return end - at;
  }

  private static int digits(long value) {
    int n = 1;
    for (long rest = value / 10; rest > 0; rest /= 10) {
      n++;
    }
    return n;
  }

  private static void requireFinite(double value) {
    if (!Double.isFinite(value)) {
      throw new IllegalArgumentException("a result must be a finite number, got " + value);
    }
  }
}
