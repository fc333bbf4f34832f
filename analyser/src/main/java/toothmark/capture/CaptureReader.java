package toothmark.capture;

import java.io.IOException;
import java.nio.file.Path;
import toothmark.capture.source.ByteSource;
import toothmark.capture.text.TextCapture;
import toothmark.capture.vcd.ValueChangeDump;
import toothmark.capture.wav.WavCapture;

/** Reads a capture of any supported kind; the kind is found from the content, not the name. */
public final class CaptureReader {

  private CaptureReader() {}

  /**
   * Reads a capture.
   *
   * @param file what to read; never changed
   * @param options what the user states
   * @return the capture; close it after use
   * @throws UnreadableCaptureException if the file is broken
   * @throws UnsupportedCaptureException if the file is of a kind that is not supported
   * @throws IOException if the system cannot read the file
   * @throws java.util.concurrent.CancellationException if the progress listener says so
   */
  public static Capture read(Path file, ReadingOptions options)
      throws UnreadableCaptureException, UnsupportedCaptureException, IOException {
    try (ByteSource source = ByteSource.open(file, options.progress())) {
      byte[] head = source.head();
      if (head.length == 0) {
        throw new UnreadableCaptureException(
            source.name() + ": the file is empty; record the capture again");
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
}
