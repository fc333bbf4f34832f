package toothmark.capture.text;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import toothmark.capture.text.Settings.Key;
import toothmark.capture.text.Settings.Value;

/** Finds settings in preamble lines, wherever on the line they stand. */
final class SettingsReader {

  private static final int LINES_TO_READ = 2000;

  /** The x of a probe factor. */
  private static final Pattern TIMES = Pattern.compile("(?<=\\d) ?[xX]$");

  private static final Pattern NUMBER_AND_UNIT =
      Pattern.compile("([-+]?\\d[\\d.,]*(?:[eE][-+]?\\d+)?) ?([^\\d\\s].*)");

  /** The name of a column of times and what a count of it is worth. */
  private static final Pattern TICK =
      Pattern.compile(
          "(.*?)(?: ?[(\\[]| in )[xX×*]? ?(\\d+(?:[.,]\\d+)?) ?(\\p{L}{1,2})(?: (?:counts?|ticks?))?[)\\]]?");

  /** A number of hertz that is only told by its prefix. */
  private static final Pattern PREFIX_ALONE = Pattern.compile("[\\d.,]+ ?[kKMG]");

  /** Samples a second, which no other setting is in. */
  private static final Pattern SAMPLES_A_SECOND =
      Pattern.compile("(?i)[\\d.,]+ ?[kMG]?(S/s|Sa/s|SPS|samples/s|samples per second)");

  private final Dialect dialect;
  private final List<String> channels;
  private final Settings settings;
  private String section = "";

  /**
   * Starts with nothing.
   *
   * @param names of the columns, as far as they are known
   */
  SettingsReader(Dialect dialect, List<String> names) {
    this.dialect = dialect;
    this.channels = names.stream().map(Label::channel).filter(n -> !n.isEmpty()).toList();
    this.settings = new Settings(channels);
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
    startSection(words, line.strip());
    for (int i = 0; i < words.size(); i++) {
      Label label = label(words, i);
      if (label == null) {
        continue;
      }
      label = label.ownedBy(i > 0 && isChannel(words.get(i - 1)) ? words.get(i - 1) : section);
      boolean one = words.get(i).startsWith("1 ");
      String rest = one ? "" : words.get(i).substring(text(words.get(i)).length()).strip();
      i = read(label, rest, words, i + 1, place) - 1;
    }
  }

  /** A line with nothing but a channel's name, or in brackets, says whose the next settings are. */
  private void startSection(List<String> words, String line) {
    String only = words.size() == 1 ? words.get(0).replaceAll("[\\[\\]]", "") : "";
    if (isChannel(only)) {
      section = Label.channel(only);
    } else if (line.startsWith("[")) {
      section = "";
    }
  }

  private boolean isChannel(String word) {
    return Label.isNumbered(Label.channel(word)) || channels.contains(Label.channel(word));
  }

  /** What a word names; a value that says what a count is worth needs no name. */
  private Label label(List<String> words, int i) {
    String word = words.get(i);
    if (word.startsWith("1 ")) {
      Label known = Label.of(word.substring(2), "", channels);
      return known == null ? Label.ofOne(word.substring(2)) : known;
    }
    String text = text(word);
    String rest = word.substring(text.length()).strip();
    Label label = Label.of(text, rest, channels);
    if (label != null) {
      return label;
    }
    String value = rest.isEmpty() && i + 1 < words.size() ? words.get(i + 1) : rest;
    String unit = rest.isEmpty() && i + 2 < words.size() ? words.get(i + 2) : "";
    if (worth(value) != null || isNumber(value) && CountUnit.parse(unit) != null) {
      return new Label(Key.SCALE, "", CountUnit.NONE);
    }
    boolean rate = text.isEmpty() && SAMPLES_A_SECOND.matcher(word).matches();
    return rate ? new Label(Key.RATE, "", CountUnit.NONE) : null;
  }

  private boolean isNumber(String word) {
    return Cell.of(word, dialect.decimalMark()).kind() == Cell.Kind.NUMBER;
  }

  /** What is said behind a number of the worth of a count; null when nothing is. */
  private static CountUnit worth(String value) {
    Matcher m = NUMBER_AND_UNIT.matcher(value);
    return m.matches() ? CountUnit.parse(m.group(2)) : null;
  }

  /** Takes the values that follow a label; gives the index of the first word that is none. */
  private int read(Label label, String rest, List<String> words, int from, String place) {
    List<Value> values = new ArrayList<>();
    int end = collect(label, values, rest, words, from, place);
    if (!values.isEmpty()) {
      boolean ofClock = label.key() == Key.SCALE && values.get(0).unit().isTime();
      settings.put(ofClock ? Key.TIMER : label.key(), values, Label.channel(label.owner()));
    }
    return end;
  }

  /**
   * A key and, in the row below it or in a variable of that name, its value.
   *
   * @param owner the channel whose it is; empty text for none
   */
  void readColumn(String above, String below, String owner, String place) {
    String glued = Label.glued(above);
    String text = text(glued);
    Label label = Label.of(text, glued.substring(text.length()).strip(), channels);
    if (label != null) {
      read(label.ownedBy(owner), "", List.of(below), 0, place);
    }
  }

  /**
   * What a count of a column of times is worth, where its name says so, as in {@code period (4
   * us)}.
   *
   * @param name the header cell
   */
  void readTick(String name, String place) {
    Matcher m = TICK.matcher(name.strip());
    String bare = m.matches() ? m.group(1) : "";
    if (Words.isPeriod(bare) || Words.isTime(bare)) {
      Unit unit = Unit.parse(m.group(3));
      BigDecimal number = new BigDecimal(m.group(2).replace(',', '.'));
      if (unit != null && unit.isTime() && number.signum() > 0) {
        Value tick = new Value(number.scaleByPowerOfTen(unit.power()), unit, place);
        settings.put(Key.TIMER, List.of(tick), "");
      }
    }
  }

  private List<String> words(String line) {
    String text = Label.glued(line.strip());
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
  private static String text(String word) {
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

  private int collect(
      Label label, List<Value> values, String rest, List<String> words, int from, String place) {
    CountUnit meant = label.meant();
    String first = rest.startsWith("(") || rest.startsWith("[") ? "" : rest;
    if (!first.isEmpty()) {
      addValue(label.key(), values, first, meant, place);
    }
    int i = from;
    for (; i < words.size(); i++) {
      if (!addValue(label.key(), values, words.get(i), meant, place)) {
        CountUnit worth = CountUnit.parse(words.get(i));
        Unit unit = worth == null ? Unit.parse(words.get(i)) : worth.unit();
        if (unit == null || label.key().isUnit()) {
          break;
        }
        meant = worth == null ? new CountUnit(unit, false) : worth;
        applyUnit(values, meant);
      }
    }
    return i;
  }

  private static void applyUnit(List<Value> values, CountUnit meant) {
    int last = values.size() - 1;
    if (last >= 0 && values.get(last).unit().isNone()) {
      Value v = values.get(last);
      values.set(last, new Value(meant.inBaseUnit(v.number()), meant.unit(), v.place()));
    }
  }

  private boolean addValue(
      Key key, List<Value> values, String word, CountUnit meant, String place) {
    if (key.isUnit()) {
      Unit unit = Unit.parse(word);
      if (unit != null) {
        values.add(new Value(null, unit, place));
      }
      return unit != null;
    }
    CountUnit worth = worth(word);
    String w = worth == null ? TIMES.matcher(word).replaceFirst("") : number(word);
    boolean hertz = key == Key.RATE && PREFIX_ALONE.matcher(w).matches();
    w = hertz ? w + "Hz" : w;
    Cell cell = Cell.of(w, dialect.decimalMark());
    if (cell.kind() != Cell.Kind.NUMBER) { // rows of whole numbers do not show the mark
      cell = Cell.of(w, dialect.decimalMark() == ',' ? '.' : ',');
    }
    if (cell.kind() != Cell.Kind.NUMBER) {
      return false;
    }
    CountUnit as = worth == null ? meant : worth;
    boolean own = !cell.unit().isNone() && !as.inverse();
    values.add(
        own
            ? new Value(cell.number(), cell.unit(), place)
            : new Value(as.inBaseUnit(cell.number()), as.unit(), place));
    return true;
  }

  private static String number(String value) {
    Matcher m = NUMBER_AND_UNIT.matcher(value);
    return m.matches() ? m.group(1) : value;
  }

  /** Whether a line or cell gives the name of a setting and its value. */
  static boolean states(String text, Dialect dialect) {
    SettingsReader reader = new SettingsReader(dialect, List.of());
    reader.read(text, 1);
    return !reader.settings().isEmpty();
  }

  /** Whether a cell is the name of a setting. */
  static boolean isKey(String cell) {
    return Label.of(text(cell), "", List.of()) != null;
  }
}
