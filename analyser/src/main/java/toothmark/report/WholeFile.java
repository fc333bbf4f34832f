package toothmark.report;

import java.io.IOException;
import java.nio.file.AccessDeniedException;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.FileSystemException;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.attribute.PosixFileAttributeView;

/** Writes a file whole or not at all. */
public final class WholeFile {

  private static final int MOST_LINKS = 40;

  private WholeFile() {}

  /**
   * Replaces an earlier file of that name, whose permissions stay; makes its folder when missing. A
   * symbolic link stays, and what it leads to is replaced.
   *
   * @param file where to
   * @param content all that it is to hold
   * @return the file
   * @throws AccessDeniedException if there is one that must not be written
   * @throws FileAlreadyExistsException if a folder bears its name
   * @throws IOException if writing failed; an earlier file is then as it was
   */
  public static Path write(Path file, byte[] content) throws IOException {
    Path target = followed(file.toAbsolutePath());
    if (Files.isDirectory(target)) {
      throw new FileAlreadyExistsException(file.toString(), null, "a folder bears this name");
    }
    if (Files.exists(target) && !Files.isWritable(target)) {
      throw new AccessDeniedException(file.toString());
    }
    Path folder = folder(target.getParent());
    // not by createTempFile, whose files are closed to other users
    Path draft =
        folder.resolve("." + target.getFileName() + "-" + Long.toHexString(System.nanoTime()));
    try {
      Files.write(draft, content);
      keepPermissions(target, draft);
      Files.move(draft, target, StandardCopyOption.REPLACE_EXISTING);
      return file;
    } finally {
      Files.deleteIfExists(draft);
    }
  }

  /**
   * A folder, made when missing, its parents too; Java before 20 refuses a link to one that is
   * there.
   */
  static Path folder(Path folder) throws IOException {
    return Files.isDirectory(folder) ? folder : Files.createDirectories(folder);
  }

  /** What links lead to in the end, there or not. */
  private static Path followed(Path file) throws IOException {
    Path at = file;
    for (int links = 0; Files.isSymbolicLink(at); links++) {
      if (links == MOST_LINKS) {
        throw new FileSystemException(file.toString(), null, "its symbolic links lead nowhere");
      }
      at = at.resolveSibling(Files.readSymbolicLink(at));
    }
    return at;
  }

  private static void keepPermissions(Path from, Path to) throws IOException {
    PosixFileAttributeView were =
        Files.getFileAttributeView(from, PosixFileAttributeView.class, LinkOption.NOFOLLOW_LINKS);
    if (were != null && Files.exists(from)) {
      Files.setPosixFilePermissions(to, were.readAttributes().permissions());
    }
  }
}
