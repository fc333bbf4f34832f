package toothmark.examination;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import org.tomlj.TomlArray;
import org.tomlj.TomlPosition;
import org.tomlj.TomlTable;

/** One table of a job sheet, whose complaints name file, line, key and cure. */
final class SheetTable {

  private static final String AUTO = "auto";

  private final String file;
  private final String path;
  private final TomlTable table;

  SheetTable(String file, String path, TomlTable table) {
    this.file = file;
    this.path = path;
    this.table = table;
  }

  /** Refuses any key that is not among the known ones. */
  SheetTable allow(String... known) throws JobSheetException {
    for (String key : table.keySet()) {
      if (!List.of(known).contains(key)) {
        throw complaint(key, "unknown key; the nearest known key is " + name(nearest(key, known)));
      }
    }
    return this;
  }

  SheetTable table(String key) throws JobSheetException {
    Object value = table.get(List.of(key));
    if (value == null) {
      return new SheetTable(file, name(key), org.tomlj.Toml.parse(""));
    }
    if (!(value instanceof TomlTable t)) {
      throw complaint(key, "must be a table; write [" + name(key) + "] on a line of its own");
    }
    return new SheetTable(file, name(key), t);
  }

  List<SheetTable> tables(String key) throws JobSheetException {
    Object value = table.get(List.of(key));
    List<SheetTable> found = new ArrayList<>();
    if (value == null) {
      return found;
    }
    if (!(value instanceof TomlArray a)) {
      throw complaint(key, "must be a list of tables; write [[" + name(key) + "]] before each");
    }
    for (int i = 0; i < a.size(); i++) {
      if (!(a.get(i) instanceof TomlTable t)) {
        throw complaint(key, "must be a list of tables; write [[" + name(key) + "]] before each");
      }
      found.add(new SheetTable(file, name(key), t));
    }
    return found;
  }

  /** A text; empty when the key is missing or says auto. */
  Optional<String> text(String key) throws JobSheetException {
    Object value = table.get(List.of(key));
    if (value == null || AUTO.equals(value)) {
      return Optional.empty();
    }
    if (!(value instanceof String s)) {
      throw complaint(key, "must be a text in quotes, got " + value);
    }
    return Optional.of(s);
  }

  /** A finite number within bounds; empty when the key is missing or says auto. */
  OptionalDouble number(String key, double low, double high) throws JobSheetException {
    Object value = table.get(List.of(key));
    if (value == null || AUTO.equals(value)) {
      return OptionalDouble.empty();
    }
    if (!(value instanceof Number n) || !(n.doubleValue() >= low && n.doubleValue() <= high)) {
      throw complaint(
          key, "must be a number from " + plain(low) + " to " + plain(high) + ", got " + value);
    }
    return OptionalDouble.of(n.doubleValue());
  }

  List<Double> numbers(String key, double low, double high) throws JobSheetException {
    Object value = table.get(List.of(key));
    List<Double> found = new ArrayList<>();
    if (value == null || AUTO.equals(value)) {
      return found;
    }
    if (!(value instanceof TomlArray a)) {
      throw complaint(key, "must be a list of numbers such as [1, 3, 4, 2], got " + value);
    }
    for (int i = 0; i < a.size(); i++) {
      if (!(a.get(i) instanceof Number n) || !(n.doubleValue() >= low && n.doubleValue() <= high)) {
        throw complaint(
            key,
            "must hold numbers from " + plain(low) + " to " + plain(high) + ", got " + a.get(i));
      }
      found.add(n.doubleValue());
    }
    return found;
  }

  JobSheetException complaint(String key, String what) {
    String placed = table.contains(List.of(key)) ? key : anyKey();
    TomlPosition at = placed.isEmpty() ? null : table.inputPositionOf(List.of(placed));
    OptionalInt line = at == null ? OptionalInt.empty() : OptionalInt.of(at.line());
    return new JobSheetException(file, line, name(key), what);
  }

  /** A key of this table, to say where a missing one belongs. */
  private String anyKey() {
    return table.keySet().stream().sorted().findFirst().orElse("");
  }

  private String name(String key) {
    return path.isEmpty() ? key : path + "." + key;
  }

  private static String plain(double v) {
    return v == Math.rint(v) ? Long.toString((long) v) : Double.toString(v);
  }

  private static String nearest(String key, String... known) {
    String best = known[0];
    for (String k : known) {
      if (distance(key, k) < distance(key, best)) {
        best = k;
      }
    }
    return best;
  }

  /** Levenshtein distance, two rows. */
  private static int distance(String a, String b) {
    int[] row = new int[b.length() + 1];
    for (int j = 0; j < row.length; j++) {
      row[j] = j;
    }
    for (int i = 1; i <= a.length(); i++) {
      int diagonal = row[0];
      row[0] = i;
      for (int j = 1; j < row.length; j++) {
        int swap = diagonal + (a.charAt(i - 1) == b.charAt(j - 1) ? 0 : 1);
        diagonal = row[j];
        row[j] = Math.min(swap, 1 + Math.min(row[j], row[j - 1]));
      }
    }
    return row[b.length()];
  }
}
