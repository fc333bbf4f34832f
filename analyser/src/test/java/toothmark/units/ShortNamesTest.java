package toothmark.units;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

class ShortNamesTest {

  private static List<String> of(String... files) {
    return ShortNames.of(Stream.of(files).map(Path::of).toList());
  }

  @Test
  void aFileAloneGoesByItsName() {
    assertThat(of("/jobs/monday/capture.csv")).containsExactly("capture.csv");
    assertThat(of("/jobs/monday/capture.csv", "/jobs/friday/idle.csv"))
        .containsExactly("capture.csv", "idle.csv");
  }

  @Test
  void filesOfOneNameGoByAsManyFoldersAsTellThemApart() {
    assertThat(of("/van/cold/capture.csv", "/van/hot/capture.csv", "/van/hot/sweep.csv"))
        .containsExactly("cold/capture.csv", "hot/capture.csv", "sweep.csv");
    assertThat(of("/van/cold/capture.csv", "/car/cold/capture.csv", "/car/hot/capture.csv"))
        .containsExactly("van/cold/capture.csv", "car/cold/capture.csv", "hot/capture.csv");
    assertThat(of("/capture.csv", "/van/capture.csv"))
        .containsExactly("capture.csv", "van/capture.csv");
  }

  @Test
  void numbersInNamesCountAsSuch() {
    assertThat(Stream.of("run-10", "run", "run-9b", "Run-1", "run-9").sorted(ShortNames::compare))
        .containsExactly("run", "Run-1", "run-9", "run-9b", "run-10");
  }

  @Test
  void oneFileNamedInTwoWaysHasOneName() {
    assertThat(of("/van/capture.csv", "/van/hot/../capture.csv"))
        .containsExactly("capture.csv", "capture.csv");
  }
}
