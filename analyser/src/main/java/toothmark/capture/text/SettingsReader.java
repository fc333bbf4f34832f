package toothmark.capture.text;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.regex.Pattern;
import toothmark.capture.text.Settings.Key;
import toothmark.capture.text.Settings.Value;

/** Finds settings in preamble lines, wherever on the line they stand. */
final class SettingsReader {

  private static final int LINES_TO_READ = 2000;

  /** The x of a probe factor; the count of volts per count. */
  private static final Pattern BEHIND_A_UNIT =
      Pattern.compile("(?i)((?<=\\d) ?x|(/| per )(count|lsb|bit|step|digit)s?)$");

  private static final Set<String> OF_THE_SCREEN =
      Set.of(
          "vertical",
          "horizontal",
          "display",
          "screen",
          "zoom",
          "grid",
          "plot",
          "cursor",
          "trigger",
          "time",
          "vertikal",
          "vertikale",
          "bildschirm",
          "verticale",
          "pantalla");

  private static final Set<String> OF_NO_SAMPLES =
      Set.of("refresh", "frame", "update", "baud", "bit", "trigger", "display", "screen");

  /** Words that turn the name of a key into that of another thing, such as divisions or baud. */
  private static final Map<Key, Set<String>> ANOTHER =
      Map.of(
          Key.SCALE, OF_THE_SCREEN,
          Key.OFFSET, OF_THE_SCREEN,
          Key.RATE, OF_NO_SAMPLES,
          Key.INTERVAL, OF_NO_SAMPLES);

  private final Dialect dialect;
  private final Settings settings = new Settings();

  SettingsReader(Dialect dialect) {
    this.dialect = dialect;
  }

  Settings settings() {
    return settings;
  }

  /**
   * Reads one line.
   *
   * @param line of the file
   * @param number of the line, from 1
   */
  void read(String line, int number) {
    if (number <= LINES_TO_READ) {
      read(line, "line " + number);
    }
  }

  private void read(String line, String place) {
    List<String> words = words(line);
    for (int i = 0; i < words.size(); i++) {
      String word = words.get(i);
      word = word.startsWith("1 ") ? word.substring(2) : word;
      String label = label(word);
      Key key = key(Words.normal(label));
      if (key == null) {
        continue;
      }
      Unit stated = unitOf(word, label);
      List<Value> values = new ArrayList<>();
      String rest = word.substring(label.length()).strip();
      i = collect(key, values, rest, words, i + 1, new Value(null, stated, place)) - 1;
      if (!values.isEmpty()) {
        settings.put(key, values, owner(Words.normal(label)));
      }
    }
  }

  /** A key and, in the row below it or in a variable of that name, its value. */
  void readColumn(String above, String below, String place) {
    Key key = key(Words.normal(label(above)));
    if (key != null) {
      List<Value> values = new ArrayList<>();
      Value template = new Value(null, unitOf(above, label(above)), place);
      collect(key, values, "", List.of(below), 0, template);
      if (!values.isEmpty()) {
        settings.put(key, values, owner(Words.normal(label(above))));
      }
    }
  }

  private List<String> words(String line) {
    String text = line.strip();
    int p = 0;
    while (p < text.length() && "#%;/!*\"'".indexOf(text.charAt(p)) >= 0) {
      p++;
    }
    List<String> words = new ArrayList<>();
    Dialect cells = dialect.delimiter() == Dialect.BLANKS ? new Dialect('\t', '.') : dialect;
    for (String cell : cells.split(text.substring(p))) {
      int from = 0;
      for (int i = 0; i < cell.length(); i++) {
        if (endsWord(cell, i)) {
          add(words, cell.substring(from, i));
          from = i + 1;
        }
      }
      add(words, cell.substring(from));
    }
    return words;
  }

  /** A comma between digits is part of a number. */
  private static boolean endsWord(String cell, int i) {
    char c = cell.charAt(i);
    boolean inNumber =
        c == ','
            && i > 0
            && i + 1 < cell.length()
            && Character.isDigit(cell.charAt(i - 1))
            && Character.isDigit(cell.charAt(i + 1));
    return "=:;\t,".indexOf(c) >= 0 && !inNumber;
  }

  private static void add(List<String> words, String word) {
    String w = word.strip();
    if (!w.isEmpty()) {
      words.add(w);
    }
  }

  /** The words before the first number or bracket of a text. */
  private static String label(String word) {
    int p = 0;
    while (p < word.length()) {
      char c = word.charAt(p);
      boolean number =
          c >= '0' && c <= '9' && (p == 0 || word.charAt(p - 1) <= ' ')
              || (c == '+' || c == '-' || c == '.')
                  && p + 1 < word.length()
                  && Character.isDigit(word.charAt(p + 1));
      if (number || c == '(' || c == '[') {
        break;
      }
      p++;
    }
    return word.substring(0, p).stripTrailing();
  }

  private static Unit unitOf(String word, String label) {
    String rest = word.substring(label.length()).strip();
    int close = Math.max(rest.indexOf(')'), rest.indexOf(']'));
    Unit unit = close > 0 ? Unit.parse(rest.substring(0, close + 1)) : null;
    return unit == null ? Unit.NONE : unit;
  }

  /** Takes the values that follow a key; gives the index of the first word that is none. */
  private int collect(
      Key key, List<Value> values, String rest, List<String> words, int from, Value template) {
    boolean forUnit = key == Key.UNIT || key == Key.TIME_UNIT;
    String first = rest.startsWith("(") || rest.startsWith("[") ? "" : rest;
    int i = from;
    if (!first.isEmpty()) {
      addValue(forUnit, values, first, template);
    }
    for (; i < words.size(); i++) {
      if (!addValue(forUnit, values, words.get(i), template)) {
        Unit unit = Unit.parse(words.get(i));
        if (unit == null || forUnit) {
          break;
        }
        template = new Value(null, unit, template.place());
        applyUnit(values, unit);
      }
    }
    return i;
  }

  private static void applyUnit(List<Value> values, Unit unit) {
    int last = values.size() - 1;
    if (last >= 0 && values.get(last).unit().isNone()) {
      Value v = values.get(last);
      values.set(last, new Value(v.number().scaleByPowerOfTen(unit.power()), unit, v.place()));
    }
  }

  private boolean addValue(boolean forUnit, List<Value> values, String word, Value template) {
    if (forUnit) {
      Unit unit = Unit.parse(word);
      if (unit != null) {
        values.add(new Value(null, unit, template.place()));
      }
      return unit != null;
    }
    String w = BEHIND_A_UNIT.matcher(word).replaceFirst("");
    Cell cell = Cell.of(w, dialect.decimalMark());
    if (cell.kind() != Cell.Kind.NUMBER) { // rows of whole numbers do not show the mark
      cell = Cell.of(w, dialect.decimalMark() == ',' ? '.' : ',');
    }
    if (cell.kind() != Cell.Kind.NUMBER) {
      return false;
    }
    boolean own = !cell.unit().isNone();
    Unit unit = own ? cell.unit() : template.unit();
    values.add(
        new Value(
            own ? cell.number() : cell.number().scaleByPowerOfTen(unit.power()),
            unit,
            template.place()));
    return true;
  }

  /** Whether a line or cell gives the name of a setting and its value. */
  static boolean states(String text, Dialect dialect) {
    SettingsReader reader = new SettingsReader(dialect);
    reader.read(text, 1);
    return !reader.settings().isEmpty();
  }

  /** Whether a cell is the name of a setting. */
  static boolean isKey(String cell) {
    return key(Words.normal(label(cell))) != null;
  }

  /** What a label means; null when it is none of ours. */
  private static Key key(String label) {
    Key key = Key.named(label);
    if (key == null && !owner(label).isEmpty()) {
      key = Key.named(label.substring(label.indexOf(' ') + 1));
      return key == null || ANOTHER.getOrDefault(key, Set.of()).contains(owner(label)) ? null : key;
    }
    return key;
  }

  /** The word before the name of a key; empty text for a label that is one, or has no such word. */
  private static String owner(String label) {
    int blank = label.indexOf(' ');
    return blank < 0 || Key.named(label) != null ? "" : label.substring(0, blank);
  }
}
