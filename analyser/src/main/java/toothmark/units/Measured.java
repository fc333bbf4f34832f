package toothmark.units;

/**
 * A measured value with its standard uncertainty.
 *
 * <p>Both carry the unit that the component holding them names. Source: JCGM 100:2008 (GUM), 2.3.1.
 *
 * @param value best estimate; finite
 * @param standardUncertainty one standard deviation of what may reasonably be attributed to the
 *     value; finite and not negative
 */
public record Measured(double value, double standardUncertainty) {

  /**
   * Checks both numbers.
   *
   * @throws IllegalArgumentException if a number is not finite or the uncertainty is negative
   */
  public Measured {
    if (!Double.isFinite(value)
        || !Double.isFinite(standardUncertainty)
        || standardUncertainty < 0) {
      throw new IllegalArgumentException(
          "a measured value needs a finite value and uncertainty >= 0, got "
              + value
              + " and "
              + standardUncertainty);
    }
  }

  /**
   * The same quantity in another unit.
   *
   * @param factor what to multiply by; finite
   * @return value and uncertainty multiplied
   */
  public Measured times(double factor) {
    return new Measured(value * factor, standardUncertainty * Math.abs(factor));
  }
}
