package toothmark.capture;

/** A file is broken or cannot be read; the message names file, place and cure. */
public final class UnreadableCaptureException extends Exception {

  private static final long serialVersionUID = 1L;

  /**
   * Builds the exception.
   *
   * @param message the fact, the value found, the place (file, line, column or byte) and the cure
   */
  public UnreadableCaptureException(String message) {
    super(message);
  }

  /**
   * Builds the exception.
   *
   * @param message as above
   * @param cause what the system said
   */
  public UnreadableCaptureException(String message, Throwable cause) {
    super(message, cause);
  }
}
