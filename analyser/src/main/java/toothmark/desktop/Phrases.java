package toothmark.desktop;

import java.util.Optional;
import toothmark.units.WordBook;

/** The window's own words. */
final class Phrases {

  private static final WordBook BOOK = new WordBook("toothmark.desktop.desk");

  private Phrases() {}

  static String of(String key, Object... values) {
    return BOOK.of(key, values);
  }

  /** A phrase that may be there. */
  static Optional<String> find(String key) {
    return BOOK.find(key);
  }
}
