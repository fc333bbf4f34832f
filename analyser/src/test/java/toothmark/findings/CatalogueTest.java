package toothmark.findings;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.ResourceBundle;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

class CatalogueTest {

  private static final Path PAGES = Path.of("..", "docs", "findings");

  private static final Pattern MARKED_TERM =
      Pattern.compile("\\[([^]]+)]\\(\\.\\./glossary\\.md\\)");
  private static final Pattern GLOSSARY_TERM = Pattern.compile("(?m)^- \\*\\*([^*]+)\\*\\*");

  private static final ResourceBundle WORDS =
      ResourceBundle.getBundle("toothmark.findings.findings");
  private static final Pattern WORD = Pattern.compile("[A-Za-z]+(?:'s)?");

  static Stream<String> ids() {
    return Catalogue.CHECKS.stream().map(Check::id);
  }

  @Test
  void noTwoChecksMakeTheSameFinding() {
    assertThat(ids().distinct().count()).isEqualTo(Catalogue.CHECKS.size());
  }

  @ParameterizedTest
  @MethodSource("ids")
  void eachCheckHasItsPage(String id) throws IOException {
    String page = Files.readString(PAGES.resolve(id + ".md"));
    assertThat(page)
        .contains("Finding `" + id + "`.")
        .contains("## How it shows\n\n- ")
        .contains("## Limits, and what they rest on\n\n- ")
        .contains("## What it is told apart from\n\n- ")
        .contains("## Next test\n\n")
        .contains("## Caution\n\n");
    assertThat(Files.readString(PAGES.resolve("README.md"))).contains("(" + id + ".md)");
  }

  @Test
  void eachPageHasItsCheck() throws IOException {
    try (Stream<Path> pages = Files.list(PAGES)) {
      List<String> names =
          pages
              .map(p -> p.getFileName().toString().replace(".md", ""))
              .filter(n -> !n.equals("README"))
              .sorted()
              .toList();
      assertThat(names).isEqualTo(List.copyOf(new TreeSet<>(ids().toList())));
    }
  }

  private static List<String> glossary() throws IOException {
    return GLOSSARY_TERM
        .matcher(Files.readString(PAGES.resolveSibling("glossary.md")))
        .results()
        .flatMap(m -> Stream.of(m.group(1).split(", ")))
        .map(t -> t.toLowerCase(Locale.ROOT))
        .toList();
  }

  /** A word of the trade on a page leads to the glossary, which must explain it. */
  @Test
  void whatThePagesCallATermIsInTheGlossary() throws IOException {
    List<String> explained = glossary();
    List<String> marked = new ArrayList<>();
    try (Stream<Path> pages = Files.list(PAGES)) {
      for (Path page : pages.toList()) {
        MARKED_TERM.matcher(Files.readString(page)).results().forEach(m -> marked.add(m.group(1)));
      }
    }
    assertThat(marked)
        .hasSizeGreaterThan(40)
        .allMatch(t -> explained.stream().anyMatch(t.toLowerCase(Locale.ROOT)::startsWith));
  }

  /**
   * A word of a finding is plain English, as listed beside this test, or a term that the glossary
   * explains; a new one has to become either. Its name is explained by its page.
   */
  @Test
  void findingsSayNothingThatTheGlossaryLeavesUnexplained() throws IOException {
    Set<String> known = new TreeSet<>();
    for (String term : glossary()) {
      WORD.matcher(term).results().forEach(w -> known.add(stem(w.group())));
    }
    known.addAll(words("plain-words.txt"));
    Set<String> said = new TreeSet<>();
    WORDS.keySet().stream()
        .filter(key -> !key.endsWith(".name") && !key.contains(".owner"))
        .flatMap(key -> WORD.matcher(WORDS.getString(key)).results())
        .filter(w -> w.group().length() > 3)
        .forEach(w -> said.add(stem(w.group())));
    assertThat(said).hasSizeGreaterThan(300).isSubsetOf(known);
  }

  /**
   * An owner reads no glossary: the words said to him are plain English, or one of the few that
   * everyone who owns a car has heard.
   */
  @Test
  void ownersAreToldWithoutTermsOfTheTrade() throws IOException {
    Set<String> known = words("plain-words.txt");
    known.addAll(words("owner-words.txt"));
    Set<String> said = new TreeSet<>();
    for (String id : ids().toList()) {
      for (String key : List.of(id + ".owner", id + ".owner-next")) {
        assertThat(WORDS.getString(key)).as(key).endsWith(".").hasSizeBetween(20, 300);
        WORD.matcher(WORDS.getString(key))
            .results()
            .map(MatchResult::group)
            .filter(w -> w.length() > 3)
            .forEach(w -> said.add(stem(w)));
      }
    }
    assertThat(said).hasSizeGreaterThan(200).isSubsetOf(known);
  }

  private Set<String> words(String list) throws IOException {
    try (InputStream in = getClass().getResourceAsStream(list)) {
      String plain = new String(in.readAllBytes(), StandardCharsets.UTF_8);
      return new TreeSet<>(List.of(plain.split("\\s+")));
    }
  }

  private static String stem(String word) {
    return word.toLowerCase(Locale.ROOT).replaceFirst("(ing|ed|es|s|'s|s'|ly)$", "");
  }

  /** The ids that scripts rely on. */
  @ParameterizedTest
  @MethodSource("ids")
  void idsAreWordsJoinedByHyphens(String id) {
    assertThat(id).matches("[a-z0-9]+(-[a-z0-9]+)*");
  }

  @Test
  void aHealthyEngineHasNoFindings() {
    Diagnosis d = Diagnostician.diagnose(Scene.healthy().seen());
    assertThat(d.findings()).isEmpty();
    assertThat(d.verdict())
        .isEqualTo("Nothing wrong was found in 24 turns between 900 and 900\u202frev/min.");
    assertThat(d.nextStep()).isEmpty();
  }
}
