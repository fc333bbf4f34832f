package toothmark.findings;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.TreeSet;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

class CatalogueTest {

  private static final Path PAGES = Path.of("..", "docs", "findings");

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
