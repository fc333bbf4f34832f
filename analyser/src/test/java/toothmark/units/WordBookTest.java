package toothmark.units;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.ResourceBundle;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class WordBookTest {

  private static final Path SOURCES = Path.of("src/main/java/toothmark");

  /** A text in the source that may be a key or, before a plus, the beginning of one. */
  private static final Pattern TEXT = Pattern.compile("\"([A-Za-z0-9.-]+)\"(\\s*\\+)?");

  private static final Pattern ASKED =
      Pattern.compile("(?:Wording|Phrases)\\.of\\(\\s*\"([^\"]+)\"\\s*[,)]");

  @ParameterizedTest
  @CsvSource({"chart, toothmark.chart.figures", "desktop, toothmark.desktop.desk"})
  void everyPhraseThatIsAskedForIsThere(String part, String book) throws IOException {
    WordBook words = new WordBook(book);
    Matcher asked = ASKED.matcher(source(part));
    List<String> absent = new ArrayList<>();
    while (asked.find()) {
      if (words.find(asked.group(1)).isEmpty()) {
        absent.add(asked.group(1));
      }
    }
    assertThat(absent).isEmpty();
  }

  @ParameterizedTest
  @CsvSource({"chart, toothmark.chart.figures", "desktop, toothmark.desktop.desk"})
  void everyPhraseIsAskedFor(String part, String book) throws IOException {
    List<String> whole = new ArrayList<>();
    List<String> beginnings = new ArrayList<>();
    Matcher text = TEXT.matcher(source(part));
    while (text.find()) {
      (text.group(2) == null ? whole : beginnings).add(text.group(1));
    }
    assertThat(ResourceBundle.getBundle(book).keySet())
        .allMatch(
            key ->
                whole.contains(key)
                    || whole.contains(key.replaceFirst("\\.(none|one|many)$", ""))
                    || beginnings.stream().anyMatch(b -> b.endsWith(".") && key.startsWith(b)));
  }

  @Test
  void aPlaceIsFilledAndAPhraseWithoutPlacesIsTakenAsItIs() {
    WordBook words = new WordBook("toothmark.desktop.desk");
    assertThat(words.of("progress.reading", "a.csv")).isEqualTo("Reading a.csv");
    assertThat(words.of("whatIf.none")).contains("sensor's");
    assertThat(words.find("no.such.phrase")).isEmpty();
  }

  private static String source(String part) throws IOException {
    StringBuilder all = new StringBuilder();
    try (Stream<Path> files = Files.list(SOURCES.resolve(part))) {
      for (Path file : files.toList()) {
        all.append(Files.readString(file));
      }
    }
    return all.toString();
  }
}
