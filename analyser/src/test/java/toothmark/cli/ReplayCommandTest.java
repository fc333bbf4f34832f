package toothmark.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class ReplayCommandTest {

  private static final Path SAMPLES = Path.of("..", "signal-samples");

  @TempDir private Path folder;

  /** The starter gives this sensor peaks about 0.1 V high: too little for 0.16 V of hysteresis. */
  @Test
  void aWeakSignalIsHeardByTheReferenceAndNotByAWideHysteresis() throws IOException {
    Path picture = folder.resolve("levels.svg");

    CommandRun run =
        CommandRun.of(
            "replay", sample("weak-on-the-starter"), "--levels", "0,5", "--picture", picture);

    assertThat(run.code()).isZero();
    assertThat(run.out())
        .containsSubsequence(
            "armed at 33", "teeth lost", "threshold 0.00 V ± 5.00 V", "teeth lost", "margin");
    assertThat(Files.readString(picture)).startsWith("<svg").contains("With which fixed levels");
  }

  @Test
  void aSwitchHasNoVoltageToReplay() throws IOException {
    CommandRun run = CommandRun.of("replay", sample("logic-probe"));
    assertThat(run.code()).isEqualTo(Failures.NOT_DECODABLE);
    assertThat(run.err()).contains("a replay needs the voltage of a variable-reluctance sensor");
  }

  @Test
  void levelsAreAPair() throws IOException {
    CommandRun run = CommandRun.of("replay", sample("clean-idle"), "--levels", "0.2");
    assertThat(run.code()).isEqualTo(2);
    assertThat(run.err()).contains("--levels takes a threshold and a hysteresis of 0 or more");
  }

  private static Path sample(String name) throws IOException {
    try (var files = Files.list(SAMPLES.resolve(name))) {
      return files
          .filter(f -> f.getFileName().toString().startsWith("capture."))
          .findFirst()
          .orElseThrow();
    }
  }
}
