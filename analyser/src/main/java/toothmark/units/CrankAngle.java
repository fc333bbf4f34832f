package toothmark.units;

/** Arithmetic of crank angles, in degrees, positive in the direction of rotation. */
public final class CrankAngle {

  /** Degrees in a revolution. */
  public static final double REVOLUTION = 360.0;

  private CrankAngle() {}

  /**
   * Brings an angle into one revolution.
   *
   * @param degrees any angle, degrees
   * @return the same direction in [0, 360)
   */
  public static double wrap(double degrees) {
    double w = degrees - REVOLUTION * Math.floor(degrees / REVOLUTION);
    return w >= REVOLUTION ? 0.0 : w;
  }

  /**
   * Brings the difference of two angles to its shortest form.
   *
   * @param degrees any difference, degrees
   * @return the same difference in [-180, 180)
   */
  public static double wrapDifference(double degrees) {
    return wrap(degrees + REVOLUTION / 2) - REVOLUTION / 2;
  }

  /**
   * How far the crank turns in a time at a speed.
   *
   * @param rpm speed, rev/min
   * @param seconds time, s
   * @return degrees
   */
  public static double turned(double rpm, double seconds) {
    return 6.0 * rpm * seconds;
  }
}
