package toothmark.capture.source;

import java.io.FilterInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.util.zip.ZipEntry;
import java.util.zip.ZipException;
import java.util.zip.ZipInputStream;

/** The only file in a ZIP archive. */
final class ZipMember extends FilterInputStream {

  private final ZipInputStream archive;
  private final String name;

  ZipMember(InputStream stored) throws IOException {
    super(new ZipInputStream(stored));
    archive = (ZipInputStream) in;
    name = next();
    if (name.isEmpty()) {
      throw new ZipException("there is no file in the archive");
    }
    if (name.endsWith("Content_Types].xml") || name.equals("mimetype")) {
      throw new ZipException("this is a spreadsheet; save it as delimited text");
    }
  }

  /** Moves to the next file that is not a folder or a note of the packing system. */
  private String next() throws IOException {
    for (ZipEntry e = archive.getNextEntry(); e != null; e = archive.getNextEntry()) {
      String bare = e.getName().substring(e.getName().lastIndexOf('/') + 1);
      if (!e.isDirectory() && !bare.startsWith(".") && !e.getName().startsWith("__MACOSX/")) {
        return e.getName();
      }
    }
    return "";
  }

  @Override
  public int read(byte[] into, int offset, int length) throws IOException {
    int n = archive.read(into, offset, length);
    if (n < 0) {
      String second = next();
      if (!second.isEmpty()) {
        throw new ZipException(
            "the archive holds several files, such as " + name + " and " + second + "; unpack it");
      }
    }
    return n;
  }

  @Override
  public int read() throws IOException {
    byte[] one = new byte[1];
    return read(one, 0, 1) < 0 ? -1 : one[0] & 0xff;
  }
}
