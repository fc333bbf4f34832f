package toothmark.capture;

import java.io.BufferedInputStream;
import java.io.EOFException;
import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.zip.GZIPInputStream;
import java.util.zip.ZipException;
import toothmark.capture.text.TextCapture;
import toothmark.capture.vcd.ValueChangeDump;

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
    String name = file.getFileName().toString();
    byte[] bytes;
    try (InputStream in = open(file)) {
      bytes = in.readAllBytes();
    } catch (ZipException | EOFException e) {
      throw new UnreadableCaptureException(
          name + ": the compressed data are broken (" + e.getMessage() + "); copy the file again",
          e);
    }
    if (bytes.length == 0) {
      throw new UnreadableCaptureException(name + ": the file is empty; record the capture again");
    }
    if (ValueChangeDump.looksLike(bytes)) {
      return ValueChangeDump.read(name, bytes);
    }
    return TextCapture.read(name, bytes, options);
  }

  private static InputStream open(Path file) throws IOException {
    InputStream in = new BufferedInputStream(Files.newInputStream(file), 1 << 16);
    in.mark(2);
    int first = in.read();
    int second = in.read();
    in.reset();
    return first == 0x1f && second == 0x8b ? new GZIPInputStream(in, 1 << 16) : in;
  }
}
