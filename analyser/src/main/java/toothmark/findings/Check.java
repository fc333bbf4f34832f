package toothmark.findings;

/**
 * One thing that can be wrong, and how it would show.
 *
 * <p>A check reads symptoms, never samples, and keeps no state. Its page in {@code docs/findings}
 * has its id for a name.
 */
interface Check {

  /**
   * Which finding it makes.
   *
   * @return lower-case words of the trade joined by hyphens
   */
  String id();

  /**
   * Looks for the thing.
   *
   * @param symptoms what was measured
   * @return that it fires, stays quiet, or could not run
   */
  Outcome examine(Symptoms symptoms);
}
