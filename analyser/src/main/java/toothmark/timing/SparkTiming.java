package toothmark.timing;

import java.util.OptionalDouble;
import toothmark.ignition.Spark;

/**
 * One spark against top dead centre and against what was commanded.
 *
 * @param coil number of its coil, from 0, in the order of the job sheet
 * @param coilName its name
 * @param spark the spark
 * @param advanceDegrees before the top dead centre of the coil's own cylinder, degrees; empty where
 *     the crank's angle or top dead centre is not known
 * @param commandedDegrees what the controller commanded, degrees; empty when not known
 * @param standing what the fit did with it
 */
public record SparkTiming(
    int coil,
    String coilName,
    Spark spark,
    OptionalDouble advanceDegrees,
    OptionalDouble commandedDegrees,
    Standing standing) {

  /** What the fit of the gap did with a spark. */
  public enum Standing {
    /** The fit rests on it, among others. */
    FITTED,
    /** Too far from the others. */
    REJECTED,
    /** Pulled back by a limiter, and so left out. */
    LIMITED,
    /**
     * Left out because advance, command or the crank's angle before the spark is not known, or
     * because it is a repeated spark.
     */
    NOT_COMPARABLE
  }

  /**
   * Actual less commanded advance.
   *
   * @return degrees; empty when either is not known
   */
  public OptionalDouble gapDegrees() {
    return advanceDegrees.isEmpty() || commandedDegrees.isEmpty()
        ? OptionalDouble.empty()
        : OptionalDouble.of(advanceDegrees.getAsDouble() - commandedDegrees.getAsDouble());
  }
}
