package toothmark.capture.text;

import java.io.IOException;
import java.util.List;
import toothmark.capture.Capture;
import toothmark.capture.ReadingOptions;
import toothmark.capture.UnreadableCaptureException;
import toothmark.capture.UnsupportedCaptureException;
import toothmark.capture.source.ByteSource;
import toothmark.capture.store.SampleStore;

/** Reads captures that are delimited text. */
public final class TextCapture {

  private static final int THREADS = Math.min(2, Runtime.getRuntime().availableProcessors());

  private TextCapture() {}

  /**
   * How the work is divided; the outcome does not depend on it.
   *
   * @param threads 1 or 2
   * @param blockBytes size of a block of text
   * @param memoryBytes what may be kept in memory before the temporary file is used
   */
  record Division(int threads, int blockBytes, long memoryBytes) {
    static Division usual(ByteSource source) {
      return new Division(
          source.headIsAll() ? 1 : THREADS,
          BlockPipeline.BLOCK_BYTES,
          SampleStore.DEFAULT_BUDGET_BYTES);
    }
  }

  /**
   * Reads a text.
   *
   * @param source the file, at its first byte
   * @param options what the user states
   * @return the capture; close it after use
   * @throws UnreadableCaptureException if it cannot be understood
   * @throws UnsupportedCaptureException if it is no text
   * @throws IOException if the system cannot read the file or write the temporary one
   */
  public static Capture read(ByteSource source, ReadingOptions options)
      throws UnreadableCaptureException, UnsupportedCaptureException, IOException {
    return read(source, options, Division.usual(source));
  }

  static Capture read(ByteSource source, ReadingOptions options, Division division)
      throws UnreadableCaptureException, UnsupportedCaptureException, IOException {
    TextInput input = new TextInput(source);
    input.checkText();
    Layout layout = LayoutFinder.find(input, options.layout());
    SampleStore store = new SampleStore(division.memoryBytes());
    try {
      Table table = new Table(source.name(), layout, store);
      new BlockPipeline(input, layout, division.blockBytes(), table).run(division.threads());
      table.complete();
      Notes notes = new Notes();
      noteLayout(notes, input, layout);
      notes.stated(options.layout());
      return new Interpreter(table, options, store, notes).capture(format(layout.dialect()));
    } catch (IOException | UnreadableCaptureException | RuntimeException | Error e) {
      store.close();
      throw e;
    }
  }

  private static void noteLayout(Notes notes, TextInput input, Layout layout) {
    notes.fact("encoding", input.encoding().text);
    List<String> header = layout.header().lines();
    notes.fact(
        "header",
        header.isEmpty()
            ? "none"
            : Shown.count(header.size(), "line")
                + " above the rows, from line "
                + (layout.header().firstLine() + 1));
    notes.fact("rows of numbers", "from line " + layout.firstRow());
    notes.columns(layout.columns());
  }

  private static String format(Dialect dialect) {
    return "delimited text, " + dialect.delimiterText() + ", " + dialect.decimalText();
  }
}
