package toothmark.findings;

import java.util.List;
import toothmark.timing.TdcSource;
import toothmark.units.Interval;
import toothmark.units.Measured;
import toothmark.units.Say;
import toothmark.units.WordBook;

/** The words of findings, and turns of phrase beside those of {@link Say}. */
final class Words {

  private static final WordBook BOOK = new WordBook("toothmark.findings.findings");

  private static final int SHOWN = 3;

  private Words() {}

  static String of(String key, Object... values) {
    return BOOK.of(key, values);
  }

  static boolean has(String key) {
    return BOOK.has(key);
  }

  /** A phrase about a number of things. */
  static String count(int n, String key, Object... more) {
    return BOOK.count(n, key, more);
  }

  /** How often: once, twice, 12 times. */
  static String times(int n) {
    return n == 2 ? of("times.two") : count(n, "times");
  }

  /** What tells top dead centre. */
  static String of(TdcSource source) {
    return of("source." + source.label());
  }

  static String microseconds(Measured seconds) {
    return Say.interval(seconds.times(1e6), Say.THIN + "µs");
  }

  static String height(double height, Observations seen) {
    return seen.scale() == Observations.Scale.VOLTS
        ? Say.scaled(height, "V")
        : of("height.scale", Say.percent(height));
  }

  static String span(Interval i) {
    return of("span", Say.number(i.startInclusive(), 3), Say.at(i.endExclusive()));
  }

  /** The first three spans, and how many more there are. */
  static String spans(List<Interval> spans) {
    List<String> all = spans.stream().map(Words::span).toList();
    return all.size() <= SHOWN
        ? list(all, "list.and")
        : of("list.more", String.join(", ", all.subList(0, SHOWN)), all.size() - SHOWN);
  }

  /** One of some numbers: 1 or 4. */
  static String either(List<Integer> numbers) {
    return list(numbers.stream().map(String::valueOf).toList(), "list.or");
  }

  private static String list(List<String> items, String last) {
    int n = items.size() - 1;
    return n < 1
        ? String.join("", items)
        : of(last, String.join(", ", items.subList(0, n)), items.get(n));
  }
}
