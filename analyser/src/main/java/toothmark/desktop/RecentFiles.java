package toothmark.desktop;

import java.nio.file.Files;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.prefs.BackingStoreException;
import java.util.prefs.Preferences;

/** The captures opened last, newest first, and the look that was chosen; kept between starts. */
final class RecentFiles {

  private static final int MOST = 8;
  private static final String KEY = "recent.";
  private static final String DARK = "dark";
  private static final String ENLARGED = "enlarged";

  private final Preferences store;

  RecentFiles(Preferences store) {
    this.store = store;
  }

  /** Those that are still there. */
  List<Path> files() {
    List<Path> files = new ArrayList<>();
    for (int i = 0; i < MOST; i++) {
      String name = store.get(KEY + i, "");
      if (!name.isEmpty()) {
        try {
          Path p = Path.of(name);
          if (Files.isRegularFile(p)) {
            files.add(p);
          }
        } catch (InvalidPathException e) {
          store.remove(KEY + i);
        }
      }
    }
    return files;
  }

  /** Whether nothing was ever opened. */
  boolean isFirstStart() {
    try {
      return store.keys().length == 0;
    } catch (BackingStoreException e) {
      return true;
    }
  }

  void add(Path file) {
    Path absolute = file.toAbsolutePath().normalize();
    List<Path> next = new ArrayList<>(files());
    next.remove(absolute);
    next.add(0, absolute);
    for (int i = 0; i < MOST; i++) {
      String name = i < next.size() ? next.get(i).toString() : "";
      if (name.length() <= Preferences.MAX_VALUE_LENGTH) {
        store.put(KEY + i, name);
      }
    }
  }

  boolean isDark() {
    return store.getBoolean(DARK, false);
  }

  /** How much larger than the system's the type was made. */
  double enlarged() {
    return store.getDouble(ENLARGED, 1);
  }

  void setLook(boolean dark, double enlarged) {
    store.putBoolean(DARK, dark);
    store.putDouble(ENLARGED, enlarged);
  }
}
