package toothmark.simulator.command;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import java.util.zip.GZIPInputStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The samples that are committed are those that the generator writes. */
class SamplesRegressionTest {
  private static final Path COMMITTED = Path.of("..", "..", "signal-samples");
  private static final long GREATEST_BYTES = 20_000_000;

  private static String run(String... args) throws IOException {
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    Main.run(List.of(args), new PrintStream(out, true, StandardCharsets.UTF_8));
    return out.toString(StandardCharsets.UTF_8);
  }

  /**
   * The content; compressed files are compared unpacked, since deflate differs between runtimes.
   */
  private static byte[] content(Path file) throws IOException {
    boolean packed = file.toString().endsWith(".gz");
    try (InputStream plain = Files.newInputStream(file);
        InputStream in = packed ? new GZIPInputStream(plain) : plain) {
      return in.readAllBytes();
    }
  }

  private static List<Path> files(Path folder) throws IOException {
    try (Stream<Path> walk = Files.walk(folder)) {
      return walk.filter(Files::isRegularFile).sorted().toList();
    }
  }

  @Test
  void committedSamplesAreWrittenAnewByteForByte(@TempDir Path fresh) throws IOException {
    run("--samples", fresh.toString());

    long bytes = 0;
    for (Path file : files(fresh)) {
      Path committed = COMMITTED.resolve(fresh.relativize(file).toString());
      assertThat(content(file)).as(committed.toString()).isEqualTo(content(committed));
      bytes += Files.size(file);
    }
    assertThat(bytes).isLessThan(GREATEST_BYTES);
  }

  @Test
  void setGivesTheSameCasesForTheSameSeed(@TempDir Path one, @TempDir Path two) throws IOException {
    String names = run("--set", "3", "--seed", "9", "--out", one.toString());
    run("--set", "3", "--seed", "9", "--out", two.toString());

    assertThat(names.lines().toList()).hasSize(3);
    for (Path file : files(one)) {
      Path other = two.resolve(one.relativize(file).toString());
      assertThat(content(file)).isEqualTo(content(other));
    }
  }

  @Test
  void unusableArgumentsAreNamed(@TempDir Path folder) {
    assertThatThrownBy(() -> run("--scenario", "rust", "--seed", "1", "--out", folder.toString()))
        .hasMessage("no sample or fault 'rust'; --list names them");
    assertThatThrownBy(() -> run("--set", "three", "--seed", "1", "--out", folder.toString()))
        .hasMessage("--set takes a whole number, not 'three'");
    assertThatThrownBy(() -> run("--verbose")).hasMessage("no option '--verbose'");
  }

  @Test
  void helpShowsExamples() throws IOException {
    assertThat(run("--help")).contains("Examples:", "--scenario wheel-run-out --seed 7");
  }
}
