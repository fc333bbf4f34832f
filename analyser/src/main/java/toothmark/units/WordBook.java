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
   * @param values of the places {0}, {1} …, each written as its {@code toString} says, so that
   *     numbers look as everywhere
   * @return the phrase
   * @throws java.util.MissingResourceException if there is no such phrase
   */
  public String of(String key, Object... values) {
    String pattern = bundle.getString(key);
    if (values.length == 0) {
      return pattern;
    }
    Object[] texts = new Object[values.length];
    for (int i = 0; i < texts.length; i++) {
      texts[i] = values[i].toString();
    }
    return new MessageFormat(pattern, Locale.ROOT).format(texts);
  }

  /**
   * A phrase about a number of things: {@code key.none} or {@code key.one} where there is one, else
   * {@code key.many}.
   *
   * @param n how many; takes the place {0}
   * @param key of the phrase, without its last part
   * @param more values of the places {1}, {2} …
   * @return the phrase
   * @throws java.util.MissingResourceException if there is no such phrase
   */
  public String count(long n, String key, Object... more) {
    String special = key + (n == 0 ? ".none" : ".one");
    Object[] values = new Object[more.length + 1];
    values[0] = Say.count(n);
    System.arraycopy(more, 0, values, 1, more.length);
    return of(n < 2 && has(special) ? special : key + ".many", values);
  }

  /**
   * Whether there is a phrase.
   *
   * @param key of the phrase
   * @return whether the book has it
   */
  public boolean has(String key) {
    return bundle.containsKey(key);
  }

  /**
   * A phrase that may be there.
   *
   * @param key of the phrase
   * @return empty when it is not
   */
  public Optional<String> find(String key) {
    return has(key) ? Optional.of(bundle.getString(key)) : Optional.empty();
  }
}
