package toothmark.examination;

/** A job sheet that cannot be used; the message names file, line, key and cure. */
public final class JobSheetException extends Exception {

  private static final long serialVersionUID = 1L;

  /**
   * Builds the exception.
   *
   * @param message the fact, the value found, the place and the cure
   */
  public JobSheetException(String message) {
    super(message);
  }
}
