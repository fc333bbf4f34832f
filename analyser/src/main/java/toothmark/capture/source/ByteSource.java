package toothmark.capture.source;

import java.io.BufferedInputStream;
import java.io.Closeable;
import java.io.EOFException;
import java.io.IOException;
import java.io.InputStream;
import java.nio.ByteBuffer;
import java.nio.channels.Channels;
import java.nio.channels.FileChannel;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.Arrays;
import java.util.concurrent.CancellationException;
import java.util.zip.ZipException;
import toothmark.capture.ReadingOptions;
import toothmark.capture.ReadingProgress;
import toothmark.capture.UnreadableCaptureException;

/**
 * The bytes of a capture in order, unpacked where the file is compressed.
 *
 * <p>Not safe for use by several threads at once; one may follow another.
 */
public final class ByteSource implements Closeable {

  private static final Path STANDARD_INPUT = Path.of("-");
  private static final int HEAD = 256 << 10;
  private static final int BUFFER = 1 << 16;

  private final Path path;
  private final String name;
  private final FileChannel channel;
  private final InputStream stream;
  private final ReadingProgress progress;
  private long limit;
  private final long storedSize;
  private long given;
  private boolean cut;
  private byte[] head = new byte[0];
  private int headUsed;

  private ByteSource(Path file, ReadingOptions options) throws IOException {
    this.path = file;
    this.progress = options.progress();
    this.limit = options.firstBytes().orElse(Long.MAX_VALUE);
    boolean piped = file.equals(STANDARD_INPUT);
    this.name = nameOf(file);
    this.channel = piped ? null : FileChannel.open(file, StandardOpenOption.READ);
    this.storedSize = piped ? 0 : channel.size();
    try {
      this.stream = open(piped ? System.in : Channels.newInputStream(channel));
    } catch (IOException e) {
      close(channel);
      throw e;
    }
  }

  /** The unpacked bytes; null where the channel gives them as they lie. */
  private InputStream open(InputStream stored) throws IOException {
    BufferedInputStream buffered = new BufferedInputStream(stored, BUFFER);
    buffered.mark(BUFFER);
    Compression compression = Compression.of(buffered.readNBytes(Compression.MARK_BYTES));
    buffered.reset();
    if (compression == Compression.NONE && channel != null) {
      channel.position(0);
      return null;
    }
    return compression.unpack(buffered);
  }

  private static String nameOf(Path file) {
    return file.equals(STANDARD_INPUT) ? "standard input" : file.getFileName().toString();
  }

  /**
   * Opens a file.
   *
   * @param file what to read; {@code -} for standard input
   * @param options who hears how far reading has come, and where to stop
   * @return the source; close it after use
   * @throws UnreadableCaptureException if the compression is broken
   * @throws IOException if the system cannot open the file
   */
  public static ByteSource open(Path file, ReadingOptions options)
      throws IOException, UnreadableCaptureException {
    if (Files.isDirectory(file)) {
      throw new UnreadableCaptureException(
          nameOf(file) + ": this is a folder, not a capture; name a file in it");
    }
    ByteSource source;
    try {
      source = new ByteSource(file, options);
    } catch (ZipException | EOFException e) {
      throw broken(nameOf(file), e);
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
            + ": the compressed data cannot be read ("
            + cause.getMessage()
            + "); copy or unpack the file again",
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
    return hasSpots() ? at(position, length) : new byte[0];
  }

  /**
   * Size of the file as stored.
   *
   * @return bytes; 0 when not known, as of standard input
   */
  public long storedSize() {
    return storedSize;
  }

  /**
   * Whether bytes can be had from anywhere in the file.
   *
   * @return false when it is compressed or standard input, so that {@link #spot} cannot serve
   */
  public boolean hasSpots() {
    return stream == null;
  }

  /**
   * Whether reading ended where the options say, before the end of the file.
   *
   * @return true once bytes were held back
   */
  public boolean isCut() {
    return cut;
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
    progress.advanced(storedBytesRead(), storedSize);
    return fromHead + rest;
  }

  private long storedBytesRead() throws IOException {
    if (channel == null) {
      return given;
    }
    return channel.isOpen() ? channel.position() : storedSize;
  }

  /**
   * Opens the bytes for reading from anywhere; a compressed file or standard input is first copied
   * into a temporary file that vanishes when it is closed.
   *
   * @return a channel that the caller closes
   * @throws UnreadableCaptureException if the compression is broken
   * @throws IOException if the system cannot read the file or write the temporary one
   */
  public FileChannel openUnpacked() throws IOException, UnreadableCaptureException {
    if (hasSpots()) {
      return FileChannel.open(path, StandardOpenOption.READ);
    }
    limit = Long.MAX_VALUE; // the start alone of a file that is read from anywhere is of no use
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
    int wanted = (int) Math.min(length, limit - given);
    int done = 0;
    try {
      while (done < wanted) {
        int n =
            stream == null
                ? channel.read(ByteBuffer.wrap(into, offset + done, wanted - done))
                : stream.read(into, offset + done, wanted - done);
        if (n < 0) {
          break;
        }
        done += n;
      }
    } catch (ZipException | EOFException e) {
      throw broken(name, e);
    }
    given += done;
    if (done == wanted && wanted < length) {
      cut = true;
      given = limit;
      return lastLineEnd(into, offset, done);
    }
    return done;
  }

  /** How many bytes there are up to the last line end. */
  private static int lastLineEnd(byte[] bytes, int offset, int length) {
    int n = length;
    while (n > 0 && bytes[offset + n - 1] != '\n') {
      n--;
    }
    return n > 0 ? n : length;
  }

  private static void close(Closeable held) throws IOException {
    if (held != null) {
      held.close();
    }
  }

  @Override
  public void close() throws IOException {
    close(stream);
    close(channel);
  }
}
