package toothmark.capture.text;

import java.math.BigDecimal;
import java.math.MathContext;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * What a number is in: a plain unit, a unit for each converter count ({@code mV/LSB}), or converter
 * counts for each unit ({@code counts per volt}).
 *
 * @param unit without the count
 * @param inverse whether the number says how many counts make a unit
 */
record CountUnit(Unit unit, boolean inverse) {

  /** No unit at all. */
  static final CountUnit NONE = new CountUnit(Unit.NONE, false);

  /** Letters of the longest quotient; longer texts are none. */
  private static final int LONGEST = 80;

  private static final Pattern QUOTIENT =
      Pattern.compile("(?i)[(\\[]?([^/()\\[\\]]+?)(?: ?/ ?| per )([^/()\\[\\]]+?)[)\\]]?");
  private static final Set<String> COUNTS =
      Words.set("count,counts,lsb,lsbs,bit,bits,code,codes,step,steps,digit,digits,adu");

  /**
   * Understands such a quotient.
   *
   * @param text as written, in brackets or not
   * @return null when it is none
   */
  static CountUnit parse(String text) {
    Matcher m = QUOTIENT.matcher(text.strip());
    if (text.length() > LONGEST || !m.matches()) {
      return null;
    }
    if (isCount(m.group(2))) {
      Unit unit = Unit.parse(m.group(1));
      return isLevel(unit) ? new CountUnit(unit, false) : null;
    }
    Unit unit = isCount(m.group(1)) ? Unit.parse(m.group(2)) : null;
    return isLevel(unit) ? new CountUnit(unit, true) : null;
  }

  /** Whether a unit is one that a converter measures. */
  static boolean isLevel(Unit unit) {
    return unit != null && (unit.symbol().equals("V") || unit.symbol().equals("A"));
  }

  /** Whether a word means steps of a converter. */
  static boolean isCount(String text) {
    String word = Words.normal(text);
    return COUNTS.contains(word.startsWith("adc ") ? word.substring(4) : word);
  }

  /** A number in the base unit, for each count where there are counts. */
  BigDecimal inBaseUnit(BigDecimal number) {
    if (!inverse || number.signum() == 0) {
      return number.scaleByPowerOfTen(unit.power());
    }
    return BigDecimal.ONE
        .scaleByPowerOfTen(unit.power())
        .divide(number, MathContext.DECIMAL64)
        .stripTrailingZeros();
  }
}
