package toothmark.capture.wav;

import java.io.IOException;
import java.nio.channels.FileChannel;
import java.util.ArrayList;
import java.util.List;
import toothmark.capture.Capture;
import toothmark.capture.Channel;
import toothmark.capture.Reading;
import toothmark.capture.UnreadableCaptureException;
import toothmark.capture.UnsupportedCaptureException;
import toothmark.capture.source.ByteSource;

/**
 * Reads sound recordings: RIFF/WAVE and RF64 with PCM of 8 to 32 bits or float.
 *
 * <p>The samples are not copied; they are read from the file when asked for.
 */
public final class WavCapture {

  private WavCapture() {}

  /**
   * Whether a file begins as a sound file does.
   *
   * @param head first bytes of the file
   * @return true for RIFF, RF64 and BW64 files of the kind WAVE
   */
  public static boolean looksLike(byte[] head) {
    return (is(head, 0, "RIFF") || is(head, 0, "RF64") || is(head, 0, "BW64"))
        && is(head, 8, "WAVE");
  }

  private static boolean is(byte[] head, int at, String word) {
    for (int i = 0; i < 4; i++) {
      if (at + i >= head.length || head[at + i] != word.charAt(i)) {
        return false;
      }
    }
    return true;
  }

  /**
   * Opens a sound file.
   *
   * @param source the file
   * @return the capture; close it after use
   * @throws UnreadableCaptureException if the header is broken
   * @throws UnsupportedCaptureException if the samples are in a form that is not supported
   * @throws IOException if the system cannot read the file
   */
  public static Capture read(ByteSource source)
      throws UnreadableCaptureException, UnsupportedCaptureException, IOException {
    FileChannel file = source.openUnpacked();
    try {
      WavHeader header = WavHeader.read(source.name(), file);
      List<Channel> channels = new ArrayList<>();
      for (int c = 0; c < header.channels(); c++) {
        channels.add(new Channel(String.valueOf(c + 1), "FS", new WavSignal(header, file, c)));
      }
      return new Capture(source.name(), channels, reading(header));
    } catch (IOException
        | UnreadableCaptureException
        | UnsupportedCaptureException
        | RuntimeException e) {
      file.close();
      throw e;
    }
  }

  private static Reading reading(WavHeader header) {
    List<String> doubts = new ArrayList<>(header.doubts());
    doubts.add(
        "a sound card blocks direct voltage: slow signals are drawn towards zero between edges");
    return new Reading(
        "sound recording (WAV)",
        List.of(
            new Reading.Fact("sampling rate", header.rateHz() + " Hz, from the header"),
            new Reading.Fact("samples", header.frames() + " of " + header.format().text),
            new Reading.Fact("channels", String.valueOf(header.channels())),
            new Reading.Fact("unit", "full scale (FS); a sound card does not say how many volts")),
        doubts);
  }
}
