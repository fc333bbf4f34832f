package toothmark.capture;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import toothmark.capture.array.ArrayCapture;
import toothmark.capture.source.ByteSource;
import toothmark.capture.text.TextCapture;
import toothmark.capture.vcd.ValueChangeDump;
import toothmark.capture.wav.WavCapture;

/** Reads a capture of any supported kind; the kind is found from the content, not the name. */
public final class CaptureReader {

  private static final String ONLY_START = "only the start of the file was read";

  private CaptureReader() {}

  /**
   * Whether only the start of the file was read, because the options said so and there was more.
   *
   * @param capture what was read
   * @return false when it is whole
   */
  public static boolean isOnlyStart(Capture capture) {
    return capture.reading().doubts().contains(ONLY_START);
  }

  /**
   * Reads a capture.
   *
   * @param file what to read, {@code -} for standard input; never changed
   * @param options what the user states
   * @return the capture; close it after use
   * @throws UnreadableCaptureException if the file is broken
   * @throws UnsupportedCaptureException if the file is of a kind that is not supported
   * @throws IOException if the system cannot read the file
   * @throws java.util.concurrent.CancellationException if the progress listener says so
   */
  public static Capture read(Path file, ReadingOptions options)
      throws UnreadableCaptureException, UnsupportedCaptureException, IOException {
    try (ByteSource source = ByteSource.open(file, options)) {
      Capture read = read(source, options);
      Reading reading = source.isCut() ? started(read.reading()) : read.reading();
      return new Capture(read.file(), read.channels(), reading, saved(file));
    }
  }

  private static Reading started(Reading reading) {
    List<String> doubts = new ArrayList<>(reading.doubts());
    doubts.add(0, ONLY_START);
    return new Reading(reading.format(), reading.facts(), doubts);
  }

  private static Optional<Instant> saved(Path file) throws IOException {
    return Files.isRegularFile(file)
        ? Optional.of(Files.getLastModifiedTime(file).toInstant())
        : Optional.empty();
  }

  private static Capture read(ByteSource source, ReadingOptions options)
      throws UnreadableCaptureException, UnsupportedCaptureException, IOException {
    byte[] head = source.head();
    if (head.length == 0) {
      throw new UnreadableCaptureException(
          source.name() + ": the file is empty; record the capture again");
    }
    if (options.layout().raw().isPresent()) {
      return ArrayCapture.readRaw(source, options);
    }
    if (ArrayCapture.looksLike(head)) {
      return ArrayCapture.read(source, options);
    }
    if (ValueChangeDump.looksLike(head)) {
      return ValueChangeDump.read(source);
    }
    if (WavCapture.looksLike(head)) {
      return WavCapture.read(source);
    }
    FileKind.refuse(source.name(), head);
    return TextCapture.read(source, options);
  }
}
