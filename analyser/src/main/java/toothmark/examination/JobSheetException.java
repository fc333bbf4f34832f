package toothmark.examination;

import java.util.Optional;

/** A job sheet that cannot be used; the message names file, line, key and cure. */
public final class JobSheetException extends Exception {

  private static final long serialVersionUID = 1L;

  private final String key;
  private final String fault;

  /**
   * A sheet that is wrong as a whole.
   *
   * @param message the fact, the value found, the place and the cure
   */
  public JobSheetException(String message) {
    super(message);
    this.key = "";
    this.fault = message;
  }

  /**
   * A sheet with one key that is wrong.
   *
   * @param place file and line
   * @param key its full name, such as {@code wheel.pattern}
   * @param fault the fact, the value found and the cure
   */
  public JobSheetException(String place, String key, String fault) {
    super(place + ": " + key + ": " + fault);
    this.key = key;
    this.fault = fault;
  }

  /**
   * The key that is wrong.
   *
   * @return its full name; empty when the sheet is wrong as a whole
   */
  public Optional<String> key() {
    return key.isEmpty() ? Optional.empty() : Optional.of(key);
  }

  /**
   * What is wrong, without the place.
   *
   * @return the fact, the value found and the cure
   */
  public String fault() {
    return fault;
  }
}
