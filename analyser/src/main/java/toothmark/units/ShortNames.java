package toothmark.units;

import java.math.BigInteger;
import java.nio.file.Path;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.regex.Pattern;

/** What to call files that are shown together: as much of each path as tells it from the others. */
public final class ShortNames {

  private static final Pattern NUMBER_EDGE = Pattern.compile("(?<=\\d)(?=\\D)|(?<=\\D)(?=\\d)");

  private ShortNames() {}

  /**
   * The order in which people number names: {@code run-2} before {@code run-10}.
   *
   * @param a one name
   * @param b another
   * @return as {@link java.util.Comparator#compare} does
   */
  public static int compare(String a, String b) {
    String[] one = NUMBER_EDGE.split(a);
    String[] other = NUMBER_EDGE.split(b);
    for (int i = 0; i < Math.min(one.length, other.length); i++) {
      int order = comparePart(one[i], other[i]);
      if (order != 0) {
        return order;
      }
    }
    return one.length == other.length ? a.compareTo(b) : one.length - other.length;
  }

  private static int comparePart(String a, String b) {
    boolean numbers = Character.isDigit(a.charAt(0)) && Character.isDigit(b.charAt(0));
    return numbers ? new BigInteger(a).compareTo(new BigInteger(b)) : a.compareToIgnoreCase(b);
  }

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
