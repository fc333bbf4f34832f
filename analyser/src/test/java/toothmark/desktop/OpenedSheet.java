package toothmark.desktop;

import static toothmark.desktop.DrivenWindow.all;
import static toothmark.desktop.DrivenWindow.named;
import static toothmark.desktop.DrivenWindow.type;
import static toothmark.desktop.DrivenWindow.words;

import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.io.TempDir;
import toothmark.desktop.JobDraft.Field;

/** The real window with a capture and its job sheet open; skipped where there is no display. */
abstract class OpenedSheet {

  static final Path SAMPLES = Path.of("../signal-samples");
  static final String SHEET =
      "# of the customer\n[wheel]\npattern = \"36-1\" # told\n\n[job]\ntitle = \"Van\"\n";

  @TempDir Path folder;
  DrivenWindow window;
  Path sheet;

  @BeforeEach
  void open() throws Exception {
    window = DrivenWindow.onALaptop();
    Path capture = folder.resolve("capture.csv.gz");
    Files.copy(SAMPLES.resolve("clean-idle/capture.csv.gz"), capture);
    sheet = Files.writeString(folder.resolve("job.toml"), SHEET);
    window.open(capture);
  }

  @AfterEach
  void close() {
    if (window != null) {
      window.close();
    }
  }

  final void note(String words) {
    window.on(w -> type(w, Field.NOTES, words));
    window.settle();
  }

  final Request shown() {
    return window.ask(w -> w.model.bench.session.get().orElseThrow().request());
  }

  final String notice() {
    return window.ask(w -> w.notice.isVisible() ? words(named(all(w), "notice.text")) : "");
  }
}
