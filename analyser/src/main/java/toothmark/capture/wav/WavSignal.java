package toothmark.capture.wav;

import java.io.Closeable;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.channels.FileChannel;
import toothmark.capture.SampledSignal;

/** One channel of a sound file, read where it lies. */
final class WavSignal extends SampledSignal implements Closeable {

  private static final int FRAMES_AT_ONCE = 8192;

  private final WavHeader header;
  private final FileChannel file;
  private final int channel;

  /**
   * Makes the signal.
   *
   * @param channel from 0
   */
  WavSignal(WavHeader header, FileChannel file, int channel) {
    super(0, 1.0 / header.rateHz(), header.frames());
    this.header = header;
    this.file = file;
    this.channel = channel;
  }

  @Override
  public void read(long first, double[] into, int count) {
    int frame = header.frameBytes();
    SampleFormat format = header.format();
    for (int done = 0; done < count; done += FRAMES_AT_ONCE) {
      int n = Math.min(FRAMES_AT_ONCE, count - done);
      ByteBuffer b = fetch(header.dataStart() + (first + done) * frame, n * frame);
      int at = channel * format.bytes;
      for (int i = 0; i < n; i++) {
        into[done + i] = format.value(b, at);
        at += frame;
      }
    }
  }

  private ByteBuffer fetch(long position, int size) {
    ByteBuffer b = ByteBuffer.allocate(size).order(ByteOrder.LITTLE_ENDIAN);
    try {
      while (b.hasRemaining()) {
        if (file.read(b, position + b.position()) < 0) {
          throw new IOException("the sound file was cut short while it was in use");
        }
      }
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    return b;
  }

  @Override
  public void close() throws IOException {
    file.close();
  }
}
