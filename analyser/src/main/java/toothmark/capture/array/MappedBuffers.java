package toothmark.capture.array;

import java.io.Closeable;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.channels.FileChannel.MapMode;
import toothmark.capture.source.TemporaryFile;
import us.hebi.matlab.mat.format.BufferAllocator;

/**
 * Room for matrices that a library wants to hold whole: large ones lie in a temporary file that is
 * mapped into memory, so that the system can put them aside.
 */
final class MappedBuffers implements BufferAllocator, Closeable {

  private static final int WORTH_A_FILE = 1 << 20;

  private FileChannel file;
  private long used;

  @Override
  public ByteBuffer allocate(int size) {
    if (size < WORTH_A_FILE) {
      return ByteBuffer.allocate(size);
    }
    try {
      file = file == null ? TemporaryFile.open() : file;
      ByteBuffer room = file.map(MapMode.READ_WRITE, used, size);
      used += size;
      return room;
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  @Override
  public void release(ByteBuffer buffer) {
    // Nothing to do: the system takes mapped room back when the file is closed and the buffer gone.
  }

  @Override
  public void close() throws IOException {
    if (file != null) {
      file.close();
    }
  }
}
