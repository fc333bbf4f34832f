package toothmark.chart;

import java.util.Optional;
import toothmark.units.Say;
import toothmark.units.WordBook;

/** The words of the charts. */
final class Wording {

  private static final WordBook BOOK = new WordBook("toothmark.chart.figures");

  private Wording() {}

  static String of(String key, String... values) {
    return BOOK.of(key, values);
  }

  /** A phrase that may be there. */
  static Optional<String> find(String key) {
    return BOOK.find(key);
  }

  /** A number with what it counts: {@code key.none} or {@code key.one}, else {@code key.many}. */
  static String count(long n, String key) {
    String special = key + (n == 0 ? ".none" : ".one");
    return of(n < 2 && find(special).isPresent() ? special : key + ".many", Say.count(n));
  }
}
