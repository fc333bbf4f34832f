package toothmark.findings;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.ResourceBundle;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.function.Function;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import toothmark.units.Interval;
import toothmark.units.Source;

/** Whether checks and their book agree, and how turns of phrase are put together. */
class WordsTest {

  private static final ResourceBundle BOOK =
      ResourceBundle.getBundle("toothmark.findings.findings");

  /** Calls of a check that say something, by keys under its id. */
  private static final Pattern SAYS =
      Pattern.compile("\\.(?:title|saw|sawIf|against|ratherThan|next|caution)\\(");

  private static final Pattern CANNOT_RUN = Pattern.compile("\\bcannotRun\\(");
  private static final Pattern KEY = Pattern.compile("[a-z0-9-]+");
  private static final Pattern NUMBER = Pattern.compile("\\.(?:one|two|many)$");

  private static final Map<String, String> SOURCES = new TreeMap<>();

  private static final Map<String, Check> CHECKS =
      Catalogue.CHECKS.stream().collect(Collectors.toMap(Check::id, Function.identity()));

  @BeforeAll
  static void read() throws IOException {
    for (Path file : Source.files("findings")) {
      String name = file.getFileName().toString().replace(".java", "");
      SOURCES.put(name, Source.of(file));
    }
  }

  private static String source(Check check) {
    String own = SOURCES.get(check.getClass().getSimpleName());
    return own + SOURCES.getOrDefault(check.getClass().getSuperclass().getSimpleName(), "");
  }

  private static Set<String> keys(String source, Pattern calls) {
    return Source.arguments(source, calls).stream()
        .flatMap(Source::literals)
        .filter(l -> KEY.matcher(l).matches())
        .collect(Collectors.toCollection(TreeSet::new));
  }

  private static boolean isThere(String key) {
    return BOOK.containsKey(key) || BOOK.containsKey(key + ".many");
  }

  @Test
  void whatACheckSaysIsInTheBook() {
    Set<String> absent = new TreeSet<>();
    CHECKS.forEach(
        (id, check) ->
            keys(source(check), SAYS).stream()
                .filter(k -> Stream.of(id + "." + k, "any." + k, k).noneMatch(WordsTest::isThere))
                .forEach(k -> absent.add(id + "." + k)));
    SOURCES.values().stream()
        .flatMap(s -> keys(s, CANNOT_RUN).stream())
        .map("any."::concat)
        .filter(k -> !isThere(k))
        .forEach(absent::add);
    assertThat(absent).isEmpty();
  }

  /** The usual title and next test where a check names none. */
  @Test
  void eachFindingHasANameATitleANextTestAndWordsForTheOwner() {
    Set<String> absent = new TreeSet<>();
    CHECKS.forEach(
        (id, check) ->
            Stream.of("name", "title", "next", "owner", "owner-next")
                .filter(k -> !isThere(id + "." + k) && !source(check).contains("." + k + "("))
                .forEach(k -> absent.add(id + "." + k)));
    assertThat(absent).isEmpty();
  }

  @Test
  void whatIsInTheBookIsSaid() {
    String all = String.join("", SOURCES.values());
    Set<String> literals = Source.literals(all).collect(Collectors.toSet());
    Set<String> shared = keys(all, SAYS);
    shared.addAll(keys(all, CANNOT_RUN));
    Set<String> helpers =
        SOURCES.entrySet().stream()
            .filter(e -> !e.getKey().endsWith("Check"))
            .flatMap(e -> keys(e.getValue(), SAYS).stream())
            .collect(Collectors.toSet());
    Set<String> idle = new TreeSet<>();
    for (String entry : BOOK.keySet()) {
      String key = NUMBER.matcher(entry).replaceFirst("");
      int dot = key.indexOf('.');
      String home = dot < 0 ? key : key.substring(0, dot);
      String name = key.substring(dot + 1);
      boolean said =
          CHECKS.containsKey(home)
              ? List.of("name", "title", "next", "owner", "owner-next").contains(name)
                  || helpers.contains(name)
                  || keys(source(CHECKS.get(home)), SAYS).contains(name)
              : literals.contains(key)
                  || (home.equals("any") ? shared.contains(name) : literals.contains(home + "."));
      if (!said) {
        idle.add(entry);
      }
    }
    assertThat(idle).isEmpty();
  }

  @Test
  void aFewSpansAreNamedAndTheRestCounted() {
    List<Interval> spans =
        Stream.of(1.0, 2.0, 3.0, 4.0, 5.0).map(t -> new Interval(t, t + 0.5)).toList();
    String one = "1.000 to 1.500\u202fs";
    assertThat(Words.spans(spans.subList(0, 1))).isEqualTo(one);
    assertThat(Words.spans(spans.subList(0, 2))).isEqualTo(one + " and 2.000 to 2.500\u202fs");
    assertThat(Words.spans(spans))
        .isEqualTo(one + ", 2.000 to 2.500\u202fs, 3.000 to 3.500\u202fs and 2 more");
  }

  @Test
  void timesAreCountedInWordsUpToTwo() {
    assertThat(Stream.of(1, 2, 12).map(Words::times)).containsExactly("once", "twice", "12 times");
  }
}
