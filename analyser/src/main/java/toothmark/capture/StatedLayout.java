package toothmark.capture;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;

/**
 * What the user states of how a capture is laid out, where the guess is wrong; it wins over what
 * the file says.
 *
 * @param text how a text is written
 * @param clock what times mean
 * @param columns from the left, or in the order of the file; fewer than the file has leave the rest
 *     to be found
 * @param raw that the file is bare numbers, and in which form
 */
public record StatedLayout(
    Text text, Clock clock, List<StatedColumn> columns, Optional<RawNumbers> raw) {

  /** States nothing: all is found from the file. */
  public static final StatedLayout NOTHING =
      new StatedLayout(
          new Text(Optional.empty(), Optional.empty(), OptionalInt.empty()),
          new Clock(Optional.empty(), OptionalDouble.empty()),
          List.of(),
          Optional.empty());

  /** Copies the list. */
  public StatedLayout {
    columns = List.copyOf(columns);
  }

  /**
   * How a text is written.
   *
   * @param delimiter character between cells; a space stands for any run of blanks
   * @param decimalMark {@code .} or {@code ,}
   * @param headerLines how many lines stand above the rows of numbers, at least 0
   */
  public record Text(
      Optional<Character> delimiter, Optional<Character> decimalMark, OptionalInt headerLines) {}

  /**
   * What times mean.
   *
   * @param timeUnit unit of times or periods: s, ms, us, ns
   * @param intervalSeconds time between samples, s; positive
   */
  public record Clock(Optional<String> timeUnit, OptionalDouble intervalSeconds) {}

  /**
   * Bare numbers, one for each column in turn.
   *
   * @param type how a number is written
   * @param order which byte of it comes first
   * @param headerBytes what stands before the first number, to be passed over; at least 0
   */
  public record RawNumbers(NumberType type, Order order, long headerBytes) {}

  /** Which byte of a number comes first. */
  public enum Order {
    /** The lowest. */
    LITTLE,
    /** The highest. */
    BIG
  }

  /**
   * The same with another clock.
   *
   * @param other what times mean
   * @return changed layout
   */
  public StatedLayout with(Clock other) {
    return new StatedLayout(text, other, columns, raw);
  }

  /**
   * What is stated of a column.
   *
   * @param index from 0
   * @return {@link StatedColumn#NOTHING} beyond the last
   */
  public StatedColumn column(int index) {
    return index < columns.size() ? columns.get(index) : StatedColumn.NOTHING;
  }

  /**
   * The statements in words, to show.
   *
   * @return such as {@code delimiter}; empty when nothing is stated
   */
  public List<String> inWords() {
    List<String> words = new ArrayList<>();
    text.delimiter().ifPresent(d -> words.add("delimiter"));
    text.decimalMark().ifPresent(m -> words.add("decimal mark"));
    text.headerLines().ifPresent(n -> words.add(n + (n == 1 ? " header line" : " header lines")));
    clock.timeUnit().ifPresent(u -> words.add("unit of time " + u));
    clock.intervalSeconds().ifPresent(i -> words.add("sampling interval"));
    raw.ifPresent(r -> words.add("form of the numbers"));
    if (!columns.isEmpty()) {
      words.add(columns.size() + (columns.size() == 1 ? " column" : " columns"));
    }
    return words;
  }
}
