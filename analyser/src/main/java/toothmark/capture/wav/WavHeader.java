package toothmark.capture.wav;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.channels.FileChannel;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import toothmark.capture.UnreadableCaptureException;
import toothmark.capture.UnsupportedCaptureException;

/**
 * What stands before the samples of a RIFF/WAVE file.
 *
 * <p>Sources: Microsoft and IBM, Multimedia Programming Interface and Data Specifications 1.0
 * (1991), for RIFF and PCM; Microsoft, Multiple Channel Audio Data and WAVE Files (2007), for the
 * extensible form; EBU Tech 3306 (2009), for RF64.
 */
final class WavHeader {

  private static final int PCM = 1;
  private static final int FLOAT = 3;
  private static final int EXTENSIBLE = 0xFFFE;
  private static final long SIZE_ELSEWHERE = 0xFFFF_FFFFL;

  private final String file;
  private final FileChannel channel;
  private final List<String> doubts = new ArrayList<>();
  private SampleFormat format;
  private int channels;
  private long rateHz;
  private int frameBytes;
  private long dataStart;
  private long frames;
  private long longDataSize = -1;

  private WavHeader(String file, FileChannel channel) {
    this.file = file;
    this.channel = channel;
  }

  static WavHeader read(String file, FileChannel channel)
      throws IOException, UnreadableCaptureException, UnsupportedCaptureException {
    WavHeader header = new WavHeader(file, channel);
    header.readChunks();
    return header;
  }

  private ByteBuffer bytes(long position, int n) throws IOException, UnreadableCaptureException {
    ByteBuffer b = ByteBuffer.allocate(n).order(ByteOrder.LITTLE_ENDIAN);
    while (b.hasRemaining()) {
      if (channel.read(b, position + b.position()) < 0) {
        throw new UnreadableCaptureException(
            file
                + ": byte "
                + (position + b.position())
                + ": the sound file ends within its header; copy the file again");
      }
    }
    return b.flip();
  }

  private static String name(ByteBuffer b, int at) {
    return new String(b.array(), at, 4, StandardCharsets.ISO_8859_1);
  }

  private void readChunks()
      throws IOException, UnreadableCaptureException, UnsupportedCaptureException {
    long end = channel.size();
    long position = 12;
    while (position + 8 <= end) {
      ByteBuffer head = bytes(position, 8);
      String id = name(head, 0);
      long size = head.getInt(4) & 0xFFFF_FFFFL;
      long body = position + 8;
      switch (id) {
        case "ds64" -> longDataSize = bytes(body, 16).getLong(8);
        case "fmt " -> readFormat(body, size);
        case "data" -> {
          readData(body, size, end);
          return;
        }
        default -> {}
      }
      position = next(body + size, size, end);
    }
    throw new UnreadableCaptureException(
        file + ": the sound file has no data chunk in its " + end + " bytes; copy the file again");
  }

  /** Chunks begin at even bytes, but not every recorder keeps to that. */
  private long next(long position, long size, long end)
      throws IOException, UnreadableCaptureException {
    boolean odd = (size & 1) == 1;
    boolean unpadded = odd && position + 8 <= end && isName(bytes(position, 4));
    return position + (odd && !unpadded ? 1 : 0);
  }

  /** Whether four bytes are printable, as the name of a chunk is. */
  private static boolean isName(ByteBuffer b) {
    boolean printable = true;
    for (int i = 0; i < 4; i++) {
      printable &= b.get(i) >= ' ' && b.get(i) < 127;
    }
    return printable;
  }

  private void readFormat(long body, long size)
      throws IOException, UnreadableCaptureException, UnsupportedCaptureException {
    ByteBuffer f = bytes(body, (int) Math.min(Math.max(size, 16), 40));
    int tag = f.getShort(0) & 0xFFFF;
    channels = f.getShort(2) & 0xFFFF;
    rateHz = f.getInt(4) & 0xFFFF_FFFFL;
    frameBytes = f.getShort(12) & 0xFFFF;
    int bits = f.getShort(14) & 0xFFFF;
    if (tag == EXTENSIBLE && f.limit() >= 26) {
      tag = f.getShort(24) & 0xFFFF;
    }
    if (channels == 0 || rateHz == 0 || frameBytes == 0 || frameBytes % channels != 0) {
      throw new UnreadableCaptureException(
          file
              + ": byte "
              + body
              + ": the sound format states "
              + channels
              + " channels, "
              + rateHz
              + " Hz and "
              + frameBytes
              + " bytes a frame; record again");
    }
    if ((tag == PCM || tag == FLOAT) && (bits + 7) / 8 != frameBytes / channels && bits > 0) {
      throw new UnreadableCaptureException(
          file
              + ": byte "
              + body
              + ": the sound format states "
              + bits
              + " bits a sample, but "
              + frameBytes / channels
              + " bytes; save the sound anew as PCM of 16 bits");
    }
    format =
        tag == PCM || tag == FLOAT ? SampleFormat.of(tag == FLOAT, frameBytes / channels) : null;
    if (format == null) {
      throw new UnsupportedCaptureException(
          file
              + ": byte "
              + body
              + ": sound format "
              + tag
              + " with "
              + bits
              + " bits is not supported; save as PCM of 8, 16, 24 or 32 bits or as float");
    }
  }

  private void readData(long body, long size, long end)
      throws IOException, UnreadableCaptureException {
    if (format == null) {
      throw new UnreadableCaptureException(
          file + ": byte " + body + ": the samples come before their format; copy the file again");
    }
    boolean elsewhere = size == SIZE_ELSEWHERE;
    long stated = elsewhere && longDataSize >= 0 ? longDataSize : size;
    long there = end - body;
    dataStart = body;
    frames = Math.min(stated, there) / frameBytes;
    if (stated > 0 && stated < there) {
      noteMoreData(next(body + stated, stated, end), end);
    }
    if (stated > there && !(elsewhere && longDataSize < 0)) {
      doubts.add(
          "the header promises "
              + stated / frameBytes
              + " samples a channel, the file holds "
              + frames
              + "; the recording was cut short");
    }
    boolean chunkFollows = there >= 8 && isName(bytes(body, 4)) && isWhole(body, end);
    if (stated == 0 && there >= frameBytes && !chunkFollows) {
      frames = there / frameBytes;
      doubts.add("the header states no samples, as when a recorder is stopped; read to the end");
    }
    if (frames == 0) {
      throw new UnreadableCaptureException(
          file + ": byte " + body + ": the sound file holds no samples; record again");
    }
  }

  /** Whether a chunk that begins at a byte ends within the file. */
  private boolean isWhole(long position, long end) throws IOException, UnreadableCaptureException {
    return position + 8 + (bytes(position, 8).getInt(4) & 0xFFFF_FFFFL) <= end;
  }

  /** Says that samples further on are left out. */
  private void noteMoreData(long position, long end)
      throws IOException, UnreadableCaptureException {
    long p = position;
    while (p + 8 <= end && isName(bytes(p, 4))) {
      ByteBuffer head = bytes(p, 8);
      long size = head.getInt(4) & 0xFFFF_FFFFL;
      if (name(head, 0).equals("data")) {
        doubts.add("samples in a second data chunk, at byte " + p + ", were left out");
        return;
      }
      p = next(p + 8 + size, size, end);
    }
  }

  SampleFormat format() {
    return format;
  }

  int channels() {
    return channels;
  }

  long rateHz() {
    return rateHz;
  }

  int frameBytes() {
    return frameBytes;
  }

  long dataStart() {
    return dataStart;
  }

  long frames() {
    return frames;
  }

  List<String> doubts() {
    return doubts;
  }
}
