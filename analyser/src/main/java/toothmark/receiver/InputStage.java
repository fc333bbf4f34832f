package toothmark.receiver;

/**
 * Turns voltage samples into edges, as the input of a controller does.
 *
 * <p>Samples come one after the other, the timed edge falling; a stage keeps its own state and is
 * used for one run.
 */
interface InputStage {

  /**
   * Takes the next sample.
   *
   * @param seconds since the first sample
   * @param volts value
   * @return the share of the interval since the sample before, in (0, 1], at which an edge fell; 0
   *     for none
   */
  double next(double seconds, double volts);
}
