package toothmark.units;

import java.text.MessageFormat;
import java.util.Locale;
import java.util.Optional;
import java.util.ResourceBundle;

/** The words of one part of the program, by key, from one resource bundle. */
public final class WordBook {

  private final ResourceBundle bundle;

  /**
   * Opens a book.
   *
   * @param name of the bundle, as {@link ResourceBundle#getBundle(String)} takes it
   * @throws java.util.MissingResourceException if there is no such bundle
   */
  public WordBook(String name) {
    bundle = ResourceBundle.getBundle(name, Locale.ROOT);
  }

  /**
   * A phrase, its places filled.
   *
   * @param key of the phrase
   * @param values of the places {0}, {1} …; numbers as text, so that they look as everywhere
   * @return the phrase
   * @throws java.util.MissingResourceException if there is no such phrase
   */
  public String of(String key, String... values) {
    String pattern = bundle.getString(key);
    return values.length == 0 ? pattern : new MessageFormat(pattern, Locale.ROOT).format(values);
  }

  /**
   * A phrase that may be there.
   *
   * @param key of the phrase
   * @return empty when it is not
   */
  public Optional<String> find(String key) {
    return bundle.containsKey(key) ? Optional.of(bundle.getString(key)) : Optional.empty();
  }
}
