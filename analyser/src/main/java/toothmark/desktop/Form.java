package toothmark.desktop;

import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/** How what is typed into a field is written in TOML. */
enum Form {
  /** In quotes. */
  TEXT,
  /** A number; in quotes when it is none, so that the reader says so. */
  NUMBER,
  /** Numbers in brackets. */
  LIST,
  /** Whole numbers in brackets. */
  WHOLE_LIST,
  /** A file's name, in quotes. */
  FILE;

  /** What is typed, in TOML. */
  String toml(String text) {
    String plain = text.strip();
    return switch (this) {
      case TEXT, FILE -> quoted(text);
      case NUMBER -> isNumber(plain) ? decimalPoint(plain) : quoted(plain);
      case LIST, WHOLE_LIST ->
          items(plain).stream()
              .map(p -> isNumber(p) && !p.contains(",") ? p : quoted(p))
              .collect(Collectors.joining(", ", "[", "]"));
    };
  }

  /**
   * Numbers as people part them, with a point and a plain minus; what is no number as it is. A
   * comma is a decimal one where semicolons or blanks alone part them; where it could be either, it
   * stays, for the reader to complain of.
   */
  List<String> items(String text) {
    boolean decimal =
        this != WHOLE_LIST
            && (text.contains(";") || text.strip().contains(" ") && !text.contains(", "));
    List<String> parts = parts(text, "[;\\s]+|,\\s+");
    if (!decimal
        && (this == WHOLE_LIST || parts.stream().noneMatch(p -> p.contains(",") && isNumber(p)))) {
      parts = parts(text, "[,;\\s]+");
    }
    return parts.stream()
        .map(p -> isNumber(p) && (decimal || !p.contains(",")) ? decimalPoint(p) : p)
        .toList();
  }

  private static List<String> parts(String text, String separator) {
    String dash = "(?<=\\d)[\u2013\u2212-]|(?<=\\d)\\s+[\u2013\u2212-]\\s+|";
    return Stream.of(text.replaceAll("[\\[\\]]", "").split(dash + separator))
        .filter(p -> !p.isEmpty())
        .toList();
  }

  private static boolean isNumber(String text) {
    return text.matches("[+\u2212-]?(0|[1-9]\\d*)([.,]\\d+)?");
  }

  /** A number as programs write it. */
  static String decimalPoint(String number) {
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
