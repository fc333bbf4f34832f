package toothmark.capture.text;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.CharBuffer;
import java.nio.charset.CharsetDecoder;
import java.nio.charset.CodingErrorAction;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import toothmark.capture.UnreadableCaptureException;
import toothmark.capture.UnsupportedCaptureException;
import toothmark.capture.source.ByteSource;

/**
 * The bytes of a text in an encoding in which ASCII characters are single bytes: as they stand, or
 * as UTF-8 where the file is UTF-16. The byte order mark is taken off.
 */
final class TextInput {

  private static final int WIDE_CHUNK = 1 << 16;

  private final ByteSource source;
  private final Encoding encoding;
  private final CharsetDecoder wide;
  private final ByteBuffer wideBytes = ByteBuffer.allocate(WIDE_CHUNK);
  private final CharBuffer wideChars = CharBuffer.allocate(WIDE_CHUNK);
  private byte[] ready = new byte[0];
  private int readyUsed;

  TextInput(ByteSource source) throws IOException, UnreadableCaptureException {
    this.source = source;
    byte[] head = source.head();
    this.encoding = Encoding.of(head);
    this.wide =
        encoding.isWide()
            ? encoding
                .charset
                .newDecoder()
                .onMalformedInput(CodingErrorAction.REPLACE)
                .onUnmappableCharacter(CodingErrorAction.REPLACE)
            : null;
    source.read(new byte[encoding.markLength], 0, encoding.markLength);
  }

  ByteSource source() {
    return source;
  }

  Encoding encoding() {
    return encoding;
  }

  /**
   * Checks that the file is text at all.
   *
   * @throws UnsupportedCaptureException if control characters stand where text has none
   */
  void checkText() throws UnsupportedCaptureException {
    byte[] head = head();
    int end = head.length;
    while (end > 0 && head[end - 1] == 0) { // reserved by a recorder that was stopped
      end--;
    }
    for (int i = 0; i < end; i++) {
      byte c = head[i];
      if (c >= 0 && c < 9 || c > 13 && c < 32 && c != 26 && c != 27) {
        throw new UnsupportedCaptureException(
            source.name()
                + ": byte "
                + (i + encoding.markLength)
                + " is "
                + c
                + ", which text does not hold; export the capture as delimited text, value change"
                + " dump or WAV, or state the form of bare numbers in [capture.raw] of the job"
                + " sheet");
      }
    }
  }

  /** The first bytes, as {@link #read} gives them; reading is not moved. */
  byte[] head() {
    byte[] head = source.head();
    int mark = encoding.markLength;
    if (wide == null) {
      return Arrays.copyOfRange(head, mark, head.length);
    }
    int whole = (head.length - mark) & ~1;
    return new String(head, mark, whole, encoding.charset).getBytes(StandardCharsets.UTF_8);
  }

  /**
   * Whole lines from a place in a plain file, without the first and last, which are likely cut.
   *
   * @param share of the file, from 0 to 1
   */
  byte[] spot(double share) throws IOException {
    long at = (long) (share * source.storedSize()) & ~1L;
    byte[] bytes = source.spot(at, 2048);
    return wide == null
        ? bytes
        : new String(bytes, encoding.charset).getBytes(StandardCharsets.UTF_8);
  }

  /** Reads on; fewer bytes than wanted only at the end, 0 when nothing is left. */
  int read(byte[] into, int offset, int length) throws IOException, UnreadableCaptureException {
    if (wide == null) {
      return source.read(into, offset, length);
    }
    int done = 0;
    while (done < length) {
      if (readyUsed == ready.length && !convert()) {
        break;
      }
      int n = Math.min(length - done, ready.length - readyUsed);
      System.arraycopy(ready, readyUsed, into, offset + done, n);
      readyUsed += n;
      done += n;
    }
    return done;
  }

  private boolean convert() throws IOException, UnreadableCaptureException {
    int n = source.read(wideBytes.array(), wideBytes.position(), wideBytes.remaining());
    if (n == 0 && wideBytes.position() == 0) {
      return false;
    }
    wideBytes.limit(wideBytes.position() + n).position(0);
    wide.decode(wideBytes, wideChars, n == 0);
    if (n == 0) {
      wideBytes.position(wideBytes.limit());
    }
    wideBytes.compact();
    ready = wideChars.flip().toString().getBytes(StandardCharsets.UTF_8);
    readyUsed = 0;
    wideChars.clear();
    return true;
  }

  /** A cell or line as text. */
  String decode(byte[] bytes, int from, int to) {
    String s = new String(bytes, from, to - from, StandardCharsets.UTF_8);
    return encoding == Encoding.LATIN_1 || s.indexOf('\uFFFD') >= 0 && wide == null
        ? new String(bytes, from, to - from, StandardCharsets.ISO_8859_1)
        : s;
  }
}
