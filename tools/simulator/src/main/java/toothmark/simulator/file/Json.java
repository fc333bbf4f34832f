package toothmark.simulator.file;

import java.util.List;
import java.util.Locale;
import java.util.Map;

/** Writes maps, lists, strings, numbers and truth values as JSON (RFC 8259). */
final class Json {
  private Json() {}

  static String of(Object value) {
    StringBuilder out = new StringBuilder();
    write(value, out);
    return out.toString();
  }

  private static void write(Object value, StringBuilder out) {
    if (value instanceof Map<?, ?> map) {
      String separator = "{";
      for (Map.Entry<?, ?> entry : map.entrySet()) {
        out.append(separator);
        write(entry.getKey(), out);
        out.append(": ");
        write(entry.getValue(), out);
        separator = ", ";
      }
      out.append(map.isEmpty() ? "{}" : "}");
    } else if (value instanceof List<?> list) {
      String separator = "[";
      for (Object item : list) {
        out.append(separator);
        write(item, out);
        separator = ", ";
      }
      out.append(list.isEmpty() ? "[]" : "]");
    } else if (value instanceof String text) {
      string(text, out);
    } else {
      out.append(value);
    }
  }

  private static void string(String text, StringBuilder out) {
    out.append('"');
    for (int i = 0; i < text.length(); i++) {
      char c = text.charAt(i);
      if (c == '"' || c == '\\') {
        out.append('\\').append(c);
      } else if (c < ' ') {
        out.append(String.format(Locale.ROOT, "\\u%04x", (int) c));
      } else {
        out.append(c);
      }
    }
    out.append('"');
  }
}
