package toothmark.capture.vcd;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import toothmark.capture.UnreadableCaptureException;
import toothmark.capture.source.ByteSource;

/** The words of a dump, one after the other: runs of printable characters between white space. */
final class Words {

  private static final int BUFFER = 256 << 10;

  private final ByteSource source;
  private byte[] buffer = new byte[BUFFER + 1];
  private int position;
  private int limit;
  private boolean ended;
  private int start;
  private int length;
  private long line = 1;

  Words(ByteSource source) {
    this.source = source;
  }

  /** Moves to the next word; false at the end. */
  boolean next() throws IOException, UnreadableCaptureException {
    int p = position;
    while (true) {
      while (p < limit && isBlank(buffer[p])) {
        line += buffer[p++] == '\n' ? 1 : 0;
      }
      if (p < limit) {
        break;
      }
      position = p;
      if (!fill(p)) {
        length = 0;
        return false;
      }
      p = position;
    }
    int first = p;
    while (true) {
      while (p < limit && !isBlank(buffer[p])) {
        p++;
      }
      if (p < limit || ended) {
        break;
      }
      int seen = p - first;
      fill(first);
      first = position;
      p = first + seen;
    }
    start = first;
    length = p - first;
    position = p;
    return true;
  }

  /** Bytes beyond ASCII, such as those of a micro sign, are part of a word. */
  private static boolean isBlank(byte b) {
    return b >= 0 && b <= ' ';
  }

  /** Moves what is still needed to the front and reads on; false when nothing comes. */
  private boolean fill(int keepFrom) throws IOException, UnreadableCaptureException {
    if (ended) {
      return false;
    }
    int kept = limit - keepFrom;
    if (kept > buffer.length / 2) {
      buffer = Arrays.copyOfRange(buffer, keepFrom, keepFrom + 2 * buffer.length);
    } else {
      System.arraycopy(buffer, keepFrom, buffer, 0, kept);
    }
    int n = source.read(buffer, kept, buffer.length - 1 - kept);
    ended = n < buffer.length - 1 - kept;
    position = 0;
    limit = kept + n;
    return n > 0;
  }

  /** Line on which the word stands, from 1. */
  long line() {
    return line;
  }

  int length() {
    return length;
  }

  /** A character of the word, as a byte. */
  byte at(int index) {
    return buffer[start + index];
  }

  /** The word, or the rest of it, a character for each byte. */
  String text(int from) {
    return new String(buffer, start + from, length - from, StandardCharsets.ISO_8859_1);
  }

  /** The word as people read it: in UTF-8 where it is that. */
  String name() {
    String utf8 = new String(buffer, start, length, StandardCharsets.UTF_8);
    return utf8.indexOf('\uFFFD') < 0 ? utf8 : text(0);
  }

  boolean is(String other) {
    return length == other.length() && text(0).equals(other);
  }

  /** Up to eight characters of the word from an index on, packed; 0 when there are more. */
  long packed(int from) {
    int n = length - from;
    long packed = 0;
    for (int i = 0; i < n && n <= 8; i++) {
      packed = packed << 8 | buffer[start + from + i] & 0xff;
    }
    return packed;
  }
}
