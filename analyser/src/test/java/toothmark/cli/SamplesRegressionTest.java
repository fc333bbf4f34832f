package toothmark.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.fail;
import static org.junit.jupiter.api.DynamicTest.dynamicTest;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonParser;
import com.fasterxml.jackson.core.JsonToken;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.attribute.FileTime;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.TestFactory;
import org.junit.jupiter.api.io.TempDir;

/**
 * Every bundled sample still gives the examination that was last looked at and approved.
 *
 * <p>A difference writes the new examination beside the approved one, as {@code expected.new.json}.
 * Where the change is meant, look at both and move the new one over the old.
 */
class SamplesRegressionTest {

  private static final Path SAMPLES = Path.of("..", "signal-samples");

  private static final String APPROVED = "expected.json";
  private static final String NEW = "expected.new.json";

  /** Runtimes differ in the last bits of sines and logarithms; figures rest on sums of many. */
  private static final double RELATIVE = 1e-6;

  private static final double ABSOLUTE = 1e-9;

  @TempDir private Path temp;

  @TestFactory
  Stream<DynamicTest> everySampleIsExaminedAsApproved() throws IOException {
    List<Path> folders;
    try (Stream<Path> all = Files.list(SAMPLES)) {
      folders = all.filter(f -> Files.exists(f.resolve("truth.json"))).sorted().toList();
    }
    assertThat(folders).hasSizeGreaterThanOrEqualTo(6);
    return folders.stream().map(f -> dynamicTest(f.getFileName().toString(), () -> check(f)));
  }

  private void check(Path sample) throws IOException {
    Path now = examine(sample).resolve("examination.json");
    Path approved = sample.resolve(APPROVED);
    String difference =
        Files.exists(approved) ? firstDifference(approved, now) : "nothing was approved yet";
    if (difference.isEmpty()) {
      Files.deleteIfExists(sample.resolve(NEW));
    } else {
      Path beside = sample.resolve(NEW);
      Files.copy(now, beside, StandardCopyOption.REPLACE_EXISTING);
      fail(difference + System.lineSeparator() + "If it is meant: mv " + beside + " " + approved);
    }
  }

  private Path examine(Path sample) throws IOException {
    List<Object> arguments = new ArrayList<>(List.of("examine"));
    Path out = temp.resolve(sample.getFileName());
    arguments.add(copy(sample, Files.createDirectory(out)));
    arguments.addAll(List.of("--job", sample.resolve("job.toml")));
    Path log = sample.resolve("controller.csv");
    if (Files.exists(log)) {
      arguments.addAll(List.of("--log", log));
    }
    arguments.addAll(List.of("--out", out));
    CommandRun run = CommandRun.of(arguments.toArray());
    assertThat(run.code()).as(run.err()).isZero();
    return out;
  }

  /**
   * When a file was last written stands in the results, and differs from one checkout to another.
   */
  private static Path copy(Path sample, Path to) throws IOException {
    try (Stream<Path> files = Files.list(sample)) {
      Path capture =
          files
              .filter(f -> f.getFileName().toString().startsWith("capture"))
              .findFirst()
              .orElseThrow();
      Path copy = Files.copy(capture, to.resolve(capture.getFileName()));
      return Files.setLastModifiedTime(copy, FileTime.from(Instant.parse("2026-01-01T12:00:00Z")));
    }
  }

  /** Where two documents differ first, empty where nowhere. */
  private static String firstDifference(Path approved, Path now) throws IOException {
    JsonFactory json = new JsonFactory();
    try (JsonParser a = json.createParser(approved.toFile());
        JsonParser b = json.createParser(now.toFile())) {
      JsonToken token;
      do {
        token = a.nextToken();
        if (token != b.nextToken() || token != null && !alike(a, b, token)) {
          return "approved: %s = %s%nnow:      %s = %s"
              .formatted(
                  a.getParsingContext().pathAsPointer(),
                  a.getText(),
                  b.getParsingContext().pathAsPointer(),
                  b.getText());
        }
      } while (token != null);
      return "";
    }
  }

  private static boolean alike(JsonParser a, JsonParser b, JsonToken token) throws IOException {
    if (!token.isNumeric()) {
      return a.getText().equals(b.getText());
    }
    double x = a.getDoubleValue();
    double y = b.getDoubleValue();
    return Math.abs(x - y) <= ABSOLUTE + RELATIVE * Math.max(Math.abs(x), Math.abs(y));
  }
}
