package toothmark.accuracy;

import java.util.Locale;

/**
 * Names one generated capture, so that it can be made again: {@code study/setting/number}.
 *
 * @param study name of the study
 * @param setting what the study varies
 * @param number of the capture within the setting, from 0
 */
public record CaseName(String study, String setting, int number) {

  /**
   * Reads a name.
   *
   * @param text as {@link #toString} gives it
   * @return the name
   * @throws IllegalArgumentException if it is none
   */
  public static CaseName parse(String text) {
    String[] parts = text.split("/");
    if (parts.length != 3 || !parts[2].matches("\\d{1,9}")) {
      throw new IllegalArgumentException(
          "'" + text + "' names no case; write study/setting/number, as in the worst cases");
    }
    return new CaseName(parts[0], parts[1], Integer.parseInt(parts[2]));
  }

  /**
   * Seed of everything random in the case. Captures of one number share nothing across settings.
   *
   * @return FNV-1a hash of the name, 64 bits (Fowler, Noll and Vo; RFC 9923)
   */
  public long seed() {
    long hash = 0xcbf29ce484222325L;
    for (char c : toString().toCharArray()) {
      hash = (hash ^ c) * 0x100000001b3L;
    }
    return hash;
  }

  /**
   * A name that files can bear.
   *
   * @return lower-case letters, digits and hyphens
   */
  public String fileName() {
    return toString().toLowerCase(Locale.ROOT).replaceAll("[^a-z0-9]+", "-");
  }

  @Override
  public String toString() {
    return study + "/" + setting + "/" + number;
  }
}
