package toothmark.capture.array;

import java.io.EOFException;
import java.io.IOException;
import java.io.InputStream;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Optional;
import java.util.zip.ZipEntry;
import java.util.zip.ZipException;
import java.util.zip.ZipInputStream;
import toothmark.capture.StatedColumn;
import toothmark.capture.UnreadableCaptureException;

/** Reads NumPy arrays from a stream, in one pass. */
final class NumpyReader {

  private static final int LONGEST_HEADER = 1 << 20;
  private static final int LONGEST_END = (1 << 16) + 22;
  private static final String ENDING = ".npy";

  private final ArrayInput file;
  private final InputStream in;
  private final Variables into;

  NumpyReader(ArrayInput file, Variables into) {
    this(file, file, into);
  }

  private NumpyReader(ArrayInput file, InputStream in, Variables into) {
    this.file = file;
    this.in = in;
    this.into = into;
  }

  /** Reads all arrays of an archive. */
  static void readArchive(ArrayInput file, Variables into)
      throws IOException, UnreadableCaptureException {
    if (!endsAsArchive(file.file())) {
      throw file.broken("the archive is cut short", null);
    }
    ZipInputStream archive = new ZipInputStream(file);
    try {
      for (ZipEntry e = archive.getNextEntry(); e != null; e = archive.getNextEntry()) {
        if (e.getName().endsWith(ENDING)) {
          String name = e.getName().substring(0, e.getName().length() - ENDING.length());
          new NumpyReader(file, archive, into).readOne(name);
        } else {
          into.leftOut(e.getName(), "it is no array");
        }
      }
    } catch (ZipException | EOFException e) {
      throw file.broken("the archive cannot be read (" + e.getMessage() + ")", e);
    }
  }

  /** Whether there is an end of central directory (APPNOTE 4.3.16): all members are there. */
  private static boolean endsAsArchive(FileChannel file) throws IOException {
    ByteBuffer tail = ByteBuffer.allocate((int) Math.min(file.size(), LONGEST_END));
    while (tail.hasRemaining() && file.read(tail, file.size() - tail.remaining()) >= 0) {
      // read on
    }
    return new String(tail.array(), StandardCharsets.ISO_8859_1).contains("PK\u0005\u0006");
  }

  /**
   * Reads one array.
   *
   * @param name empty where there is none
   */
  void readOne(String name) throws IOException, UnreadableCaptureException {
    byte[] magic = bytes(NumpyHeader.MAGIC_BYTES);
    long length = NumpyHeader.length(bytes(NumpyHeader.lengthBytes(magic[6])));
    if (!NumpyHeader.looksLike(magic, 0) || length > LONGEST_HEADER) {
      throw file.broken("there is no array where one should begin", null);
    }
    Optional<NumpyHeader> header = NumpyHeader.of(bytes((int) length));
    if (header.isEmpty()) {
      into.leftOut(name, "it holds no plain numbers");
    } else {
      read(name, header.get());
    }
  }

  private void read(String name, NumpyHeader header)
      throws IOException, UnreadableCaptureException {
    List<Long> axes = header.shape();
    Optional<Shape> shape = Shape.of(axes, header.columnsFirst());
    boolean real = header.fields().stream().anyMatch(f -> f.type().isPresent());
    boolean plain = header.fields().size() == 1 || axes.size() <= 1;
    if (shape.isEmpty() || !real || !plain) {
      into.leftOut(name, real ? "its shape is " + axes : "it holds no real numbers");
      return;
    }
    StatedColumn about = StatedColumn.named(name, "");
    if (into.mayHave(about, shape.get().columns())) {
      new BinaryBlock(file, in, into).read(about, shape.get(), header.fields());
    }
  }

  private byte[] bytes(int n) throws IOException, UnreadableCaptureException {
    byte[] bytes = in.readNBytes(n);
    if (bytes.length < n) {
      throw file.broken("the file ends within the header of an array", null);
    }
    return bytes;
  }
}
