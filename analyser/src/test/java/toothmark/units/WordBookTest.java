package toothmark.units;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.params.provider.Arguments.arguments;

import java.io.IOException;
import java.util.List;
import java.util.ResourceBundle;
import java.util.Set;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;

class WordBookTest {

  private static final Pattern KEY = Pattern.compile("[a-z]\\w*\\.[\\w.-]*");

  /** Names of files look like keys. */
  private static final Pattern FILE = Pattern.compile(".*\\.(?:html|json|csv|css|pdf|svg|toml)");

  /** Two words in a row. */
  private static final Pattern WORDS = Pattern.compile("\\p{L}{2,} \\p{L}*\\p{Ll}\\p{L}*");

  /**
   * What is no words though it looks so: markup, classes of its elements, names of letterings and
   * plots.
   */
  private static final Pattern FOR_MACHINES =
      Pattern.compile("[<>{}=]|^(?:badge|finding|notes|small) [a-z]+$|^Fira |^trigger wheel$");

  private static final Pattern THROWN =
      Pattern.compile("\\b(?:\\w+(?:Exception|Error)|refused)\\(");

  private static final Pattern ASKED =
      Pattern.compile("\\b(?:Wording|Phrases|BOOK)\\.(?:of|count)\\(\\s*\"([^\"]+)\"\\s*[,)]");

  /** Each package with a book of its own that its own code asks. */
  static Stream<Arguments> books() {
    return Stream.of(
        arguments("chart", "toothmark.chart.figures"),
        arguments("desktop", "toothmark.desktop.desk"),
        arguments("examination", "toothmark.examination.examination"),
        arguments("receiver", "toothmark.receiver.receiver"),
        arguments("report", "toothmark.report.report"),
        arguments("timing", "toothmark.timing.timing"),
        arguments("wheel", "toothmark.wheel.wheel"));
  }

  private static List<String> texts(String part) throws IOException {
    return Source.literals(Source.of(part)).toList();
  }

  @ParameterizedTest
  @MethodSource("books")
  void everyPhraseThatIsAskedForIsThere(String part, String book) throws IOException {
    Set<String> keys = ResourceBundle.getBundle(book).keySet();
    assertThat(ASKED.matcher(Source.of(part)).results().map(m -> m.group(1)))
        .allMatch(k -> keys.contains(k) || keys.contains(k + ".many"));
  }

  /** What is handed to a method that asks for it at least begins a key. */
  @ParameterizedTest
  @CsvSource({"chart, toothmark.chart.figures", "report, toothmark.report.report"})
  void everyTextThatLooksLikeAKeyIsOne(String part, String book) throws IOException {
    Set<String> keys = ResourceBundle.getBundle(book).keySet();
    Set<String> homes =
        keys.stream().map(k -> k.replaceFirst("\\..*", ".")).collect(Collectors.toSet());
    assertThat(texts(part))
        .filteredOn(t -> KEY.matcher(t).matches() && !FILE.matcher(t).matches())
        .filteredOn(t -> homes.contains(t.replaceFirst("\\..*", ".")))
        .allMatch(t -> keys.stream().anyMatch(k -> (k + ".").startsWith(t)));
  }

  @ParameterizedTest
  @MethodSource("books")
  void everyPhraseIsAskedFor(String part, String book) throws IOException {
    Set<String> texts = Set.copyOf(texts(part));
    assertThat(ResourceBundle.getBundle(book).keySet())
        .allMatch(
            key ->
                texts.contains(key)
                    || texts.contains(key.replaceFirst("\\.(none|one|many)$", ""))
                    || texts.stream().anyMatch(t -> t.endsWith(".") && key.startsWith(t)));
  }

  @ParameterizedTest
  @ValueSource(strings = {"chart", "findings", "report"})
  void noSentenceIsWrittenBesideTheBook(String part) throws IOException {
    List<String> beside =
        Source.literals(Source.without(Source.of(part), THROWN))
            .filter(t -> WORDS.matcher(t).find() && !FOR_MACHINES.matcher(t).find())
            .toList();
    assertThat(beside).isEmpty();
  }

  /**
   * One apostrophe among places would leave those behind it unfilled; two of a bare phrase show.
   */
  @ParameterizedTest
  @MethodSource("books")
  @CsvSource("findings, toothmark.findings.findings")
  void apostrophesAreDoubledJustWherePlacesAre(String part, String book) {
    ResourceBundle words = ResourceBundle.getBundle(book);
    assertThat(words.keySet())
        .allMatch(
            key -> {
              String phrase = words.getString(key);
              boolean places = phrase.matches("(?s).*\\{\\d.*");
              String bare = phrase.replace("''", "");
              return places ? !bare.contains("'") : bare.equals(phrase);
            });
  }

  @Test
  void aPlaceIsFilledAndAPhraseWithoutPlacesIsTakenAsItIs() {
    WordBook words = new WordBook("toothmark.desktop.desk");
    assertThat(words.of("progress.reading", "a.csv")).isEqualTo("Reading a.csv");
    assertThat(words.of("whatIf.none")).contains("sensor's");
    assertThat(words.find("no.such.phrase")).isEmpty();
  }

  @Test
  void numbersChooseTheFormOfAPhrase() {
    WordBook words = new WordBook("toothmark.report.report");
    assertThat(words.count(0, "index.faulty")).isEqualTo("none shows a fault");
    assertThat(words.count(1, "index.faulty")).isEqualTo("1 shows a fault");
    assertThat(words.count(1234, "index.faulty")).isEqualTo("1\u202f234 show a fault");
    assertThat(words.count(0, "losses.strays")).isEqualTo("0 stray edges");
    assertThat(words.count(2, "losses.teeth", "4, 5")).isEqualTo("teeth 4, 5");
  }

  /** So that no number comes out as another country writes it. */
  @Test
  void valuesAreWrittenAsTheyAre() {
    assertThat(new WordBook("toothmark.report.report").of("screen.more", 12345))
        .isEqualTo("12345 more in the report");
  }
}
