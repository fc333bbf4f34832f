package toothmark.capture;

/** A file is sound but of a kind that is not supported; the message names file, place and cure. */
public final class UnsupportedCaptureException extends Exception {

  private static final long serialVersionUID = 1L;

  /**
   * Builds the exception.
   *
   * @param message the fact, the value found, the place (file, line, column or byte) and the cure
   */
  public UnsupportedCaptureException(String message) {
    super(message);
  }

  /**
   * Builds the exception.
   *
   * @param message as above
   * @param cause what the system said
   */
  public UnsupportedCaptureException(String message, Throwable cause) {
    super(message, cause);
  }
}
