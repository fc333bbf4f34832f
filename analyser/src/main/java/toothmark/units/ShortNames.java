package toothmark.units;

import java.nio.file.Path;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/** What to call files that are shown together: as much of each path as tells it from the others. */
public final class ShortNames {

  private ShortNames() {}

  /**
   * Names files shortly.
   *
   * @param files as the user names them; one that is there twice has one name
   * @return a name for each, in their order: that of the file, with as many of the folders above it
   *     as no other file of that name shares
   */
  public static List<String> of(List<Path> files) {
    List<Path> whole = files.stream().map(f -> f.toAbsolutePath().normalize()).toList();
    Map<Path, Integer> parts = new HashMap<>();
    whole.forEach(f -> parts.put(f, 1));
    while (deepen(parts)) {
      // until all differ
    }
    return whole.stream().map(f -> end(f, parts.get(f))).toList();
  }

  /** Gives each name that several files share one more folder; says whether any grew. */
  private static boolean deepen(Map<Path, Integer> parts) {
    Map<String, Integer> taken = new HashMap<>();
    parts.forEach((file, n) -> taken.merge(end(file, n), 1, Integer::sum));
    List<Path> shared =
        parts.keySet().stream()
            .filter(f -> taken.get(end(f, parts.get(f))) > 1)
            .filter(f -> parts.get(f) < f.getNameCount())
            .toList();
    shared.forEach(file -> parts.merge(file, 1, Integer::sum));
    return !shared.isEmpty();
  }

  private static String end(Path file, int parts) {
    int all = file.getNameCount();
    return all == 0 ? file.toString() : file.subpath(all - Math.min(parts, all), all).toString();
  }
}
