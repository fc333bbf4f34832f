package toothmark.chart;

import java.util.Optional;
import toothmark.units.WordBook;

/** The words of the charts. */
final class Wording {

  private static final WordBook BOOK = new WordBook("toothmark.chart.figures");

  private Wording() {}

  static String of(String key, Object... values) {
    return BOOK.of(key, values);
  }

  /** A phrase that may be there. */
  static Optional<String> find(String key) {
    return BOOK.find(key);
  }

  static String count(long n, String key) {
    return BOOK.count(n, key);
  }
}
