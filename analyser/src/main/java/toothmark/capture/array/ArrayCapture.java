package toothmark.capture.array;

import java.io.IOException;
import java.nio.channels.FileChannel;
import toothmark.capture.Capture;
import toothmark.capture.ReadingOptions;
import toothmark.capture.UnreadableCaptureException;
import toothmark.capture.source.ByteSource;

/** Reads captures that are arrays of numbers. */
public final class ArrayCapture {

  private ArrayCapture() {}

  /**
   * Whether a file begins as one that holds arrays does.
   *
   * @param head first bytes of the file
   * @return true for NumPy arrays and archives of them, MATLAB files of level 5 or later, and HDF5
   */
  public static boolean looksLike(byte[] head) {
    return ArrayFormat.of(head).isPresent();
  }

  /**
   * Reads a file that looks like one with arrays.
   *
   * @param source the file
   * @param options what the user states
   * @return the capture; close it after use
   * @throws UnreadableCaptureException if it is broken or cannot be understood
   * @throws IOException if the system cannot read the file or write the temporary one
   */
  public static Capture read(ByteSource source, ReadingOptions options)
      throws UnreadableCaptureException, IOException {
    return read(source, ArrayFormat.of(source.head()).orElseThrow(), options);
  }

  /**
   * Reads a file of bare numbers.
   *
   * @param source the file
   * @param options what the user states, the form of the numbers at least
   * @return the capture; close it after use
   * @throws UnreadableCaptureException if it cannot be understood
   * @throws IOException if the system cannot read the file or write the temporary one
   */
  public static Capture readRaw(ByteSource source, ReadingOptions options)
      throws UnreadableCaptureException, IOException {
    return read(source, ArrayFormat.RAW, options);
  }

  private static Capture read(ByteSource source, ArrayFormat format, ReadingOptions options)
      throws UnreadableCaptureException, IOException {
    try (FileChannel file = source.openUnpacked();
        ArrayInput input = new ArrayInput(source.name(), file, options.progress())) {
      Variables variables = new Variables(source.name());
      try {
        format.read(input, options.layout(), variables);
        return variables.capture(format.text, options);
      } catch (IOException | UnreadableCaptureException | RuntimeException | Error e) {
        variables.close();
        throw e;
      }
    }
  }
}
