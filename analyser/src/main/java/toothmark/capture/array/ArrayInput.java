package toothmark.capture.array;

import java.io.IOException;
import java.io.InputStream;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.util.concurrent.CancellationException;
import toothmark.capture.ReadingProgress;
import toothmark.capture.UnreadableCaptureException;

/** The bytes of a file with arrays, from its start or from anywhere. */
final class ArrayInput extends InputStream {

  private static final int HEAD = 256 << 10;

  private final String name;
  private final FileChannel file;
  private final ReadingProgress progress;

  ArrayInput(String name, FileChannel file, ReadingProgress progress) throws IOException {
    this.name = name;
    this.file = file;
    this.progress = progress;
    file.position(0);
  }

  /** Name of the file, for messages. */
  String name() {
    return name;
  }

  FileChannel file() {
    return file;
  }

  /** The first bytes, at most 256 KiB; reading is not moved. */
  byte[] head() throws IOException {
    ByteBuffer head = ByteBuffer.allocate((int) Math.min(file.size(), HEAD));
    while (head.hasRemaining() && file.read(head, head.position()) >= 0) {
      // read on
    }
    return head.array();
  }

  /** Tells how far reading has come. */
  void advanced(long position) throws IOException {
    progress.advanced(position, file.size());
    if (progress.isCancelled()) {
      throw new CancellationException(name + ": reading was stopped");
    }
  }

  @Override
  public int read() throws IOException {
    byte[] one = new byte[1];
    return read(one, 0, 1) < 0 ? -1 : one[0] & 0xff;
  }

  @Override
  public int read(byte[] into, int offset, int length) throws IOException {
    int n = file.read(ByteBuffer.wrap(into, offset, length));
    advanced(file.position());
    return n;
  }

  UnreadableCaptureException broken(String what, Exception cause) {
    return new UnreadableCaptureException(
        name + ": " + what + "; copy the file again or export it anew", cause);
  }
}
