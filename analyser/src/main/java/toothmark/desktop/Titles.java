package toothmark.desktop;

import java.nio.file.Path;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;

/**
 * What the windows are called: by the names of their captures, with as much of the folders as tells
 * them apart; on the window's thread.
 */
final class Titles {

  private final Map<DeskModel, Runnable> windows = new LinkedHashMap<>();

  /** Takes a window in, which is told when it may be called otherwise. */
  void add(DeskModel model, Runnable renamed) {
    windows.put(model, renamed);
    model.bench.session.watch(s -> tell());
  }

  void remove(DeskModel model) {
    windows.remove(model);
    tell();
  }

  private void tell() {
    List.copyOf(windows.values()).forEach(Runnable::run);
  }

  /** What a window is called; empty while nothing is open in it. */
  Optional<String> of(DeskModel model) {
    List<Path> others =
        windows.keySet().stream().filter(m -> m != model).flatMap(Titles::file).toList();
    return file(model).findFirst().map(f -> apart(f, others));
  }

  private static Stream<Path> file(DeskModel model) {
    return model.bench.session.get().stream().map(s -> s.request().capture());
  }

  /** A file's name, with as much of its folder as no other file shares. */
  static String apart(Path file, Collection<Path> others) {
    Path own = file.toAbsolutePath().normalize();
    List<Path> unlike =
        others.stream()
            .map(o -> o.toAbsolutePath().normalize())
            .filter(o -> !o.equals(own))
            .toList();
    int from = own.getNameCount() - 1;
    while (from > 0 && isShared(own.subpath(from, own.getNameCount()), unlike)) {
      from--;
    }
    return own.subpath(from, own.getNameCount()).toString();
  }

  private static boolean isShared(Path end, List<Path> others) {
    return others.stream().anyMatch(o -> o.endsWith(end));
  }
}
