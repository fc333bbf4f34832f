package toothmark.wheel;

import java.util.List;
import toothmark.edges.EdgeDirection;

/**
 * Which wheel the edges show, and what else it could be.
 *
 * @param pattern the most probable wheel
 * @param confidence posterior probability of it among all that were tried, 0 to 1
 * @param alternatives the next best, by falling confidence
 * @param toothEdge direction of the edges that are teeth
 * @param orientation how the sensor is wired
 * @param evidence what separates the winner from the others, one sentence each
 */
public record WheelIdentification(
    WheelPattern pattern,
    double confidence,
    List<Candidate> alternatives,
    EdgeDirection toothEdge,
    Orientation orientation,
    List<String> evidence) {

  /** Copies the lists. */
  public WheelIdentification {
    alternatives = List.copyOf(alternatives);
    evidence = List.copyOf(evidence);
  }

  /**
   * A wheel that was considered.
   *
   * @param pattern the wheel
   * @param confidence its posterior probability, 0 to 1
   */
  public record Candidate(WheelPattern pattern, double confidence) {}
}
