package toothmark.timing;

/**
 * How far the piston is from its highest point at a crank angle, and the reverse.
 *
 * <p>Crank slider: s = a cos t + (l^2 - (a sin t - d)^2)^0.5 (Heywood, Internal Combustion Engine
 * Fundamentals, 1988, eq. 2.5, with the pin offset d added).
 *
 * @param strokeMillimetres stroke, mm, positive
 * @param rodMillimetres length of the connecting rod, mm, more than half the stroke and the offset
 * @param pinOffsetMillimetres offset of the wrist pin towards the side on which the crank goes up,
 *     mm; 0 for none
 */
public record PistonTravel(
    double strokeMillimetres, double rodMillimetres, double pinOffsetMillimetres) {

  private static final int HALVINGS = 60;

  /**
   * Checks the lengths.
   *
   * @throws IllegalArgumentException if the rod is too short to turn, or the offset too large
   */
  public PistonTravel {
    if (Math.abs(pinOffsetMillimetres) >= strokeMillimetres / 2) {
      throw new IllegalArgumentException(
          "a pin offset of "
              + pinOffsetMillimetres
              + " mm is more than half the stroke of "
              + strokeMillimetres
              + " mm; a few millimetres are usual");
    }
    if (!(strokeMillimetres > 0)
        || !(rodMillimetres > strokeMillimetres / 2 + Math.abs(pinOffsetMillimetres))) {
      throw new IllegalArgumentException(
          "a rod of "
              + rodMillimetres
              + " mm is too short for a stroke of "
              + strokeMillimetres
              + " mm");
    }
  }

  /**
   * How far the piston is below its highest point.
   *
   * @param degreesAfterTop crank angle after the crank stands in line, degrees; negative before
   * @return mm
   */
  public double millimetresBelowTop(double degreesAfterTop) {
    return height(highestDegrees()) - height(degreesAfterTop);
  }

  /**
   * Where the piston stands highest: with an offset pin not where the crank stands in line.
   *
   * @return degrees after the crank stands in line
   */
  public double highestDegrees() {
    return Math.toDegrees(
        Math.asin(pinOffsetMillimetres / (strokeMillimetres / 2 + rodMillimetres)));
  }

  /**
   * The crank angle at which the piston stands at a depth on its way down.
   *
   * @param millimetres depth below the highest point, from 0 to the stroke
   * @return degrees after the crank stands in line
   * @throws IllegalArgumentException if the piston never stands there
   */
  public double degreesAfter(double millimetres) {
    return degrees(millimetres, highestDegrees() + 180);
  }

  /**
   * The crank angle at which the piston stands at a depth on its way up.
   *
   * @param millimetres depth below the highest point, from 0 to the stroke
   * @return degrees after the crank stands in line; negative
   * @throws IllegalArgumentException if the piston never stands there
   */
  public double degreesBefore(double millimetres) {
    return degrees(millimetres, highestDegrees() - 180);
  }

  private double degrees(double depth, double bottom) {
    double top = highestDegrees();
    if (!(depth >= 0 && depth <= millimetresBelowTop(bottom))) {
      throw new IllegalArgumentException(
          "the piston never stands " + depth + " mm below its highest point");
    }
    double low = top;
    double high = bottom;
    for (int i = 0; i < HALVINGS; i++) {
      double middle = (low + high) / 2;
      if (millimetresBelowTop(middle) < depth) {
        low = middle;
      } else {
        high = middle;
      }
    }
    return (low + high) / 2;
  }

  private double height(double degrees) {
    double a = strokeMillimetres / 2;
    double t = Math.toRadians(degrees);
    double side = a * Math.sin(t) - pinOffsetMillimetres;
    return a * Math.cos(t) + Math.sqrt(rodMillimetres * rodMillimetres - side * side);
  }
}
