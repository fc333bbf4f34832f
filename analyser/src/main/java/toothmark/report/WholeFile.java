package toothmark.report;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;

/** Writes a file whole or not at all. */
final class WholeFile {

  private WholeFile() {}

  /** Replaces an earlier file of that name; makes its folder when missing. */
  static Path write(Path file, byte[] content) throws IOException {
    Path folder = file.toAbsolutePath().getParent();
    Files.createDirectories(folder);
    Path draft =
        folder.resolve("." + file.getFileName() + "-" + Long.toHexString(System.nanoTime()));
    try {
      Files.write(draft, content);
      Files.move(draft, file, StandardCopyOption.REPLACE_EXISTING);
      return file;
    } finally {
      Files.deleteIfExists(draft);
    }
  }
}
