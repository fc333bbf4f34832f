package toothmark;

import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;

import com.tngtech.archunit.core.domain.JavaClasses;
import com.tngtech.archunit.core.importer.ClassFileImporter;
import com.tngtech.archunit.core.importer.ImportOption;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;

/** Data flows one way through the packages; so do imports. */
class PackageArrowsTest {

  /** In the order in which data flows: a package imports only from those before it. */
  private static final List<String> FLOW =
      List.of(
          "units",
          "capture",
          "edges",
          "receiver",
          "wheel",
          "rotation",
          "ignition",
          "timing",
          "findings",
          "examination",
          "compare",
          "chart",
          "report");

  private static final JavaClasses CLASSES =
      new ClassFileImporter()
          .withImportOption(new ImportOption.DoNotIncludeTests())
          .importPackages("toothmark");

  @TestFactory
  Stream<DynamicTest> importsPointUpstreamOnly() {
    List<DynamicTest> tests = new ArrayList<>();
    for (int i = 0; i < FLOW.size(); i++) {
      String from = FLOW.get(i);
      List<String> later = new ArrayList<>(FLOW.subList(i + 1, FLOW.size()));
      later.addAll(List.of("cli", "desktop"));
      tests.add(
          DynamicTest.dynamicTest(
              from, () -> forbid(from, "a stage sees only the results of earlier stages", later)));
    }
    return tests.stream();
  }

  @Test
  void wheelSeesEdgesOnly() {
    forbid(
        "wheel",
        "teeth are named from edges, never from samples or from what a controller made of them",
        List.of("capture", "receiver"));
  }

  @Test
  void ignitionKnowsNothingOfTheWheel() {
    forbid(
        "ignition",
        "sparks are placed by the crank's angle alone, whatever wheel gave it",
        List.of("wheel", "receiver"));
  }

  @Test
  void theTwoDoorsDoNotKnowEachOther() {
    forbid("cli", "the command line must start without a window system", List.of("desktop"));
    forbid("desktop", "the window must not print or exit", List.of("cli"));
  }

  @Test
  void swingStaysInTheDesktop() {
    noClasses()
        .that()
        .resideOutsideOfPackage("toothmark.desktop..")
        .should()
        .dependOnClassesThat()
        .resideInAnyPackage("javax.swing..")
        .because("everything else runs without a display")
        .check(CLASSES);
  }

  @Test
  void theCommandLineParserStaysInCli() {
    noClasses()
        .that()
        .resideOutsideOfPackage("toothmark.cli..")
        .should()
        .dependOnClassesThat()
        .resideInAnyPackage("picocli..")
        .because("arguments are the concern of one door only")
        .check(CLASSES);
  }

  private static void forbid(String from, String reason, List<String> targets) {
    noClasses()
        .that()
        .resideInAPackage("toothmark." + from + "..")
        .should()
        .dependOnClassesThat()
        .resideInAnyPackage(
            targets.stream().map(t -> "toothmark." + t + "..").toArray(String[]::new))
        .because(reason)
        .allowEmptyShould(true)
        .check(CLASSES);
  }
}
