package toothmark.examination;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;

/**
 * Where keys and values stand in a TOML text, so that it can be changed in place. The text must be
 * valid; what is not comes out somehow.
 *
 * <p>Source: TOML 1.0.0, <a href="https://toml.io/en/v1.0.0">toml.io</a>, 2021.
 */
final class TomlPlaces {

  /** What stands at a place. */
  enum Kind {
    /** {@code [table]} or {@code [[table]]}. */
    HEADER,
    /** A key on a line of its own. */
    KEY,
    /** A key between braces. */
    INLINE,
    /** An element of an array. */
    ELEMENT
  }

  /**
   * A header, a key with its value, or an element.
   *
   * @param kind which of these
   * @param path names from the top on; the items of a list count from 0
   * @param under path of the header that it stands under; of a header its own
   * @param start offset of its first character
   * @param valueStart offset of its value's first character; of a header its end
   * @param end offset after its last character
   */
  record Place(
      Kind kind, List<String> path, List<String> under, int start, int valueStart, int end) {

    /** Whether it stands below a path. */
    boolean isWithin(List<String> prefix) {
      return path.size() > prefix.size() && path.subList(0, prefix.size()).equals(prefix);
    }
  }

  private final String text;
  private final List<Place> places = new ArrayList<>();
  private List<String> under = List.of();
  private int at;

  TomlPlaces(String text) {
    this.text = text;
    Map<List<String>, Integer> items = new HashMap<>();
    for (skip(true); at < text.length(); skip(true)) {
      if (text.charAt(at) == '[') {
        header(items);
      } else {
        key(Kind.KEY, under);
      }
    }
  }

  /** All of them, those inside others after these. */
  Stream<Place> all() {
    return places.stream();
  }

  /** The key or element of that path. */
  Optional<Place> value(List<String> path) {
    return all().filter(p -> p.kind() != Kind.HEADER && p.path().equals(path)).findFirst();
  }

  /** The header of that path. */
  Optional<Place> header(List<String> path) {
    return all().filter(p -> p.kind() == Kind.HEADER && p.path().equals(path)).findFirst();
  }

  /** The last line of what stands under a header: a key, or the header itself. */
  Place last(Place header) {
    return all()
        .filter(p -> p.kind() == Kind.KEY && p.under().equals(header.path()))
        .reduce(header, (a, b) -> b);
  }

  /** Offset after the comma that follows an element; after the element where none does. */
  int afterComma(Place element) {
    at = element.end();
    skip(true);
    return here(',') ? at + 1 : element.end();
  }

  private void header(Map<List<String>, Integer> items) {
    int start = at;
    boolean many = text.startsWith("[[", at);
    at += many ? 2 : 1;
    List<String> path = names();
    at += many ? 2 : 1;
    if (many) {
      path = joined(path, List.of(Integer.toString(items.merge(path, 1, Integer::sum) - 1)));
    }
    under = path;
    places.add(new Place(Kind.HEADER, path, path, start, at, at));
  }

  private void key(Kind kind, List<String> within) {
    int start = at;
    List<String> path = joined(within, names());
    at++; // the equals sign
    value(kind, path, start);
  }

  private List<String> names() {
    List<String> names = new ArrayList<>();
    do {
      at += names.isEmpty() ? 0 : 1; // the dot
      skip(false);
      int start = at;
      if (here('"') || here('\'')) {
        string();
        names.add(text.substring(start + 1, at - 1));
      } else {
        while (at < text.length() && " \t.=]\n".indexOf(text.charAt(at)) < 0) {
          at++;
        }
        names.add(text.substring(start, at));
      }
      skip(false);
    } while (here('.'));
    return names;
  }

  private void value(Kind kind, List<String> path, int keyStart) {
    skip(false);
    int start = at;
    int index = places.size();
    if (here('[')) {
      elements(path);
    } else if (here('{')) {
      braces(path);
    } else if (here('"') || here('\'')) {
      string();
    } else {
      while (at < text.length() && ",]}#\r\n".indexOf(text.charAt(at)) < 0) {
        at++;
      }
      while (at > start && Character.isWhitespace(text.charAt(at - 1))) {
        at--;
      }
    }
    places.add(
        index, new Place(kind, path, under, kind == Kind.ELEMENT ? start : keyStart, start, at));
  }

  private void elements(List<String> path) {
    at++;
    int count = 0;
    for (skip(true); at < text.length() && !here(']'); skip(true)) {
      if (here(',')) {
        at++;
      } else {
        value(Kind.ELEMENT, joined(path, List.of(Integer.toString(count++))), at);
      }
    }
    at++;
  }

  private void braces(List<String> path) {
    at++;
    for (skip(false); at < text.length() && !here('}'); skip(false)) {
      if (here(',')) {
        at++;
      } else {
        key(Kind.INLINE, path);
      }
    }
    at++;
  }

  private void string() {
    char quote = text.charAt(at);
    String many = String.valueOf(quote).repeat(3);
    boolean isLong = text.startsWith(many, at);
    String end = isLong ? many : String.valueOf(quote);
    at += end.length();
    while (at < text.length() && !text.startsWith(end, at)) {
      at += quote == '"' && here('\\') ? 2 : 1;
    }
    at = Math.min(text.length(), at + end.length());
    while (isLong && here(quote)) {
      at++; // a long text may end in quotes of its own
    }
  }

  private boolean here(char c) {
    return at < text.length() && text.charAt(at) == c;
  }

  /** Passes blanks, and over lines too: their ends and comments. */
  private void skip(boolean lines) {
    while (at < text.length()
        && (here(' ')
            || here('\t')
            || here('\uFEFF')
            || lines && "\r\n#".indexOf(text.charAt(at)) >= 0)) {
      if (here('#')) {
        int end = text.indexOf('\n', at);
        at = end < 0 ? text.length() : end;
      } else {
        at++;
      }
    }
  }

  private static List<String> joined(List<String> first, List<String> then) {
    return Stream.concat(first.stream(), then.stream()).toList();
  }
}
