package toothmark.capture;

import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * What is stated of one column or channel; what is not is found from the file.
 *
 * @param name of the channel
 * @param unit of the numbers, after scale and offset, such as {@code mV}
 * @param use what the column is for
 * @param scale value of one count: value = number · scale + offset
 * @param offset value of the number 0
 */
public record StatedColumn(
    Optional<String> name,
    Optional<String> unit,
    Optional<Use> use,
    OptionalDouble scale,
    OptionalDouble offset) {

  /** States nothing. */
  public static final StatedColumn NOTHING = named("", "");

  /** What a column is for. */
  public enum Use {
    /** Times of the rows, or of edges. */
    TIME,
    /** Times since the row before. */
    PERIOD,
    /** Counts the rows. */
    INDEX,
    /** What was recorded. */
    CHANNEL,
    /** Not to be read. */
    IGNORED;

    /**
     * Whether the column orders the rows in time, and holds no channel.
     *
     * @return true for times, periods and indices
     */
    public boolean isCount() {
      return this == TIME || this == PERIOD || this == INDEX;
    }

    /**
     * The word for it in a job sheet.
     *
     * @return in lower case
     */
    public String word() {
      return name().toLowerCase(Locale.ROOT);
    }
  }

  /**
   * A column with a name and a unit.
   *
   * @param name empty where there is none
   * @param unit empty where there is none
   * @return the column
   */
  public static StatedColumn named(String name, String unit) {
    return new StatedColumn(
        Optional.of(name).filter(s -> !s.isEmpty()),
        Optional.of(unit).filter(s -> !s.isEmpty()),
        Optional.empty(),
        OptionalDouble.empty(),
        OptionalDouble.empty());
  }

  /**
   * The same column with a scale and an offset.
   *
   * @param factor value of one count
   * @param zero value of the number 0
   * @return changed column
   */
  public StatedColumn scaled(double factor, double zero) {
    return new StatedColumn(name, unit, use, OptionalDouble.of(factor), OptionalDouble.of(zero));
  }

  /**
   * These statements, and those of another where there is none.
   *
   * @param other stands back
   * @return both
   */
  public StatedColumn or(StatedColumn other) {
    boolean own = isScaled();
    return new StatedColumn(
        name.or(other::name),
        unit.or(other::unit),
        use.or(other::use),
        own ? scale : other.scale,
        own ? offset : other.offset);
  }

  /**
   * Whether the numbers are counts of something.
   *
   * @return true when a scale or an offset is stated
   */
  public boolean isScaled() {
    return scale.isPresent() || offset.isPresent();
  }
}
