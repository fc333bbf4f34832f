package toothmark.desktop;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;

/**
 * What stands in the fields of a sum at the bench, right or not.
 *
 * @param fields text by key
 * @param rows text by row and column of the table
 */
record Typed(Map<String, String> fields, List<List<String>> rows) {

  /** The text of a field. */
  String text(String key) {
    return fields.getOrDefault(key, "").strip();
  }

  boolean isEmpty(String key) {
    return text(key).isEmpty();
  }

  /**
   * The number in a field.
   *
   * @throws IllegalArgumentException if it is none
   */
  double number(String key) {
    return number(Phrases.of("aid." + key), text(key));
  }

  /** Whole numbers with commas between them. */
  List<Integer> wholes(String key) {
    return Arrays.stream(text(key).split("[,\\s]+"))
        .map(t -> (int) number(Phrases.of("aid." + key), t))
        .toList();
  }

  /** Numbers with commas between them. */
  double[] list(String key) {
    return Arrays.stream(text(key).split("[,\\s]+"))
        .mapToDouble(t -> number(Phrases.of("aid." + key), t))
        .toArray();
  }

  /** The rows in which something stands, as numbers. */
  List<double[]> numbers(List<String> columns) {
    List<double[]> out = new ArrayList<>();
    for (List<String> row : rows) {
      if (row.stream().anyMatch(cell -> !cell.isBlank())) {
        double[] values = new double[columns.size()];
        for (int i = 0; i < values.length; i++) {
          values[i] = number(Phrases.of("aid." + columns.get(i)), row.get(i).strip());
        }
        out.add(values);
      }
    }
    return out;
  }

  private static double number(String name, String text) {
    try {
      double value = Double.parseDouble(text.replace(',', '.').replace('\u2212', '-'));
      if (Double.isFinite(value)) {
        return value;
      }
    } catch (NumberFormatException e) {
      // said below, as for a value that is not finite
    }
    throw new IllegalArgumentException(
        text.isEmpty() ? Phrases.of("aid.missing", name) : Phrases.of("aid.noNumber", name, text));
  }
}
