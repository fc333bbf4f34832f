package toothmark.ignition;

import java.util.Optional;
import java.util.OptionalDouble;

/**
 * One spark.
 *
 * @param timeSeconds when it fired, s
 * @param uncertaintySeconds standard uncertainty of the time, s
 * @param chargeStartSeconds when charging began, s; empty when the pick-up cannot show it or it
 *     began before the record
 * @param crank where the crank was; empty where the crank's angle is not known
 * @param turn whether it is the spark of its firing event or a further one
 */
public record Spark(
    double timeSeconds,
    double uncertaintySeconds,
    OptionalDouble chargeStartSeconds,
    Optional<CrankPoint> crank,
    Turn turn) {

  /** Whether a spark is the one due, or one more close behind it. */
  public enum Turn {
    /** The spark of its firing event. */
    FIRST,
    /** One more spark close behind the first, as a double trigger gives. */
    REPEATED
  }

  /**
   * How long the coil charged.
   *
   * @return s; empty when the start of charging is not known
   */
  public OptionalDouble dwellSeconds() {
    return chargeStartSeconds.isEmpty()
        ? OptionalDouble.empty()
        : OptionalDouble.of(timeSeconds - chargeStartSeconds.getAsDouble());
  }
}
