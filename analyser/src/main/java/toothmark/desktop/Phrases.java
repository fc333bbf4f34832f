package toothmark.desktop;

import java.text.MessageFormat;
import java.util.Locale;
import java.util.Optional;
import java.util.ResourceBundle;

/** The window's own words, from one resource bundle. */
final class Phrases {

  private static final ResourceBundle BUNDLE =
      ResourceBundle.getBundle("toothmark.desktop.desk", Locale.ROOT);

  private Phrases() {}

  /** A phrase that may be there. */
  static Optional<String> find(String key) {
    return BUNDLE.containsKey(key) ? Optional.of(BUNDLE.getString(key)) : Optional.empty();
  }

  /** A phrase, its places filled. Numbers are passed as text, so that they look as everywhere. */
  static String of(String key, String... values) {
    String pattern = BUNDLE.getString(key);
    return values.length == 0 ? pattern : new MessageFormat(pattern, Locale.ROOT).format(values);
  }
}
