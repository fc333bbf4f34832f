package toothmark.capture.wav;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import toothmark.capture.Capture;
import toothmark.capture.Channel;
import toothmark.capture.Reading;
import toothmark.capture.UnreadableCaptureException;
import toothmark.capture.UnsupportedCaptureException;
import toothmark.capture.source.ByteSource;
import toothmark.capture.store.BlockPacker;
import toothmark.capture.store.NumberBlock;
import toothmark.capture.store.SampleStore;
import toothmark.capture.store.StoredColumn;
import toothmark.capture.store.StoredSignal;
import toothmark.capture.store.Ticks;

/**
 * Reads wave files: PCM of 8 to 32 bits and floating point, RIFF and its 64-bit form RF64 (EBU Tech
 * 3306). The sample data are read to the end of the file where the header's size is wrong or not
 * stated.
 */
public final class WavCapture {

  private static final int FRAMES = 1 << 14;
  private static final long NOT_STATED = 0xFFFFFFFFL;
  private static final int LARGEST_FORMAT = 4096;

  private final ByteSource source;
  private WavFormat format;

  private WavCapture(ByteSource source) {
    this.source = source;
  }

  /**
   * Whether a file begins as a wave file does.
   *
   * @param head its first bytes
   * @return true for RIFF and RF64 with the form WAVE
   */
  public static boolean looksLike(byte[] head) {
    if (head.length < 12) {
      return false;
    }
    String start = new String(head, 0, 12, StandardCharsets.ISO_8859_1);
    return (start.startsWith("RIFF") || start.startsWith("RF64")) && start.endsWith("WAVE");
  }

  /**
   * Reads a file.
   *
   * @param source the file, at its beginning
   * @return channels 1, 2, … with the unit FS
   * @throws UnreadableCaptureException if it is broken
   * @throws UnsupportedCaptureException if its coding is not supported
   * @throws IOException if the system cannot read it
   */
  public static Capture read(ByteSource source)
      throws UnreadableCaptureException, UnsupportedCaptureException, IOException {
    return new WavCapture(source).read();
  }

  private Capture read()
      throws UnreadableCaptureException, UnsupportedCaptureException, IOException {
    exactly(12, "the file's header");
    while (true) {
      ByteBuffer header = exactly(8, "a chunk of samples");
      String id = new String(header.array(), 0, 4, StandardCharsets.ISO_8859_1);
      long size = header.getInt(4) & 0xFFFFFFFFL;
      if (id.equals("data")) {
        return samples(size);
      }
      if (id.equals("fmt ")) {
        format =
            WavFormat.parse(
                source.name(), exactly((int) Math.min(size, LARGEST_FORMAT), "the format").array());
        skip(size - Math.min(size, LARGEST_FORMAT) + size % 2);
      } else {
        skip(size + size % 2);
      }
    }
  }

  private Capture samples(long stated)
      throws UnreadableCaptureException, UnsupportedCaptureException, IOException {
    if (format == null) {
      throw new UnreadableCaptureException(
          source.name() + ": samples come before their format; export it again");
    }
    List<SampleStore> stores = new ArrayList<>();
    List<StoredColumn> columns = new ArrayList<>();
    for (int c = 0; c < format.channels(); c++) {
      stores.add(new SampleStore(SampleStore.DEFAULT_BUDGET_BYTES / format.channels()));
      columns.add(stores.get(c).newColumn());
    }
    long frames = fill(columns, stated == NOT_STATED ? Long.MAX_VALUE : stated);
    if (frames == 0) {
      throw new UnreadableCaptureException(source.name() + ": it holds no sample; record it again");
    }
    List<Channel> channels = new ArrayList<>();
    Ticks ticks = Ticks.steady(1.0 / format.sampleRateHz(), 0, frames);
    for (int c = 0; c < format.channels(); c++) {
      channels.add(
          new Channel(
              Integer.toString(c + 1),
              "FS",
              new StoredSignal(columns.get(c), stores.get(c), ticks)));
    }
    boolean endsEarly = stated != NOT_STATED && frames * format.frameBytes() < stated - 1;
    return new Capture(source.name(), channels, reading(frames, endsEarly));
  }

  private long fill(List<StoredColumn> columns, long bytes)
      throws UnreadableCaptureException, IOException {
    byte[] raw = new byte[FRAMES * format.frameBytes()];
    ByteBuffer view = ByteBuffer.wrap(raw).order(ByteOrder.LITTLE_ENDIAN);
    BlockPacker packer = new BlockPacker();
    NumberBlock block = new NumberBlock(FRAMES);
    long frames = 0;
    while (bytes > 0) {
      int n = source.read(raw, 0, (int) Math.min(raw.length, bytes)) / format.frameBytes();
      if (n == 0) {
        break;
      }
      for (int c = 0; c < columns.size(); c++) {
        for (int i = 0; i < n; i++) {
          double v = format.sample(view, i * format.frameBytes() + c * format.bytes());
          boolean sound = Double.isFinite(v);
          block.set(
              i,
              sound ? Double.doubleToLongBits(v) : 0,
              sound ? NumberBlock.BITS : NumberBlock.MISSING);
        }
        columns.get(c).append(packer.pack(block, n, 0));
      }
      frames += n;
      bytes -= (long) n * format.frameBytes();
    }
    return frames;
  }

  private Reading reading(long frames, boolean endsEarly) {
    List<Reading.Fact> facts = new ArrayList<>();
    facts.add(new Reading.Fact("sample rate", format.sampleRateHz() + " Hz, from the header"));
    facts.add(
        new Reading.Fact(
            "samples",
            frames
                + " of "
                + 8 * format.bytes()
                + (format.coding() == WavFormat.Coding.WHOLE ? " bits" : " bits, floating point")));
    facts.add(new Reading.Fact("channels", Integer.toString(format.channels())));
    facts.add(
        new Reading.Fact("unit", "full scale (FS); a sound card does not say how many volts"));
    List<String> doubts = new ArrayList<>();
    doubts.add(
        "A sound card blocks direct voltage: slow signals are drawn towards zero between edges.");
    if (endsEarly) {
      doubts.add("The file ends before its header says; what is there was read.");
    }
    return new Reading("sound recording (WAV)", facts, doubts);
  }

  private ByteBuffer exactly(int length, String what)
      throws UnreadableCaptureException, IOException {
    byte[] bytes = new byte[length];
    if (source.read(bytes, 0, length) < length) {
      throw new UnreadableCaptureException(
          source.name() + ": the file ends before " + what + "; copy or export it again");
    }
    return ByteBuffer.wrap(bytes).order(ByteOrder.LITTLE_ENDIAN);
  }

  private void skip(long bytes) throws UnreadableCaptureException, IOException {
    long left = bytes;
    while (left > 0) {
      int n = (int) Math.min(left, 1 << 16);
      exactly(n, "its samples");
      left -= n;
    }
  }
}
