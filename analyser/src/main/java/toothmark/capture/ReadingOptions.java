package toothmark.capture;

import java.util.OptionalLong;

/** How a file is to be read. */
public final class ReadingOptions {

  private static final ReadingOptions DEFAULTS =
      new ReadingOptions(StatedLayout.NOTHING, ReadingProgress.NONE, OptionalLong.empty());

  private final StatedLayout layout;
  private final ReadingProgress progress;
  private final OptionalLong firstBytes;

  private ReadingOptions(StatedLayout layout, ReadingProgress progress, OptionalLong firstBytes) {
    this.layout = layout;
    this.progress = progress;
    this.firstBytes = firstBytes;
  }

  /**
   * States nothing: all is found from the file, the whole of it is read, and nobody hears of it.
   *
   * @return the defaults
   */
  public static ReadingOptions withDefaults() {
    return DEFAULTS;
  }

  /**
   * States how the file is laid out.
   *
   * @param stated wins over what the file says
   * @return changed options
   */
  public ReadingOptions withLayout(StatedLayout stated) {
    return new ReadingOptions(stated, progress, firstBytes);
  }

  /**
   * Says who hears how far the reader has come.
   *
   * @param listener called on the thread that reads
   * @return changed options
   */
  public ReadingOptions withProgress(ReadingProgress listener) {
    return new ReadingOptions(layout, listener, firstBytes);
  }

  /**
   * Says that only the start of a text or dump is wanted.
   *
   * @param bytes how many unpacked bytes; reading ends with the last line that fits; positive
   * @return changed options
   */
  public ReadingOptions withFirstBytes(long bytes) {
    return new ReadingOptions(layout, progress, OptionalLong.of(bytes));
  }

  /**
   * How the file is stated to be laid out.
   *
   * @return what is stated
   */
  public StatedLayout layout() {
    return layout;
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
