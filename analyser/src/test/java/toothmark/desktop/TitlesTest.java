package toothmark.desktop;

import static org.assertj.core.api.Assertions.assertThat;
import static toothmark.desktop.DrivenWindow.all;
import static toothmark.desktop.DrivenWindow.named;

import java.awt.Dimension;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import javax.swing.JLabel;
import org.junit.jupiter.api.Test;

/** What windows are called; that of the real ones is skipped where there is no display. */
class TitlesTest extends OpenedSheet {

  private static final Path FILE = Path.of("/jobs/van/before/capture.csv");

  @Test
  void aNameHasAsMuchOfItsFolderAsTellsItApart() {
    assertThat(Titles.apart(FILE, List.of())).isEqualTo("capture.csv");
    assertThat(Titles.apart(FILE, List.of(FILE, Path.of("/jobs/van/other.csv"))))
        .isEqualTo("capture.csv");
    assertThat(Titles.apart(FILE, List.of(Path.of("/jobs/van/after/capture.csv"))))
        .isEqualTo(Path.of("before/capture.csv").toString());
    assertThat(
            Titles.apart(
                FILE,
                List.of(Path.of("/capture.csv"), Path.of("/jobs/boat/../car/before/capture.csv"))))
        .isEqualTo(Path.of("van/before/capture.csv").toString());
  }

  @Test
  void windowsWhoseCapturesAreCalledAlikeAreToldApartUntilOneIsClosed() throws Exception {
    String alone = "capture.csv.gz – Toothmark";
    assertThat(window.<String>ask(w -> w.frame.getTitle())).isEqualTo(alone);
    Path after = Files.createDirectory(folder.resolve("after"));
    try (DrivenWindow second = DrivenWindow.show(new Dimension(1366, 768))) {
      second.open(Files.copy(folder.resolve("capture.csv.gz"), after.resolve("capture.csv.gz")));
      assertThat(second.<String>ask(w -> w.frame.getTitle())).isEqualTo("after/" + alone);
      assertThat(window.<String>ask(w -> w.frame.getTitle()))
          .isEqualTo(folder.getFileName() + "/" + alone);
      assertThat(window.<String>ask(w -> ((JLabel) named(all(w), "captured")).getText()))
          .contains(folder.getFileName() + "/capture.csv.gz");
    }
    window.await(() -> window.frame().getTitle().equals(alone));
  }
}
