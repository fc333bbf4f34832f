package toothmark.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class ManyCapturesTest {

  private static final Path SAMPLES = Path.of("..", "signal-samples");

  @TempDir private Path folder;

  private Path captures;

  @BeforeEach
  void twoCapturesAndOneThatIsNone() throws IOException {
    captures = Files.createDirectory(folder.resolve("captures"));
    copy("periods-only", "good.csv");
    Files.writeString(captures.resolve("torn.csv"), "");
    Files.writeString(captures.resolve("job.toml"), "");
  }

  @Test
  void aBadFileStopsNoOtherAndDecidesTheExitCode() throws IOException {
    CommandRun run = CommandRun.of("examine", captures, "--out", folder.resolve("out"));

    assertThat(run.code()).isEqualTo(Failures.INPUT);
    assertThat(run.err()).contains("torn.csv").doesNotContain("job.toml");
    assertThat(run.out()).contains("2 captures: none shows a fault, 1 could not be examined.");
    assertThat(folder.resolve("out/good/report.html")).exists();
    assertThat(folder.resolve("out/torn")).doesNotExist();
    assertThat(Files.readString(folder.resolve("out/index.html")))
        .contains("href=\"good/report.html\"", "torn.csv");
    assertThat(Files.readString(folder.resolve("out/index.json")))
        .contains("\"schema\": \"toothmark.index/1\"", "\"folder\": \"good\"", "\"exit_code\": 3");
  }

  @Test
  void capturesOfOneNameGetFoldersOfTheirOwn() throws IOException {
    Path other = Files.createDirectory(folder.resolve("other"));
    Files.copy(captures.resolve("good.csv"), other.resolve("good.csv"));

    CommandRun run =
        CommandRun.of(
            "examine",
            captures.resolve("good.csv"),
            other.resolve("good.csv"),
            "--out",
            folder.resolve("out"),
            "--quiet");

    assertThat(run.code()).isZero();
    assertThat(run.out()).isEmpty();
    assertThat(folder.resolve("out/captures-good/examination.json")).exists();
    assertThat(folder.resolve("out/other-good/examination.json")).exists();
    assertThat(Files.readString(folder.resolve("out/index.html")))
        .contains("<a href=\"captures-good/report.html\">captures/good.csv</a>")
        .contains("<a href=\"other-good/report.html\">other/good.csv</a>");
  }

  /** Only the ending differs, which names no folder. */
  @Test
  void foldersThatWouldShareANameAreNumbered() throws IOException {
    copy("periods-only", "good.txt");

    CommandRun.of("examine", captures, "--out", folder.resolve("out"), "--quiet");

    assertThat(folder.resolve("out/good/examination.json")).exists();
    assertThat(folder.resolve("out/good-2/examination.json")).exists();
  }

  @Test
  void aLogBelongsToOneCapture() {
    CommandRun run = CommandRun.of("examine", captures, "--log", captures.resolve("good.csv"));
    assertThat(run.code()).isEqualTo(Failures.ARGUMENTS);
    assertThat(run.err()).contains("--log belongs to one capture, and several are named");
  }

  @Test
  void aFolderIsExaminedWithItsJobSheetAndTableAndLogAreNoCaptures() throws IOException {
    Files.writeString(
        captures.resolve("job.toml"),
        "[job]\ntitle = \"Blue van\"\n[commanded]\ntable = \"advance.csv\"\nload = 20\n");
    Files.writeString(captures.resolve("advance.csv"), "load,500,7000\n20,10,10\n80,5,5\n");
    Files.writeString(captures.resolve("ride.csv"), "Time,RPM,Advance\n0,900,10\n0.1,910,10\n");
    Files.delete(captures.resolve("torn.csv"));
    copy("periods-only", "second.csv");

    CommandRun run = CommandRun.of("examine", captures, "--out", folder.resolve("out"));

    assertThat(run.err()).isEmpty();
    assertThat(run.code()).isZero();
    assertThat(run.out())
        .startsWith(
            captures.resolve("advance.csv")
                + ": not a capture but an ignition table\n"
                + captures.resolve("ride.csv")
                + ": not a capture but a controller log; examine its capture with --log\n")
        .contains("2 captures: none shows a fault.");
    assertThat(Files.readString(folder.resolve("out/good/report.html"))).contains("Blue van");
  }

  @Test
  void theOnlyLogInAFolderGoesWithTheOnlyCapture() throws IOException {
    Path day = Files.createDirectory(folder.resolve("day"));
    for (String file :
        List.of("capture.csv.gz", "controller.csv", "ignition-table.csv", "job.toml")) {
      Files.copy(SAMPLES.resolve("refitted-wheel").resolve(file), day.resolve(file));
    }

    CommandRun run = CommandRun.of("examine", day, "--out", folder.resolve("out"));

    assertThat(run.err()).isEmpty();
    assertThat(run.code()).isZero();
    assertThat(run.out())
        .startsWith(
            day.resolve("ignition-table.csv")
                + ": not a capture but an ignition table\n"
                + day.resolve("controller.csv")
                + ": the controller log of capture.csv.gz\n")
        .contains("1 capture: 1 shows a fault.");
    // only with its log is the delay known
    assertThat(Files.readString(folder.resolve("out/capture/examination.json")))
        .contains("\"timing-delay\"");
  }

  @Test
  void aFolderWithoutCapturesIsSaid() throws IOException {
    CommandRun run = CommandRun.of("examine", Files.createDirectory(folder.resolve("empty")));
    assertThat(run.code()).isEqualTo(Failures.ARGUMENTS);
    assertThat(run.err()).contains("no capture is in it");
  }

  private void copy(String sample, String name) throws IOException {
    try (var files = Files.list(SAMPLES.resolve(sample))) {
      Path capture =
          files.filter(f -> f.getFileName().toString().startsWith("capture.")).findFirst().get();
      Files.copy(capture, captures.resolve(name));
    }
  }
}
