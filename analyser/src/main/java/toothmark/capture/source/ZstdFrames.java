package toothmark.capture.source;

import java.io.DataInputStream;
import java.io.EOFException;
import java.io.FilterInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.util.zip.ZipException;

/**
 * A Zstandard stream without its skippable frames, which the library does not know. Frames are
 * followed from block to block; broken ones are handed on, for the library to name. Source: RFC
 * 8878, 3.1.
 */
final class ZstdFrames extends FilterInputStream {

  private static final int FRAME = 0xFD2FB528;
  private static final int SKIPPABLE = 0x184D2A50;
  private static final int SKIPPABLE_MASK = 0xFFFFFFF0;
  private static final int BLOCK_HEADER = 3;
  private static final int CHECKSUM = 4;

  /** Of the type of a block that is one byte repeated. */
  private static final int REPEATED = 1;

  /** By the last two bits of a frame's descriptor. */
  private static final int[] DICTIONARY_BYTES = {0, 1, 2, 4};

  /** By the first two bits. */
  private static final int[] SIZE_BYTES = {0, 2, 4, 8};

  private byte[] header = {};
  private int given;
  private long body;
  private boolean inFrame;
  private boolean checksum;

  ZstdFrames(InputStream in) {
    super(in);
  }

  /** Whether a file begins with a frame to be skipped. */
  static boolean beginsSkippable(byte[] start) {
    return start.length >= 4 && isSkippable(number(start));
  }

  private static boolean isSkippable(int magic) {
    return (magic & SKIPPABLE_MASK) == SKIPPABLE;
  }

  private static int number(byte[] bytes) {
    return ByteBuffer.wrap(bytes).order(ByteOrder.LITTLE_ENDIAN).getInt();
  }

  @Override
  public int read() throws IOException {
    byte[] one = new byte[1];
    return read(one, 0, 1) < 0 ? -1 : one[0] & 0xff;
  }

  @Override
  public int read(byte[] into, int offset, int length) throws IOException {
    if (given == header.length && body == 0 && !(inFrame ? startBlock() : startFrame())) {
      return -1;
    }
    if (given < header.length) {
      int n = Math.min(length, header.length - given);
      System.arraycopy(header, given, into, offset, n);
      given += n;
      return n;
    }
    int n = in.read(into, offset, (int) Math.min(length, body));
    body -= Math.max(n, 0);
    return n;
  }

  /** Takes bytes to be handed on; false at the end. */
  private boolean take(int bytes) throws IOException {
    header = in.readNBytes(bytes);
    given = 0;
    return header.length > 0;
  }

  private boolean startFrame() throws IOException {
    boolean more = take(Integer.BYTES);
    while (header.length == Integer.BYTES && isSkippable(number(header))) {
      skip();
      more = take(Integer.BYTES);
    }
    if (header.length < Integer.BYTES || number(header) != FRAME) {
      body = Long.MAX_VALUE;
      return more;
    }
    int descriptor = in.read();
    boolean single = (descriptor & 0x20) != 0;
    int size = SIZE_BYTES[descriptor >> 6 & 3];
    int rest = DICTIONARY_BYTES[descriptor & 3] + (single ? Math.max(1, size) : 1 + size);
    checksum = (descriptor & CHECKSUM) != 0;
    ByteBuffer all = ByteBuffer.allocate(Integer.BYTES + 1).put(header).put((byte) descriptor);
    header = all.array();
    body = rest;
    inFrame = true;
    return true;
  }

  private void skip() throws IOException {
    try {
      int size = Integer.reverseBytes(new DataInputStream(in).readInt());
      in.skipNBytes(Integer.toUnsignedLong(size));
    } catch (EOFException e) {
      throw new ZipException("it ends within a frame to be skipped");
    }
  }

  private boolean startBlock() throws IOException {
    if (!take(BLOCK_HEADER) || header.length < BLOCK_HEADER) {
      return header.length > 0;
    }
    int block = header[0] & 0xff | (header[1] & 0xff) << 8 | (header[2] & 0xff) << 16;
    int type = block >> 1 & 3;
    boolean last = (block & 1) != 0;
    body = (type == REPEATED ? 1 : block >> 3) + (last && checksum ? CHECKSUM : 0);
    inFrame = !last;
    return true;
  }
}
