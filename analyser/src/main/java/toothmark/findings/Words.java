package toothmark.findings;

import java.util.List;
import toothmark.units.Interval;
import toothmark.units.Measured;
import toothmark.units.Say;

/** Turns of phrase of findings, beside those of {@link Say}. */
final class Words {

  private Words() {}

  /** How often: once, twice, 12 times. */
  static String times(int n) {
    return n == 1 ? "once" : n == 2 ? "twice" : Say.count(n) + " times";
  }

  /** A number of things: 1 tooth, 5 teeth. */
  static String count(int n, String one, String many) {
    return Say.count(n) + " " + (n == 1 ? one : many);
  }

  static String microseconds(Measured seconds) {
    return Say.interval(seconds.times(1e6), Say.THIN + "µs");
  }

  static String millimetres(double mm) {
    return Say.number(mm, 1) + Say.THIN + "mm";
  }

  static String height(double height, Observations seen) {
    return seen.scale() == Observations.Scale.VOLTS
        ? Say.scaled(height, "V")
        : Say.percent(height) + " of full scale";
  }

  static String span(Interval i) {
    return Say.number(i.startInclusive(), 3) + " to " + Say.at(i.endExclusive());
  }

  /** The first three spans, and how many more there are. */
  static String spans(List<Interval> spans) {
    StringBuilder s = new StringBuilder();
    int shown = Math.min(3, spans.size());
    for (int i = 0; i < shown; i++) {
      s.append(i == 0 ? "" : i == spans.size() - 1 ? " and " : ", ").append(span(spans.get(i)));
    }
    return spans.size() > shown ? s + " and " + (spans.size() - shown) + " more" : s.toString();
  }

  /** Numbers in a row: 4, 5 and 6. */
  static String list(List<Integer> numbers) {
    return list(numbers, "and");
  }

  /** One of some numbers: 1 or 4. */
  static String either(List<Integer> numbers) {
    return list(numbers, "or");
  }

  private static String list(List<Integer> numbers, String last) {
    StringBuilder s = new StringBuilder();
    for (int i = 0; i < numbers.size(); i++) {
      s.append(i == 0 ? "" : i == numbers.size() - 1 ? " " + last + " " : ", ")
          .append(numbers.get(i));
    }
    return s.toString();
  }
}
