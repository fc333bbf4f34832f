package toothmark.desktop;

import java.util.ArrayList;
import java.util.List;

/** How what is typed into a field is written in TOML. */
enum Form {
  /** In quotes. */
  TEXT,
  /** A number; in quotes when it is none, so that the reader says so. */
  NUMBER,
  /** Numbers in brackets. */
  LIST,
  /** A file's name, in quotes. */
  FILE;

  /** What is typed, in TOML. */
  String toml(String text) {
    String plain = text.strip();
    return switch (this) {
      case TEXT, FILE -> quoted(text);
      case NUMBER -> isNumber(plain) ? decimalPoint(plain) : quoted(plain);
      case LIST -> list(plain);
    };
  }

  private static String list(String text) {
    List<String> parts = new ArrayList<>();
    for (String p : text.replaceAll("[\\[\\]]", "").split("(?<=\\d)-|(?<=\\d)\\s+-\\s+|[,;\\s]+")) {
      if (!p.isEmpty()) {
        parts.add(isNumber(p) ? p : quoted(p));
      }
    }
    return "[" + String.join(", ", parts) + "]";
  }

  private static boolean isNumber(String text) {
    return text.matches("[+\u2212-]?(0|[1-9]\\d*)([.,]\\d+)?");
  }

  private static String decimalPoint(String number) {
    return number.replace(',', '.').replace('\u2212', '-');
  }

  private static String quoted(String text) {
    StringBuilder s = new StringBuilder("\"");
    for (char c : text.toCharArray()) {
      switch (c) {
        case '"' -> s.append("\\\"");
        case '\\' -> s.append("\\\\");
        case '\n' -> s.append("\\n");
        case '\t' -> s.append("\\t");
        default -> {
          if (c >= ' ' && c != 0x7f) {
            s.append(c);
          }
        }
      }
    }
    return s.append('"').toString();
  }
}
