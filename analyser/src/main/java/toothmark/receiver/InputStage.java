package toothmark.receiver;

/**
 * Turns voltage samples into edges, as the input of a controller does.
 *
 * <p>The timed edge is a falling one. A stage keeps its own state and serves one run.
 */
interface InputStage {

  /**
   * Takes the next sample.
   *
   * @param seconds its time, later than the last
   * @param volts its value, about zero or not as the stage wants it
   * @return whether an edge fell between the sample before and this one
   */
  Outcome next(double seconds, double volts);

  /** Time of the last edge, s. */
  double edgeSeconds();

  /** What a sample brought. */
  enum Outcome {
    /** Nothing to report. */
    QUIET,
    /** An edge; its time can be asked for. */
    EDGE
  }
}
