package toothmark.examination;

import java.util.Optional;
import java.util.OptionalInt;

/** A job sheet that cannot be used; the message names file, line, key and cure. */
public final class JobSheetException extends Exception {

  private static final long serialVersionUID = 1L;

  private final String key;
  private final String fault;
  private final int line;

  /**
   * A sheet that is wrong as a whole.
   *
   * @param message the fact, the value found, the place and the cure
   */
  public JobSheetException(String message) {
    super(message);
    this.key = "";
    this.fault = message;
    this.line = 0;
  }

  /**
   * A sheet that is wrong at one place.
   *
   * @param file what the sheet is called
   * @param line of the file, from 1; empty when the place is not known
   * @param key its full name, such as {@code wheel.pattern}; empty where the text is no TOML
   * @param fault the fact, the value found and the cure
   */
  public JobSheetException(String file, OptionalInt line, String key, String fault) {
    super(
        file
            + (line.isPresent() ? ", line " + line.getAsInt() : "")
            + (key.isEmpty() ? "" : ": " + key)
            + ": "
            + fault);
    this.key = key;
    this.fault = fault;
    this.line = line.orElse(0);
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
   * The line that is wrong.
   *
   * @return from 1; empty when the sheet is wrong as a whole
   */
  public OptionalInt line() {
    return line > 0 ? OptionalInt.of(line) : OptionalInt.empty();
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
