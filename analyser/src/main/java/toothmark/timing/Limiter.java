package toothmark.timing;

import toothmark.units.Interval;

/**
 * A speed limiter at work.
 *
 * @param manner how it limits
 * @param fromRpm lowest speed at which it acted, rev/min
 * @param during when it acted, s
 * @param sparks sparks left out, or pulled back
 * @param due sparks due in that time, left out or not
 * @param pulledBackDegrees how far sparks were pulled back, degrees, positive; 0 for a cut
 */
public record Limiter(
    Manner manner, double fromRpm, Interval during, int sparks, int due, double pulledBackDegrees) {

  /** How a limiter limits. */
  public enum Manner {
    /** It leaves sparks out. */
    SPARK_CUT,
    /** It fires late. */
    RETARD
  }
}
