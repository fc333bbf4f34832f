package toothmark.capture.text;

import java.nio.ByteBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;

/** How characters are written as bytes. */
enum Encoding {
  ASCII("ASCII", StandardCharsets.UTF_8, 0),
  UTF_8("UTF-8", StandardCharsets.UTF_8, 0),
  UTF_8_MARKED("UTF-8 with byte order mark", StandardCharsets.UTF_8, 3),
  UTF_16LE("UTF-16, little end first", StandardCharsets.UTF_16LE, 0),
  UTF_16LE_MARKED("UTF-16, little end first, with byte order mark", StandardCharsets.UTF_16LE, 2),
  UTF_16BE("UTF-16, big end first", StandardCharsets.UTF_16BE, 0),
  UTF_16BE_MARKED("UTF-16, big end first, with byte order mark", StandardCharsets.UTF_16BE, 2),
  LATIN_1("Latin-1", StandardCharsets.ISO_8859_1, 0);

  final String text;
  final Charset charset;
  final int markLength;

  Encoding(String text, Charset charset, int markLength) {
    this.text = text;
    this.charset = charset;
    this.markLength = markLength;
  }

  boolean isWide() {
    return charset == StandardCharsets.UTF_16LE || charset == StandardCharsets.UTF_16BE;
  }

  /**
   * Finds the encoding from the first bytes: the byte order mark, else where zero bytes stand, else
   * whether all is valid UTF-8.
   */
  static Encoding of(byte[] head) {
    if (starts(head, 0xef, 0xbb, 0xbf)) {
      return UTF_8_MARKED;
    }
    if (starts(head, 0xff, 0xfe)) {
      return UTF_16LE_MARKED;
    }
    if (starts(head, 0xfe, 0xff)) {
      return UTF_16BE_MARKED;
    }
    int even = zeros(head, 0);
    int odd = zeros(head, 1);
    int most = Math.min(head.length, 1024) / 4;
    if (odd > most && even == 0) {
      return UTF_16LE;
    }
    if (even > most && odd == 0) {
      return UTF_16BE;
    }
    return isAscii(head) ? ASCII : isUtf8(head) ? UTF_8 : LATIN_1;
  }

  private static boolean starts(byte[] head, int... mark) {
    for (int i = 0; i < mark.length; i++) {
      if (i >= head.length || (head[i] & 0xff) != mark[i]) {
        return false;
      }
    }
    return true;
  }

  private static int zeros(byte[] head, int from) {
    int n = 0;
    for (int i = from; i < Math.min(head.length, 1024); i += 2) {
      n += head[i] == 0 ? 1 : 0;
    }
    return n;
  }

  private static boolean isAscii(byte[] head) {
    int or = 0;
    for (byte b : head) {
      or |= b;
    }
    return or >= 0;
  }

  private static boolean isUtf8(byte[] head) {
    int end = head.length;
    for (int back = 0; back < 4; back++) {
      try {
        StandardCharsets.UTF_8
            .newDecoder()
            .decode(ByteBuffer.wrap(head, 0, Math.max(0, end - back)));
        return true;
      } catch (CharacterCodingException e) {
        // the head may end inside a character
      }
    }
    return false;
  }
}
