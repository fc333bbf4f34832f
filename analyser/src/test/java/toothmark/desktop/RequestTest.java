package toothmark.desktop;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class RequestTest {

  @TempDir private Path folder;

  @Test
  void sheetAndLogBesideACaptureGoWithIt() throws Exception {
    Path capture = Files.createFile(folder.resolve("sweep.csv"));
    Path job = Files.createFile(folder.resolve("job.toml"));
    assertThat(Request.of(capture))
        .isEqualTo(new Request(capture, Optional.of(job), Optional.empty()));
    Path log = Files.createFile(folder.resolve("controller.csv"));
    assertThat(Request.of(capture).log()).contains(log);
  }

  @Test
  void filesDroppedTogetherAreToldApart() throws Exception {
    Path capture = Files.createFile(folder.resolve("sweep.csv"));
    Path mine = Path.of("elsewhere", "other.toml");
    Path second = Files.createFile(folder.resolve("idle.csv"));
    assertThat(Request.of(List.of(mine, capture, second), Optional.empty()))
        .containsExactly(
            new Request(capture, Optional.of(mine), Optional.empty()),
            new Request(second, Optional.of(mine), Optional.empty()));
  }

  @Test
  void sheetAndLogAloneGoWithWhatIsOpen() {
    Path job = Path.of("elsewhere", "other.toml");
    Path log = Path.of("elsewhere", "Controller.csv");
    assertThat(Request.of(List.of(job), Optional.empty())).isEmpty();
    Request open =
        new Request(Path.of("a.csv"), Optional.of(Path.of("job.toml")), Optional.empty());
    assertThat(Request.of(List.of(log), Optional.of(open)))
        .containsExactly(new Request(open.capture(), open.job(), Optional.of(log)));
    assertThat(Request.of(List.of(log, job), Optional.of(open)))
        .containsExactly(new Request(open.capture(), Optional.of(job), Optional.of(log)));
  }
}
