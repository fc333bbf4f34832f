package toothmark.accuracy;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class AccuracyPageTest {

  @Test
  void oneSectionIsReplacedAndTheOthersStay(@TempDir Path folder) throws IOException {
    Path page = folder.resolve("accuracy.md");
    AccuracyPage.replace(page, "first", "## First\n\nold");
    AccuracyPage.replace(page, "second", "## Second");
    AccuracyPage.replace(page, "first", "## First\n\nnew");
    assertThat(Files.readString(page))
        .startsWith("# Accuracy\n")
        .endsWith(
            """
            <!-- first: begin -->

            ## First

            new

            <!-- first: end -->

            <!-- second: begin -->

            ## Second

            <!-- second: end -->
            """)
        .doesNotContain("old\n");
  }

  @Test
  void aCaseIsFoundAgainByItsName() {
    CaseName name = new CaseName("strays", "36-1_20+5", 7);
    assertThat(CaseName.parse(name.toString())).isEqualTo(name);
    assertThat(name.fileName()).isEqualTo("strays-36-1-20-5-7");
    assertThatThrownBy(() -> CaseName.parse("strays/7"))
        .hasMessage("'strays/7' names no case; write study/setting/number, as in the worst cases");
  }

  @Test
  void aShareNeverMetSaysOfHowMany() {
    assertThat(Table.share(0, 1000)).isEqualTo("< 1e-3");
    assertThat(Table.share(3, 10000)).isEqualTo("3.0e-4");
    assertThat(Table.share(1, 4)).isEqualTo("0.250");
    assertThat(Table.share(0, 0)).isEqualTo("–");
  }
}
