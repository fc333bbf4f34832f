package toothmark.desktop;

import static org.assertj.core.api.Assertions.assertThat;
import static toothmark.desktop.DrivenWindow.all;
import static toothmark.desktop.DrivenWindow.named;
import static toothmark.desktop.DrivenWindow.words;

import java.io.BufferedReader;
import java.io.InputStreamReader;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import java.util.zip.GZIPInputStream;
import javax.swing.AbstractButton;
import org.junit.jupiter.api.Test;
import toothmark.desktop.JobDraft.Field;

/** A role is asked about that the capture speaks against; skipped where there is no display. */
class RoleDoubtsTest extends OpenedSheet {

  private static final String NO_MARK =
      "Does CH5 mark TDC? It does not rise once a turn, as a mark does.";
  private static final String NO_COIL = "Is CH5 the channel of coil 1? No spark was found on it.";

  /** With one more channel, on which nothing happens. */
  private void openWithAnIdleChannel() throws Exception {
    Path into = Files.createDirectory(folder.resolve("idle"));
    Path sample = SAMPLES.resolve("clean-idle");
    Files.copy(sample.resolve("job.toml"), into.resolve("job.toml"));
    try (BufferedReader in =
        new BufferedReader(
            new InputStreamReader(
                new GZIPInputStream(Files.newInputStream(sample.resolve("capture.csv.gz")))))) {
      Files.write(
          into.resolve("capture.csv"),
          Stream.concat(
                  Stream.of(in.readLine() + ",CH5 (V)"), in.lines().map(line -> line + ",0.01"))
              .collect(Collectors.toList()));
    }
    window.open(into.resolve("capture.csv"));
  }

  private String under(String name) {
    return window.ask(w -> words(named(all(w), name)));
  }

  @Test
  void aMarkThatDoesNotRiseIsAskedAboutBesideItsFieldAndTakenBack() throws Exception {
    openWithAnIdleChannel();
    assertThat(notice()).isEmpty();
    window.on(w -> w.model.job.edit(w.model.job.draft.get().withRole(Field.TDC, "CH5")));
    window.settle();
    assertThat(notice()).isEqualTo(NO_MARK);
    assertThat(under("complaint.channels.tdc")).isEqualTo(NO_MARK);
    window.on(w -> ((AbstractButton) named(all(w), "notice.on")).doClick());
    window.settle();
    assertThat(window.<String>ask(w -> w.model.job.draft.get().get(Field.TDC))).isEqualTo("CH4");
    assertThat(under("complaint.channels.tdc")).isEmpty();
    assertThat(notice()).isEmpty();
  }

  @Test
  void aCoilWithoutASparkIsAskedAbout() throws Exception {
    openWithAnIdleChannel();
    window.on(w -> w.model.job.edit(w.model.job.draft.get().withCoil(0, "CH5")));
    window.settle();
    assertThat(notice()).isEqualTo(NO_COIL);
    assertThat(
            window.<RoleDoubts>ask(w -> RoleDoubts.of(w.model.examination().orElseThrow())).coils())
        .isEqualTo(List.of(NO_COIL));
  }
}
