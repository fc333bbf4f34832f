package toothmark.timing;

import toothmark.units.Measured;

/**
 * How the controller log's clock was found from the two records of speed.
 *
 * @param shiftSeconds capture time less log time at the middle of the overlap, s
 * @param driftPartsPerMillion how much faster the log's clock runs, parts per million; 0 when too
 *     short to tell
 * @param correlation of the two records of speed at that shift, -1 to 1
 * @param speedDifferenceRpm root mean square difference of the two records, rev/min
 * @param outcome whether the log could be used
 * @param reason one sentence that says why
 */
public record LogMatch(
    Measured shiftSeconds,
    double driftPartsPerMillion,
    double correlation,
    double speedDifferenceRpm,
    Outcome outcome,
    String reason) {

  /** Whether a log could be used. */
  public enum Outcome {
    /** The clocks were matched; commanded advance is taken at the spark. */
    MATCHED,
    /** The clocks were not matched, but commanded advance follows from speed alone. */
    BY_SPEED,
    /** The log does not fit the capture and is not used. */
    REFUSED
  }
}
