package toothmark.report;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.file.AccessDeniedException;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.FileSystemException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.util.stream.Stream;
import org.junit.jupiter.api.Assumptions;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class WholeFileTest {

  private static final byte[] NEW = {'n', 'e', 'w'};

  @TempDir private Path folder;
  private Path file;

  @BeforeEach
  void earlier() throws Exception {
    Assumptions.assumeTrue(folder.getFileSystem().supportedFileAttributeViews().contains("posix"));
    file = Files.writeString(folder.resolve("a.txt"), "old");
  }

  private String permissions(Path of) throws Exception {
    return PosixFilePermissions.toString(Files.getPosixFilePermissions(of));
  }

  private long names() throws Exception {
    try (Stream<Path> all = Files.list(folder)) {
      return all.count();
    }
  }

  @Test
  void aNewFileIsAsOpenToOthersAsAnyOtherAndAnEarlierOneStaysSo() throws Exception {
    Path fresh = WholeFile.write(folder.resolve("new/b.txt"), NEW);
    assertThat(permissions(fresh)).isEqualTo(permissions(file));
    Files.setPosixFilePermissions(file, PosixFilePermissions.fromString("rw-rw---x"));
    WholeFile.write(file, NEW);
    assertThat(file).hasContent("new");
    assertThat(permissions(file)).isEqualTo("rw-rw---x");
  }

  @Test
  void aLinkStaysAndWhatItLeadsToIsReplacedOrMade() throws Exception {
    Path link = Files.createSymbolicLink(folder.resolve("link"), Path.of("a.txt"));
    Path onward = Files.createSymbolicLink(folder.resolve("onward"), link);
    WholeFile.write(onward, NEW);
    assertThat(file).hasContent("new");
    Path home = Files.createSymbolicLink(folder.resolve("home"), folder);
    WholeFile.write(home.resolve("d.txt"), NEW);
    assertThat(folder.resolve("d.txt")).hasContent("new");
    Path loose = Files.createSymbolicLink(folder.resolve("loose"), Path.of("there/c.txt"));
    WholeFile.write(loose, NEW);
    assertThat(folder.resolve("there/c.txt")).hasContent("new");
    assertThat(Stream.of(link, onward, loose)).allMatch(Files::isSymbolicLink);
    Path round = Files.createSymbolicLink(folder.resolve("round"), Path.of("round"));
    assertThatThrownBy(() -> WholeFile.write(round, NEW))
        .isInstanceOf(FileSystemException.class)
        .hasMessage(round + ": its symbolic links lead nowhere");
  }

  @Test
  void whatMustNotBeWrittenStays() throws Exception {
    Path taken = Files.createDirectory(folder.resolve("taken"));
    assertThatThrownBy(() -> WholeFile.write(taken, NEW))
        .isInstanceOf(FileAlreadyExistsException.class)
        .hasMessage(taken + ": a folder bears this name");
    assertThat(taken).isDirectory();
    Files.setPosixFilePermissions(file, PosixFilePermissions.fromString("r--r--r--"));
    Assumptions.assumeFalse(Files.isWritable(file), "a user who may write everything");
    assertThatThrownBy(() -> WholeFile.write(file, NEW)).isInstanceOf(AccessDeniedException.class);
    assertThat(file).hasContent("old");
    assertThat(names()).isEqualTo(2);
  }
}
