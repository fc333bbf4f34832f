package toothmark.capture.vcd;

import java.io.IOException;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import toothmark.capture.UnreadableCaptureException;

/** The part of a dump up to {@code $enddefinitions}. Source: IEEE Std 1364-2005, 18.2.3. */
final class Declarations {

  private static final String[] UNITS = {"s", "ms", "us", "ns", "ps", "fs"};

  /** Of UTF-8, a character for each byte. */
  private static final String BYTE_ORDER_MARK = "\u00ef\u00bb\u00bf";

  private static final Set<String> KEYWORDS =
      Set.of("$var", "$scope", "$upscope", "$enddefinitions");

  private final String file;
  private final Words words;
  private final List<String> scopes = new ArrayList<>();
  private final List<Variable> variables = new ArrayList<>();
  private final Map<String, Values> byCode = new HashMap<>();
  private int tickPower = Integer.MAX_VALUE;
  private String timescale = "";

  Declarations(String file, Words words) {
    this.file = file;
    this.words = words;
  }

  void read() throws IOException, UnreadableCaptureException {
    while (words.next()) {
      String keyword = words.text(0);
      boolean marked = keyword.startsWith(BYTE_ORDER_MARK);
      keyword = marked ? keyword.substring(BYTE_ORDER_MARK.length()) : keyword;
      switch (keyword) {
        case "" -> {} // the mark stood alone
        case "$enddefinitions" -> {
          section(keyword);
          return;
        }
        case "$timescale" -> timescale(section(keyword));
        case "$scope" -> scope(section(keyword));
        case "$upscope" -> upscope();
        case "$var" -> variable();
        default -> other(keyword);
      }
    }
    throw broken("the dump ends before $enddefinitions; copy the file again");
  }

  private void other(String keyword) throws IOException, UnreadableCaptureException {
    if (keyword.charAt(0) != '$') {
      throw broken("'" + keyword + "' stands where a keyword such as $var is due; mend the line");
    }
    section(keyword);
  }

  private List<String> section(String keyword) throws IOException, UnreadableCaptureException {
    long line = words.line();
    List<String> body = new ArrayList<>();
    while (words.next()) {
      if (words.is("$end")) {
        return body;
      }
      body.add(words.name());
    }
    throw new UnreadableCaptureException(
        file + ": line " + line + ": " + keyword + " is not closed by $end; copy the file again");
  }

  private void scope(List<String> body) {
    scopes.add(body.isEmpty() ? "" : body.get(body.size() - 1));
  }

  private void upscope() throws IOException, UnreadableCaptureException {
    section("$upscope");
    if (scopes.isEmpty()) {
      throw broken("$upscope without a $scope; mend the line");
    }
    scopes.remove(scopes.size() - 1);
  }

  private void timescale(List<String> body) throws UnreadableCaptureException {
    timescale = String.join("", body).replaceAll("[\u00b5\u03bc]", "u");
    int split = 0;
    while (split < timescale.length() && Character.isDigit(timescale.charAt(split))) {
      split++;
    }
    String number = timescale.substring(0, split);
    String unit = timescale.substring(split);
    for (int u = 0; u < UNITS.length; u++) {
      for (int zeros = 0; zeros < 3; zeros++) {
        if (unit.equals(UNITS[u]) && number.equals("100".substring(0, 1 + zeros))) {
          tickPower = zeros - 3 * u;
          return;
        }
      }
    }
    throw broken(
        "$timescale is '"
            + timescale
            + "', but must be 1, 10 or 100 of s, ms, us, ns, ps or fs; export the dump again with"
            + " one of these");
  }

  /** The code and the name are told by their position: a code may be any characters at all. */
  private void variable() throws IOException, UnreadableCaptureException {
    String type = word();
    String size = word();
    String code = word();
    word();
    StringBuilder name = new StringBuilder(words.name());
    while (words.next() && !words.is("$end")) {
      if (KEYWORDS.contains(words.text(0))) {
        throw broken("$var " + name + " is not closed by $end; mend the line before");
      }
      name.append(words.name());
    }
    int width;
    try {
      width = Integer.parseInt(size);
    } catch (NumberFormatException e) {
      throw broken("the size of $var " + name + " is '" + size + "', but must be a number of bits");
    }
    if (width < 1 || width > 1 << 16) {
      throw broken("the size of $var " + name + " is " + size + ", but must be 1 to 65536 bits");
    }
    Values values = byCode.computeIfAbsent(code, c -> new Values(width, kind(type)));
    int open = name.indexOf("[");
    Variable.Range range = range(open < 0 ? "" : name.substring(open), width);
    boolean bit = width == 1 && open > 0;
    String bare = open < 0 || bit ? name.toString() : name.substring(0, open);
    variables.add(new Variable(String.join(".", scopes), bare, range, values));
  }

  private String word() throws IOException, UnreadableCaptureException {
    if (!words.next()) {
      throw broken("the dump ends within $var; copy the file again");
    }
    return words.text(0);
  }

  private static Values.Kind kind(String type) {
    return switch (type) {
      case "event" -> Values.Kind.EVENT;
      case "real", "realtime" -> Values.Kind.REAL;
      case "integer", "time", "parameter" -> Values.Kind.INTEGER;
      default -> Values.Kind.LOGIC;
    };
  }

  private static Variable.Range range(String text, int width) {
    int colon = text.indexOf(':');
    try {
      if (colon > 0 && text.endsWith("]")) {
        int left = Integer.parseInt(text.substring(1, colon).strip());
        int right = Integer.parseInt(text.substring(colon + 1, text.length() - 1).strip());
        return new Variable.Range(left, right);
      }
    } catch (NumberFormatException e) {
      // no range of bits, then
    }
    return new Variable.Range(width - 1, 0);
  }

  private UnreadableCaptureException broken(String what) {
    return new UnreadableCaptureException(file + ": line " + words.line() + ": " + what);
  }

  List<Variable> variables() {
    return variables;
  }

  Map<String, Values> byCode() {
    return byCode;
  }

  /** Power of ten of a tick in seconds; {@link Integer#MAX_VALUE} when not declared. */
  int tickPower() {
    return tickPower;
  }

  String timescaleText() {
    return timescale;
  }
}
