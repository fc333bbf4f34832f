package toothmark.capture;

import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalLong;

/**
 * What the user states about a file; everything else is found from the file itself.
 *
 * <p>A statement wins over what the file says.
 */
public final class ReadingOptions {

  private static final ReadingOptions DEFAULTS =
      new ReadingOptions(
          null, null, null, OptionalDouble.empty(), ReadingProgress.NONE, OptionalLong.empty());

  private final Character delimiter;
  private final Character decimalMark;
  private final String timeUnit;
  private final OptionalDouble intervalSeconds;
  private final ReadingProgress progress;
  private final OptionalLong firstBytes;

  private ReadingOptions(
      Character delimiter,
      Character decimalMark,
      String timeUnit,
      OptionalDouble intervalSeconds,
      ReadingProgress progress,
      OptionalLong firstBytes) {
    this.delimiter = delimiter;
    this.decimalMark = decimalMark;
    this.timeUnit = timeUnit;
    this.intervalSeconds = intervalSeconds;
    this.progress = progress;
    this.firstBytes = firstBytes;
  }

  /**
   * States nothing: all is found from the file.
   *
   * @return the defaults
   */
  public static ReadingOptions withDefaults() {
    return DEFAULTS;
  }

  /**
   * States the character between cells of a text file.
   *
   * @param mark such as {@code ';'}; a space stands for any run of blanks
   * @return changed options
   */
  public ReadingOptions withDelimiter(char mark) {
    return new ReadingOptions(mark, decimalMark, timeUnit, intervalSeconds, progress, firstBytes);
  }

  /**
   * States the decimal mark of a text file.
   *
   * @param mark {@code '.'} or {@code ','}
   * @return changed options
   */
  public ReadingOptions withDecimalMark(char mark) {
    if (mark != '.' && mark != ',') {
      throw new IllegalArgumentException("a decimal mark is '.' or ',', got '" + mark + "'");
    }
    return new ReadingOptions(delimiter, mark, timeUnit, intervalSeconds, progress, firstBytes);
  }

  /**
   * States the unit of times or periods.
   *
   * @param unit such as {@code us} or {@code ms}
   * @return changed options
   */
  public ReadingOptions withTimeUnit(String unit) {
    return new ReadingOptions(delimiter, decimalMark, unit, intervalSeconds, progress, firstBytes);
  }

  /**
   * States the sampling interval.
   *
   * @param seconds time between samples, s; positive
   * @return changed options
   */
  public ReadingOptions withIntervalSeconds(double seconds) {
    if (!(seconds > 0) || Double.isInfinite(seconds)) {
      throw new IllegalArgumentException("a sampling interval is positive, got " + seconds + " s");
    }
    return new ReadingOptions(
        delimiter, decimalMark, timeUnit, OptionalDouble.of(seconds), progress, firstBytes);
  }

  /**
   * Says who hears how far the reader has come.
   *
   * @param listener called on the thread that reads
   * @return changed options
   */
  public ReadingOptions withProgress(ReadingProgress listener) {
    return new ReadingOptions(
        delimiter, decimalMark, timeUnit, intervalSeconds, listener, firstBytes);
  }

  /**
   * Says that only the start of a text or dump is wanted.
   *
   * @param bytes how many unpacked bytes; reading ends with the last line that fits; positive
   * @return changed options
   */
  public ReadingOptions withFirstBytes(long bytes) {
    return new ReadingOptions(
        delimiter, decimalMark, timeUnit, intervalSeconds, progress, OptionalLong.of(bytes));
  }

  /**
   * The stated delimiter.
   *
   * @return empty when to be found
   */
  public Optional<Character> delimiter() {
    return Optional.ofNullable(delimiter);
  }

  /**
   * The stated decimal mark.
   *
   * @return empty when to be found
   */
  public Optional<Character> decimalMark() {
    return Optional.ofNullable(decimalMark);
  }

  /**
   * The stated unit of time.
   *
   * @return empty when to be found
   */
  public Optional<String> timeUnit() {
    return Optional.ofNullable(timeUnit);
  }

  /**
   * The stated sampling interval.
   *
   * @return seconds; empty when to be found
   */
  public OptionalDouble intervalSeconds() {
    return intervalSeconds;
  }

  /**
   * Who hears how far the reader has come.
   *
   * @return never null
   */
  public ReadingProgress progress() {
    return progress;
  }

  /**
   * How much of the start of a text or dump is wanted.
   *
   * @return unpacked bytes; empty for all
   */
  public OptionalLong firstBytes() {
    return firstBytes;
  }
}
