package toothmark.findings;

/**
 * Something on the crank signal that is no tooth.
 *
 * @param timeSeconds s
 * @param degrees unrolled crank angle
 * @param rpm speed
 * @param effect whether it was taken for an edge
 */
record Stray(double timeSeconds, double degrees, double rpm, Effect effect) {

  /** What came of it. */
  enum Effect {
    /** The decoding or the receiver took it for an edge. */
    EDGE,
    /** It only shows in the wave. */
    NONE
  }
}
