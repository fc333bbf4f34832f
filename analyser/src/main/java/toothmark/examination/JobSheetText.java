package toothmark.examination;

import java.io.IOException;
import java.nio.charset.MalformedInputException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;

/**
 * A job sheet as it is written, comments and all. It is changed in place: whatever a change is not
 * about stays as it was, to the letter.
 *
 * <p>Keys are named from the top on with dots, such as {@code engine.firing.order}; those of an
 * item of a list by its number, from 0, such as {@code coils.0.name}. Values are written in TOML.
 *
 * @param name what to call it in a complaint
 * @param toml the text, valid TOML 1.0
 * @param folder where the files are sought that it names
 */
public record JobSheetText(String name, String toml, Path folder) {

  /**
   * Reads a file.
   *
   * @param file the sheet, UTF-8
   * @return its text, not yet looked at, without a byte order mark
   * @throws JobSheetException if it is not UTF-8
   * @throws IOException if the file cannot be read
   */
  public static JobSheetText read(Path file) throws JobSheetException, IOException {
    try {
      Path folder = file.toAbsolutePath().getParent();
      String toml = Files.readString(file);
      return new JobSheetText(
          String.valueOf(file.getFileName()),
          toml.startsWith("\uFEFF") ? toml.substring(1) : toml,
          folder);
    } catch (MalformedInputException e) {
      throw new JobSheetException(
          file.getFileName() + ": not UTF-8; save the job sheet as UTF-8 text");
    }
  }

  /**
   * What it states.
   *
   * @return the sheet
   * @throws JobSheetException if it is no TOML, has an unknown key or a value out of range
   */
  public JobSheet sheet() throws JobSheetException {
    return JobSheetReader.parse(name, toml, folder);
  }

  /**
   * The file, there or not.
   *
   * @return its name in its folder
   */
  public Path file() {
    return folder.resolve(name);
  }

  /**
   * States a key; where it is missing, it is added to its table.
   *
   * @param key its full name
   * @param value in TOML
   * @return the text with the value
   */
  public JobSheetText with(String key, String value) {
    List<String> path = List.of(key.split("\\."));
    TomlPlaces places = new TomlPlaces(toml);
    Optional<TomlPlaces.Place> there = places.value(path);
    return there.isPresent()
        ? changed(there.get().valueStart(), there.get().end(), value)
        : added(places, path, value);
  }

  /**
   * Whether a key is stated.
   *
   * @param key its full name
   * @return false also where it would be the same as {@code auto}
   */
  public boolean states(String key) {
    return value(key).isPresent();
  }

  /**
   * What is stated for a key.
   *
   * @param key its full name
   * @return in TOML, as it is written; empty where nothing is
   */
  public Optional<String> value(String key) {
    return new TomlPlaces(toml)
        .value(List.of(key.split("\\.")))
        .map(p -> toml.substring(p.valueStart(), p.end()));
  }

  private JobSheetText added(TomlPlaces places, List<String> path, String value) {
    List<String> table = path.subList(0, path.size() - 1);
    Optional<TomlPlaces.Place> header = places.header(table);
    if (header.isPresent()) {
      return withLine(places.last(header.get()), path, value);
    }
    for (int n = table.size(); n > 0; n--) {
      List<String> part = path.subList(0, n);
      Optional<TomlPlaces.Place> braces =
          places.value(part).filter(p -> toml.charAt(p.valueStart()) == '{');
      if (braces.isPresent()) {
        String key = String.join(".", path.subList(n, path.size()));
        return withInner(places, braces.get(), key + " = " + value);
      }
      Optional<TomlPlaces.Place> dotted =
          places
              .all()
              .filter(p -> p.kind() == TomlPlaces.Kind.KEY)
              .filter(p -> p.isWithin(part) && p.under().size() < part.size())
              .reduce((a, b) -> b);
      if (dotted.isPresent()) {
        return withLine(dotted.get(), path, value);
      }
    }
    return appended(
        "[" + String.join(".", table) + "]" + newline() + path.get(table.size()) + " = " + value);
  }

  /** Adds a line after a place, as far in as that is. */
  private JobSheetText withLine(TomlPlaces.Place after, List<String> path, String value) {
    int lineStart = toml.lastIndexOf('\n', after.start()) + 1;
    String indent =
        toml.substring(lineStart, after.start()).isBlank()
            ? toml.substring(lineStart, after.start())
            : "";
    String key = String.join(".", path.subList(after.under().size(), path.size()));
    return withLines(lineEnd(after.end()), indent + key + " = " + value);
  }

  private JobSheetText withLines(int offset, String lines) {
    boolean ended = offset == 0 || toml.charAt(offset - 1) == '\n';
    return changed(offset, offset, (ended ? "" : newline()) + lines + newline());
  }

  /** Adds something to an array or an inline table, after what it has. */
  private JobSheetText withInner(TomlPlaces places, TomlPlaces.Place outer, String inner) {
    Optional<TomlPlaces.Place> last =
        places
            .all()
            .filter(p -> p.start() > outer.valueStart() && p.end() < outer.end())
            .filter(p -> p.isWithin(outer.path()))
            .reduce((a, b) -> b.end() > a.end() ? b : a);
    int offset = last.map(TomlPlaces.Place::end).orElse(outer.valueStart() + 1);
    return changed(offset, offset, last.isPresent() ? ", " + inner : " " + inner + " ");
  }

  private JobSheetText appended(String lines) {
    return withLines(toml.length(), (toml.isBlank() ? "" : newline()) + lines);
  }

  /**
   * Takes an item from a list of tables, with the comments between its keys.
   *
   * @param list name of the list
   * @param index which, from 0
   * @return the text without it
   */
  public JobSheetText withoutItem(String list, int index) {
    List<String> path = List.of(list, Integer.toString(index));
    TomlPlaces places = new TomlPlaces(toml);
    Optional<TomlPlaces.Place> header = places.header(path);
    if (header.isPresent()) {
      int from = toml.lastIndexOf('\n', header.get().start()) + 1;
      int to = lineEnd(places.last(header.get()).end());
      boolean blankBefore = toml.substring(0, from).endsWith(newline() + newline());
      int blank = lineEnd(to);
      return changed(from, blankBefore && toml.substring(to, blank).isBlank() ? blank : to, "");
    }
    TomlPlaces.Place element = places.value(path).orElseThrow();
    Optional<TomlPlaces.Place> next = places.value(List.of(list, Integer.toString(index + 1)));
    if (next.isPresent()) {
      return changed(element.start(), next.get().start(), "");
    }
    Optional<TomlPlaces.Place> before = places.value(List.of(list, Integer.toString(index - 1)));
    return before.isPresent()
        ? changed(before.get().end(), element.end(), "")
        : changed(element.start(), places.afterComma(element), "");
  }

  /**
   * Adds an item to a list of tables.
   *
   * @param list name of the list
   * @param keys its keys and their values in TOML, in order
   * @return the text with it
   */
  public JobSheetText withItem(String list, Map<String, String> keys) {
    TomlPlaces places = new TomlPlaces(toml);
    List<String> lines =
        keys.entrySet().stream().map(e -> e.getKey() + " = " + e.getValue()).toList();
    Optional<TomlPlaces.Place> array = places.value(List.of(list));
    if (array.isPresent()) {
      return withInner(places, array.get(), "{ " + String.join(", ", lines) + " }");
    }
    String item =
        lines.stream().collect(Collectors.joining(newline(), "[[" + list + "]]" + newline(), ""));
    return places
        .all()
        .filter(p -> p.kind() == TomlPlaces.Kind.HEADER && p.isWithin(List.of(list)))
        .reduce((a, b) -> b)
        .map(last -> withLines(lineEnd(places.last(last).end()), newline() + item))
        .orElseGet(() -> appended(item));
  }

  private int lineEnd(int offset) {
    int end = toml.indexOf('\n', offset);
    return end < 0 ? toml.length() : end + 1;
  }

  private String newline() {
    return toml.contains("\r\n") ? "\r\n" : "\n";
  }

  private JobSheetText changed(int from, int to, String with) {
    return new JobSheetText(name, toml.substring(0, from) + with + toml.substring(to), folder);
  }
}
