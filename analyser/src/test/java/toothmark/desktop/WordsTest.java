package toothmark.desktop;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Properties;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.MatchResult;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/** Whether all words of the window stand in its book, and all of the book in the window. */
class WordsTest {

  private static final Path SOURCES = Path.of("src/main/java/toothmark/desktop");
  private static final Path BOOK = Path.of("src/main/resources/toothmark/desktop/desk.properties");

  private static final Pattern COMMENT = Pattern.compile("(?s)/\\*.*?\\*/|(?m)^\\s*//.*$");
  private static final Pattern LITERAL = Pattern.compile("\"((?:[^\"\\\\]++|\\\\.)*+)\"");

  /** Calls that show their arguments to a person. */
  private static final Pattern SHOWN =
      Pattern.compile(
          "\\b(?:setText|setTitle|setToolTipText|setString|setDialogTitle|drawString|hint|tag|say"
              + "|welcome|Complaint|Progress|addTab|setAccessibleName|setAccessibleDescription"
              + "|J(?:Label|Button|Menu|MenuItem|CheckBox|Frame|Dialog|RadioButtonMenuItem)"
              + "|show(?:Message|Confirm|Option|Input)Dialog)\\(");

  /**
   * Calls whose literals are no words: keys of the book, names of parts, what a programmer reads.
   */
  private static final Pattern UNSHOWN =
      Pattern.compile(
          "\\b(?:Phrases\\.of|Phrases\\.find|named|field|setName|commands\\.\\w+|\\w+(?:Exception|Error))\\(");

  /** Units are the same in every language. */
  private static final Set<String> UNITS = Set.of("s", "ms", "V", "mm", "Sa/s");

  /** Two words in a row; keys of the keyboard are in capitals. */
  private static final Pattern WORDS = Pattern.compile("\\p{L}{2,} \\p{L}*\\p{Ll}\\p{L}*");

  /** What the layout manager, the keyboard and the page in HTML read. */
  private static final Pattern FOR_MACHINES =
      Pattern.compile(
          "\\b(?:insets|gap\\w*|wmin|hmin|grow\\w*|span|cell|sizegroup)\\b|[<>{}]|^(?:menu|alt|shift) |^\\\\n$");

  @Test
  void noWordsAreWrittenBesideTheBook() throws Exception {
    List<String> found = new ArrayList<>();
    for (Path file : sources()) {
      String source = COMMENT.matcher(Files.readString(file)).replaceAll("");
      String spoken = without(source, UNSHOWN);
      for (String argument : arguments(spoken, SHOWN)) {
        literals(argument)
            .filter(l -> l.matches(".*\\p{L}.*") && !UNITS.contains(l))
            .filter(l -> !FOR_MACHINES.matcher(l).find())
            .forEach(l -> found.add(file.getFileName() + ": " + l));
      }
      literals(spoken)
          .filter(l -> WORDS.matcher(l).find() && !FOR_MACHINES.matcher(l).find())
          .forEach(l -> found.add(file.getFileName() + ": " + l));
    }
    assertThat(found).isEmpty();
  }

  @Test
  void theScanFindsWhatItLooksFor() {
    String source =
        "a.setText(\"Open\" + Phrases.of(\"k\")); b(\"two words\"); throw new XError(\"a b\");";
    String spoken = without(source, UNSHOWN);
    assertThat(arguments(spoken, SHOWN).stream().flatMap(WordsTest::literals))
        .containsExactly("Open");
    assertThat(literals(spoken).filter(l -> WORDS.matcher(l).find())).containsExactly("two words");
  }

  /** Keys made of parts count by their first part. */
  @Test
  void everyPhraseOfTheBookIsAskedFor() throws Exception {
    StringBuilder all = new StringBuilder();
    for (Path file : sources()) {
      all.append(Files.readString(file));
    }
    Properties book = new Properties();
    try (var in = Files.newBufferedReader(BOOK)) {
      book.load(in);
    }
    Set<String> asked = new TreeSet<>(literals(all.toString()).toList());
    List<String> idle =
        book.stringPropertyNames().stream()
            .filter(key -> !asked.contains(key))
            .filter(key -> asked.stream().noneMatch(a -> a.endsWith(".") && key.startsWith(a)))
            .sorted()
            .toList();
    assertThat(idle).isEmpty();
  }

  private static List<Path> sources() throws Exception {
    try (Stream<Path> files = Files.list(SOURCES)) {
      return files.filter(f -> f.toString().endsWith(".java")).sorted().toList();
    }
  }

  private static Stream<String> literals(String source) {
    return LITERAL.matcher(source).results().map(m -> m.group(1));
  }

  private static String without(String source, Pattern calls) {
    StringBuilder rest = new StringBuilder();
    Matcher m = calls.matcher(source);
    int from = 0;
    while (m.find(from)) {
      rest.append(source, from, m.start());
      from = end(source, m.end());
    }
    return rest.append(source.substring(from)).toString();
  }

  private static List<String> arguments(String source, Pattern calls) {
    return calls
        .matcher(source)
        .results()
        .map(MatchResult::end)
        .map(start -> source.substring(start, end(source, start)))
        .toList();
  }

  /** Offset after the bracket that closes a call whose arguments begin at an offset. */
  private static int end(String source, int start) {
    int depth = 1;
    boolean quoted = false;
    int at = start;
    for (; depth > 0; at++) {
      char c = source.charAt(at);
      if (quoted && c == '\\') {
        at++;
      } else if (c == '"') {
        quoted = !quoted;
      } else if (!quoted) {
        depth += c == '(' ? 1 : c == ')' ? -1 : 0;
      }
    }
    return at;
  }
}
