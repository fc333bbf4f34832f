package toothmark.accuracy.diagnosis;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import toothmark.accuracy.Table;

/**
 * A grid of what is wrong against what was put first, columns under the numbers of their rows, so
 * that it stays narrow; what is right stands under its own number.
 */
final class Confusion {

  private final Map<String, Map<String, Integer>> rows = new LinkedHashMap<>();

  /**
   * Counts a capture.
   *
   * @param cause what is wrong with it
   * @param first what was put first
   */
  void add(String cause, String first) {
    rows.computeIfAbsent(cause, c -> new TreeMap<>()).merge(first, 1, Integer::sum);
  }

  /** Causes in the order in which they came, then by name what was only said. */
  private List<String> numbered() {
    Set<String> others = new TreeSet<>();
    rows.values().forEach(counts -> others.addAll(counts.keySet()));
    others.removeAll(rows.keySet());
    List<String> all = new ArrayList<>(rows.keySet());
    all.addAll(others);
    return all;
  }

  /** One row a cause; only columns that occur. */
  Table table() {
    List<String> numbered = numbered();
    List<String> columns =
        numbered.stream()
            .filter(id -> rows.values().stream().anyMatch(counts -> counts.containsKey(id)))
            .toList();
    List<String> heads = new ArrayList<>(List.of("what is wrong"));
    columns.forEach(id -> heads.add(Integer.toString(numbered.indexOf(id) + 1)));
    Table table = new Table(heads.toArray(String[]::new));
    rows.forEach(
        (cause, counts) -> {
          List<String> cells = new ArrayList<>();
          cells.add(numbered.indexOf(cause) + 1 + " " + cause);
          for (String id : columns) {
            cells.add(counts.containsKey(id) ? counts.get(id).toString() : "");
          }
          table.row(cells.toArray(String[]::new));
        });
    return table;
  }

  /** The columns that are no rows, with their numbers; empty when there are none. */
  String others() {
    List<String> numbered = numbered();
    List<String> named = new ArrayList<>();
    for (String id : numbered.subList(rows.size(), numbered.size())) {
      named.add(numbered.indexOf(id) + 1 + " " + id);
    }
    return String.join(", ", named);
  }
}
