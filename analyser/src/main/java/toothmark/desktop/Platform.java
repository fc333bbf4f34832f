package toothmark.desktop;

import java.awt.Desktop;
import java.io.IOException;
import java.nio.file.Path;
import java.util.Optional;
import java.util.function.Consumer;

/** What other programs of the machine show for the window, where they can. */
final class Platform {

  private Platform() {}

  /** Shows a page in the browser; without one nothing happens. */
  static void browse(Path page) {
    if (can(Desktop.Action.BROWSE)) {
      attempt(() -> Desktop.getDesktop().browse(page.toUri()));
    }
  }

  /** What shows a folder; empty where the platform has nothing that does. */
  static Optional<Consumer<Path>> opener() {
    return can(Desktop.Action.OPEN)
        ? Optional.of(folder -> attempt(() -> Desktop.getDesktop().open(folder.toFile())))
        : Optional.empty();
  }

  private static boolean can(Desktop.Action action) {
    return Desktop.isDesktopSupported() && Desktop.getDesktop().isSupported(action);
  }

  private static void attempt(Shown shown) {
    try {
      shown.show();
    } catch (IOException e) {
      // nothing shows it: the notice says where the file is
    }
  }

  private interface Shown {
    void show() throws IOException;
  }
}
