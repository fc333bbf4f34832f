package toothmark.capture.store;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import toothmark.capture.source.TemporaryFile;

/**
 * Where the packed numbers of one capture lie: in memory up to a budget, then in a temporary file
 * that the system removes when it is closed or the program ends.
 */
public final class SampleStore implements AutoCloseable {

  /**
   * What is kept in memory before the temporary file is used, bytes: 24 MiB, or an eighth of a heap
   * that is small.
   */
  public static final long DEFAULT_BUDGET_BYTES =
      Math.min(24L << 20, Runtime.getRuntime().maxMemory() / 8);

  private final long budgetBytes;
  private long inMemoryBytes;
  private long inFileBytes;
  private FileChannel file;

  /**
   * Makes an empty store.
   *
   * @param budgetBytes what may be kept in memory
   */
  public SampleStore(long budgetBytes) {
    this.budgetBytes = budgetBytes;
  }

  /**
   * Starts a column.
   *
   * @return an empty column
   */
  public StoredColumn newColumn() {
    return new StoredColumn(this);
  }

  /** Takes over what a block holds; may move it to the file. */
  void keep(PackedBlock block) throws IOException {
    int size = block.payload.length;
    if (size == 0 || inMemoryBytes + size <= budgetBytes) {
      inMemoryBytes += size;
      return;
    }
    if (file == null) {
      file = TemporaryFile.open();
    }
    block.position = inFileBytes;
    ByteBuffer bytes = ByteBuffer.wrap(block.payload);
    while (bytes.hasRemaining()) {
      inFileBytes += file.write(bytes, inFileBytes);
    }
    block.payload = null;
  }

  /** Reads what was moved to the file. */
  void fetch(long position, ByteBuffer into) {
    try {
      long at = position;
      while (into.hasRemaining()) {
        int n = file.read(into, at);
        if (n < 0) {
          throw new IOException("the temporary file with the samples was cut short");
        }
        at += n;
      }
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /**
   * What lies in the temporary file.
   *
   * @return bytes; 0 when there is no such file
   */
  public long inFileBytes() {
    return inFileBytes;
  }

  /** Gives memory and file back; the columns can't be read afterwards. May be called again. */
  @Override
  public void close() throws IOException {
    if (file != null) {
      file.close();
    }
  }
}
