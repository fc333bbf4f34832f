package toothmark.capture.source;

import io.airlift.compress.MalformedInputException;
import io.airlift.compress.zstd.ZstdInputStream;
import java.io.FilterInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.util.zip.GZIPInputStream;
import java.util.zip.ZipException;
import org.tukaani.xz.XZInputStream;

/**
 * How a file is packed, told by its first bytes: gzip (RFC 1952), Zstandard (RFC 8878), xz (The .xz
 * File Format 1.2.1) and ZIP with one file in it (ISO/IEC 21320-1).
 */
public enum Compression {
  /** As it lies. */
  NONE(""),
  /** RFC 1952. */
  GZIP("\u001f\u008b"),
  /** RFC 8878. */
  ZSTD("(\u00b5/\u00fd"),
  /** The .xz file format. */
  XZ("\u00fd7zXZ\0"),
  /** One file in a ZIP archive. */
  ZIP("PK\u0003\u0004");

  /** As many first bytes as tell the kind. */
  static final int MARK_BYTES = 512;

  /** Where the name of the first file of a ZIP archive and its length stand (APPNOTE 4.3.7). */
  private static final int ZIP_NAME = 30;

  private static final int ZIP_NAME_LENGTH = 26;

  /** An xz stream that asks for more to be unpacked is taken for a trap. */
  private static final int XZ_MEMORY_KIB = 100 << 10;

  private static final int BUFFER = 1 << 16;

  private final String mark;

  Compression(String mark) {
    this.mark = mark;
  }

  static Compression of(byte[] start) {
    if (ZstdFrames.beginsSkippable(start)) {
      return ZSTD;
    }
    for (Compression kind : values()) {
      if (kind != NONE && kind.begins(start)) {
        return isNumpyArchive(start) ? NONE : kind;
      }
    }
    return NONE;
  }

  /**
   * Whether a file begins as an archive of NumPy arrays; its members are read one after another.
   *
   * @param start first bytes of the file
   * @return true where the first file of a ZIP archive is an array
   */
  public static boolean isNumpyArchive(byte[] start) {
    if (!ZIP.begins(start) || start.length < ZIP_NAME) {
      return false;
    }
    int end = ZIP_NAME + (start[ZIP_NAME_LENGTH] & 0xff);
    String head = new String(start, StandardCharsets.ISO_8859_1);
    return end <= start.length && head.startsWith(".npy", end - 4);
  }

  private boolean begins(byte[] start) {
    for (int i = 0; i < mark.length(); i++) {
      if (i >= start.length || (start[i] & 0xff) != mark.charAt(i)) {
        return false;
      }
    }
    return true;
  }

  /** The unpacked bytes; broken data are a {@link ZipException} or an end of file. */
  InputStream unpack(InputStream stored) throws IOException {
    return switch (this) {
      case NONE -> stored;
      case GZIP -> new GZIPInputStream(stored, BUFFER);
      case ZSTD -> new Checked(new ZstdInputStream(new ZstdFrames(stored)));
      case XZ -> new Checked(new XZInputStream(stored, XZ_MEMORY_KIB));
      case ZIP -> new ZipMember(stored);
    };
  }

  /** Brings what the libraries say of broken data into one form. */
  private static final class Checked extends FilterInputStream {

    /** The Zstandard library has no type of its own for this. */
    private static final String CUT_SHORT = "Not enough input bytes";

    Checked(InputStream in) {
      super(in);
    }

    @Override
    public int read() throws IOException {
      byte[] one = new byte[1];
      return read(one, 0, 1) < 0 ? -1 : one[0] & 0xff;
    }

    @Override
    public int read(byte[] into, int offset, int length) throws IOException {
      try {
        return in.read(into, offset, length);
      } catch (org.tukaani.xz.XZIOException | MalformedInputException e) {
        throw broken(e);
      } catch (IllegalStateException | IndexOutOfBoundsException e) {
        throw broken(e); // the Zstandard library, of frames that it does not know
      } catch (IOException e) {
        boolean cutShort = CUT_SHORT.equals(e.getMessage());
        throw cutShort ? broken(e) : e;
      }
    }

    private static ZipException broken(Exception cause) {
      ZipException broken = new ZipException(cause.getMessage());
      broken.initCause(cause);
      return broken;
    }
  }
}
