package toothmark.accuracy;

import java.io.IOException;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import toothmark.accuracy.chain.ChainSuite;
import toothmark.accuracy.decode.DecodeSuite;
import toothmark.accuracy.diagnosis.DiagnosisSuite;
import toothmark.accuracy.timing.TimingSuite;
import toothmark.simulator.SimulatedCapture;
import toothmark.simulator.file.CaseFolder;
import toothmark.simulator.file.CaseFolder.Compression;

/** The command line. Exit 0: done; 2: unusable arguments; 1: anything else. */
public final class Main {

  private static final String HELP =
      """
      Measures the analyser on generated captures and writes docs/accuracy.md.

        measure-accuracy                      all suites
        measure-accuracy --suite NAME         one: decode, timing, diagnosis, chain
        measure-accuracy --study NAME         one study of a suite, printed and not written
        measure-accuracy --size 0.1           with a tenth of the captures
        measure-accuracy --worst 100          lists so many of the worst cases of a study, not 8
        measure-accuracy --out DIR            writes accuracy.md and pictures there
        measure-accuracy --case NAME          one case of a study, everything printed
        measure-accuracy --case NAME --dump DIR
                                              the same, and its capture, job sheet and truth in DIR
      """;

  private static final List<String> OPTIONS =
      List.of("--root", "--suite", "--study", "--size", "--worst", "--out", "--case", "--dump");

  private final Map<String, String> options;
  private final PrintStream out = new PrintStream(System.out, true, StandardCharsets.UTF_8);

  private Main(Map<String, String> options) {
    this.options = options;
  }

  /**
   * Runs the command.
   *
   * @param args as in the help text
   */
  public static void main(String[] args) {
    int code;
    try {
      code = run(List.of(args));
    } catch (IllegalArgumentException e) {
      System.err.println(
          "measure-accuracy: " + e.getMessage() + "; --help shows what can be asked");
      code = 2;
    } catch (IOException e) {
      System.err.println("measure-accuracy: cannot write: " + e.getMessage());
      code = 1;
    }
    System.exit(code);
  }

  private static int run(List<String> args) throws IOException {
    if (args.contains("--help")) {
      System.out.print(HELP);
      return 0;
    }
    Map<String, String> options = new HashMap<>();
    for (int i = 0; i < args.size(); i += 2) {
      if (!OPTIONS.contains(args.get(i))) {
        throw new IllegalArgumentException("no option '" + args.get(i) + "'");
      }
      if (i + 1 == args.size()) {
        throw new IllegalArgumentException(args.get(i) + " needs a value");
      }
      options.put(args.get(i), args.get(i + 1));
    }
    new Main(options).run();
    return 0;
  }

  private List<Suite> suites() {
    return List.of(
        DecodeSuite.suite(), TimingSuite.suite(), DiagnosisSuite.suite(), ChainSuite.suite(root()));
  }

  private void run() throws IOException {
    if (options.containsKey("--case")) {
      one(CaseName.parse(options.get("--case")));
    } else if (options.containsKey("--study")) {
      Study study = study(options.get("--study"));
      Suite alone = new Suite(study.name(), study.name(), "", List.of(study));
      out.print(section(alone).markdown());
    } else {
      for (Suite suite : chosen()) {
        AccuracyPage.replace(
            folder().resolve("accuracy.md"), suite.name(), section(suite).markdown());
      }
    }
  }

  private List<Suite> chosen() {
    String name = options.get("--suite");
    List<Suite> chosen =
        suites().stream().filter(s -> name == null || s.name().equals(name)).toList();
    if (chosen.isEmpty()) {
      throw new IllegalArgumentException("no suite '" + name + "'");
    }
    return chosen;
  }

  private Section section(Suite suite) {
    double size = size();
    String command =
        "tools/measure-accuracy --suite " + suite.name() + (size == 1 ? "" : " --size " + size);
    Section section = new Section(suite, command, folder(), worst());
    Run run = new Run(size, section);
    suite.studies().forEach(s -> s.run(run));
    return section;
  }

  private double size() {
    String text = options.getOrDefault("--size", "1");
    if (!text.matches("\\d*\\.?\\d+")) {
      throw new IllegalArgumentException("--size takes a positive number, not '" + text + "'");
    }
    return Double.parseDouble(text);
  }

  private int worst() {
    String text = options.getOrDefault("--worst", Integer.toString(Section.WORST_OF_A_STUDY));
    if (!text.matches("\\d{1,6}")) {
      throw new IllegalArgumentException("--worst takes a whole number, not '" + text + "'");
    }
    return Integer.parseInt(text);
  }

  private Path folder() {
    String out = options.get("--out");
    return out == null ? root().resolve("docs") : Path.of(out);
  }

  private Path root() {
    return Path.of(options.getOrDefault("--root", "."));
  }

  private Study study(String name) {
    List<Study> all = new ArrayList<>();
    suites().forEach(s -> all.addAll(s.studies()));
    return all.stream()
        .filter(s -> s.name().equals(name))
        .findFirst()
        .orElseThrow(
            () ->
                new IllegalArgumentException(
                    "no study '" + name + "' but " + all.stream().map(Study::name).toList()));
  }

  private void one(CaseName name) throws IOException {
    Study study = study(name.study());
    out.println(study.explain(name));
    if (options.containsKey("--dump")) {
      SimulatedCapture capture = study.capture(name);
      Path folder = Path.of(options.get("--dump"));
      new CaseFolder(capture, study.dialect(name, capture), Compression.NONE).write(folder, "");
      out.println("written to " + folder);
    }
  }
}
