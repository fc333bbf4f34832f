package toothmark.desktop;

import java.util.ArrayList;
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
    String name = Phrases.of("aid." + key);
    List<Integer> found = new ArrayList<>();
    for (String t : Form.WHOLE_LIST.items(text(key))) {
      double number = exact(name, t, t);
      if (number != Math.rint(number)) {
        throw new IllegalArgumentException(Phrases.of("aid.noWhole", name, t));
      }
      found.add((int) number);
    }
    if (found.isEmpty()) {
      throw new IllegalArgumentException(Phrases.of("aid.missing", name));
    }
    return found;
  }

  /** Numbers with commas between them. */
  double[] list(String key) {
    String name = Phrases.of("aid." + key);
    return Form.LIST.items(text(key)).stream().mapToDouble(t -> exact(name, t, t)).toArray();
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
    return exact(name, text, Form.decimalPoint(text));
  }

  private static double exact(String name, String text, String number) {
    try {
      double value = Double.parseDouble(number);
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
