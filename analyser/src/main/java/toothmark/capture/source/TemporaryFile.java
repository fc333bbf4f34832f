package toothmark.capture.source;

import java.io.IOException;
import java.nio.channels.FileChannel;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;

/** A file for what does not fit into memory. */
public final class TemporaryFile {

  private TemporaryFile() {}

  /**
   * Opens a new file for reading and writing; the system removes it when it is closed or the
   * program ends.
   *
   * @return a channel that the caller closes
   * @throws IOException if the folder for temporary files cannot be written
   */
  public static FileChannel open() throws IOException {
    Path path = Files.createTempFile("toothmark-", ".tmp");
    return FileChannel.open(
        path,
        StandardOpenOption.READ,
        StandardOpenOption.WRITE,
        StandardOpenOption.DELETE_ON_CLOSE);
  }
}
