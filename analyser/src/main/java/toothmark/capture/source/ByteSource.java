package toothmark.capture.source;

import java.io.BufferedInputStream;
import java.io.Closeable;
import java.io.EOFException;
import java.io.IOException;
import java.io.InputStream;
import java.nio.ByteBuffer;
import java.nio.channels.Channels;
import java.nio.channels.FileChannel;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.Arrays;
import java.util.concurrent.CancellationException;
import java.util.zip.GZIPInputStream;
import java.util.zip.ZipException;
import toothmark.capture.ReadingProgress;
import toothmark.capture.UnreadableCaptureException;

/**
 * The bytes of a capture in order, unpacked where the file is compressed.
 *
 * <p>Not safe for use by several threads at once; one may follow another.
 */
public final class ByteSource implements Closeable {

  private static final int HEAD = 256 << 10;

  private final Path path;
  private final String name;
  private final FileChannel channel;
  private final InputStream unpacked;
  private final ReadingProgress progress;
  private final long storedSize;
  private byte[] head = new byte[0];
  private int headUsed;

  private ByteSource(Path file, ReadingProgress progress) throws IOException {
    this.path = file;
    this.name = file.getFileName().toString();
    this.progress = progress;
    this.channel = FileChannel.open(file, StandardOpenOption.READ);
    this.storedSize = channel.size();
    byte[] first = at(0, 2);
    boolean gzip = first.length == 2 && first[0] == 0x1f && first[1] == (byte) 0x8b;
    this.unpacked = gzip ? gunzip(channel) : null;
  }

  private static InputStream gunzip(FileChannel channel) throws IOException {
    InputStream packed = new BufferedInputStream(Channels.newInputStream(channel), 1 << 16);
    return new GZIPInputStream(packed, 1 << 16);
  }

  /**
   * Opens a file.
   *
   * @param file what to read
   * @param progress hears how far reading has come; asked whether to stop
   * @return the source; close it after use
   * @throws UnreadableCaptureException if the compression is broken
   * @throws IOException if the system cannot open the file
   */
  public static ByteSource open(Path file, ReadingProgress progress)
      throws IOException, UnreadableCaptureException {
    ByteSource source;
    try {
      source = new ByteSource(file, progress);
    } catch (ZipException | EOFException e) {
      throw broken(file.getFileName().toString(), e);
    }
    try {
      byte[] start = new byte[HEAD];
      int n = source.fill(start, 0, HEAD);
      source.head = n == HEAD ? start : Arrays.copyOf(start, n);
      return source;
    } catch (IOException | UnreadableCaptureException | RuntimeException e) {
      source.close();
      throw e;
    }
  }

  private static UnreadableCaptureException broken(String name, IOException cause) {
    return new UnreadableCaptureException(
        name
            + ": the compressed data are broken or cut short ("
            + cause.getMessage()
            + "); copy the file again",
        cause);
  }

  /**
   * Name of the file, without its folder, for messages.
   *
   * @return never empty
   */
  public String name() {
    return name;
  }

  /**
   * The first bytes, at most 256 KiB; reading is not moved.
   *
   * @return a copy; shorter than 256 KiB only when that is the whole file
   */
  public byte[] head() {
    return head.clone();
  }

  /**
   * Whether the head is the whole file.
   *
   * @return true when nothing follows {@link #head()}
   */
  public boolean headIsAll() {
    return head.length < HEAD;
  }

  /**
   * Bytes from anywhere in a file that is not compressed; reading is not moved.
   *
   * @param position byte offset in the file
   * @param length how many at most
   * @return what is there; empty beyond the end and for compressed files
   * @throws IOException if the system cannot read
   */
  public byte[] spot(long position, int length) throws IOException {
    return unpacked == null ? at(position, length) : new byte[0];
  }

  /**
   * Size of the file as stored.
   *
   * @return bytes
   */
  public long storedSize() {
    return storedSize;
  }

  /**
   * Whether the file is compressed.
   *
   * @return true when {@link #spot} cannot serve
   */
  public boolean isCompressed() {
    return unpacked != null;
  }

  private byte[] at(long position, int length) throws IOException {
    ByteBuffer buffer = ByteBuffer.allocate(length);
    while (buffer.hasRemaining()) {
      if (channel.read(buffer, position + buffer.position()) < 0) {
        break;
      }
    }
    return Arrays.copyOf(buffer.array(), buffer.position());
  }

  /**
   * Reads on, from the first byte.
   *
   * @param into where to put the bytes
   * @param offset where in it
   * @param length how many are wanted
   * @return how many were read; fewer than wanted only at the end, 0 when nothing is left
   * @throws UnreadableCaptureException if the compression is broken
   * @throws IOException if the system cannot read
   * @throws CancellationException if the listener says stop
   */
  public int read(byte[] into, int offset, int length)
      throws IOException, UnreadableCaptureException {
    int fromHead = Math.min(length, head.length - headUsed);
    System.arraycopy(head, headUsed, into, offset, fromHead);
    headUsed += fromHead;
    int rest = fill(into, offset + fromHead, length - fromHead);
    progress.advanced(channel.isOpen() ? channel.position() : storedSize, storedSize);
    return fromHead + rest;
  }

  /**
   * Opens the bytes for reading from anywhere; a compressed file is first unpacked into a temporary
   * file that vanishes when it is closed.
   *
   * @return a channel that the caller closes
   * @throws UnreadableCaptureException if the compression is broken
   * @throws IOException if the system cannot read the file or write the temporary one
   */
  public FileChannel openUnpacked() throws IOException, UnreadableCaptureException {
    if (unpacked == null) {
      return FileChannel.open(path, StandardOpenOption.READ);
    }
    FileChannel file = TemporaryFile.open();
    try {
      byte[] buffer = new byte[HEAD];
      for (int n = read(buffer, 0, HEAD); n > 0; n = read(buffer, 0, HEAD)) {
        ByteBuffer bytes = ByteBuffer.wrap(buffer, 0, n);
        while (bytes.hasRemaining()) {
          file.write(bytes);
        }
      }
      return file;
    } catch (IOException | UnreadableCaptureException | RuntimeException e) {
      file.close();
      throw e;
    }
  }

  private int fill(byte[] into, int offset, int length)
      throws IOException, UnreadableCaptureException {
    if (progress.isCancelled()) {
      throw new CancellationException(name + ": reading was stopped");
    }
    int done = 0;
    try {
      while (done < length) {
        int n =
            unpacked == null
                ? channel.read(ByteBuffer.wrap(into, offset + done, length - done))
                : unpacked.read(into, offset + done, length - done);
        if (n < 0) {
          break;
        }
        done += n;
      }
    } catch (ZipException | EOFException e) {
      throw broken(name, e);
    }
    return done;
  }

  @Override
  public void close() throws IOException {
    if (unpacked != null) {
      unpacked.close();
    }
    channel.close();
  }
}
