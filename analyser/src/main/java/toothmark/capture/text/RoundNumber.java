package toothmark.capture.text;

import java.math.BigDecimal;
import java.math.MathContext;
import java.util.OptionalDouble;

/** Finds the shortest decimal number near a fitted one. */
final class RoundNumber {

  private RoundNumber() {}

  /**
   * The interval that is, or whose rate is, the number of fewest digits within the uncertainty of a
   * fit. Recorders count a crystal down by whole numbers, so that is the likely truth.
   *
   * @param fitted seconds, positive
   * @param uncertainty seconds
   * @param mostDigits how many digits it may have
   * @return the round interval; empty when none is near enough
   */
  static OptionalDouble interval(double fitted, double uncertainty, int mostDigits) {
    for (int digits = 1; digits <= mostDigits; digits++) {
      double interval = rounded(fitted, digits);
      if (Math.abs(interval - fitted) <= uncertainty) {
        return OptionalDouble.of(interval);
      }
      double fromRate = 1 / rounded(1 / fitted, digits);
      if (Math.abs(fromRate - fitted) <= uncertainty) {
        return OptionalDouble.of(fromRate);
      }
    }
    return OptionalDouble.empty();
  }

  /**
   * The number of fewest digits within the uncertainty of a fitted one.
   *
   * @param fitted any number
   * @param uncertainty in the same unit, not negative
   * @return the round number; the fitted one when none is near enough
   */
  static double near(double fitted, double uncertainty) {
    if (Math.abs(fitted) <= uncertainty) {
      return 0;
    }
    for (int digits = 1; digits <= 15; digits++) {
      double round = rounded(fitted, digits);
      if (Math.abs(round - fitted) <= uncertainty) {
        return round;
      }
    }
    return fitted;
  }

  private static double rounded(double x, int digits) {
    return new BigDecimal(x).round(new MathContext(digits)).doubleValue();
  }
}
