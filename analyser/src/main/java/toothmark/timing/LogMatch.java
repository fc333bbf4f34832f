package toothmark.timing;

import java.util.List;
import java.util.Optional;
import toothmark.units.Measured;

/**
 * How the controller log's clock was found from the two records of speed.
 *
 * @param shiftSeconds capture time less log time at the middle of the overlap, s; empty where the
 *     clocks could not be matched
 * @param driftPartsPerMillion how much faster the log's clock runs, parts per million; 0 when too
 *     short to tell
 * @param correlation of the two records of speed at that shift, -1 to 1
 * @param speedDifferenceRpm root mean square difference of the two records, rev/min
 * @param speeds logged speeds on the capture's clock, where they fit best; none where the clocks
 *     could not be matched
 * @param outcome whether the log could be used
 * @param reason one sentence that says why
 */
public record LogMatch(
    Optional<Measured> shiftSeconds,
    double driftPartsPerMillion,
    double correlation,
    double speedDifferenceRpm,
    List<LoggedSpeed> speeds,
    Outcome outcome,
    String reason) {

  /** Copies the list. */
  public LogMatch {
    speeds = List.copyOf(speeds);
  }

  /**
   * A row of the log.
   *
   * @param timeSeconds by the capture's clock, s
   * @param rpm logged speed, rev/min
   */
  public record LoggedSpeed(double timeSeconds, double rpm) {}

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
