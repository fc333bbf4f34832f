package toothmark.simulator.command;

import java.io.IOException;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import toothmark.simulator.Fault;
import toothmark.simulator.Scenario;
import toothmark.simulator.Scenarios;
import toothmark.simulator.Simulation;
import toothmark.simulator.file.CaseFolder;

/** The simulator's command line. Exit 0: written; 2: unusable arguments; 1: anything else. */
public final class Main {
  private static final String HELP =
      """
      Writes simulated captures with their truth.

        make-samples                                  the samples of signal-samples, all of them
        make-samples --samples DIR                    the same, elsewhere
        make-samples --scenario NAME --seed N --out DIR
                                                      one case: a sample, a fault, or 'healthy'
        make-samples --set N --seed S --out DIR       N random cases, every fourth one healthy
        make-samples --list                           the names for --scenario

      Examples:
        make-samples --scenario wheel-run-out --seed 7 --out /tmp/cases
        make-samples --scenario wheel-run-out+timing-delay --seed 7 --out /tmp/cases
        make-samples --set 40 --seed 2 --out /tmp/cases

      The same arguments always give the same files. DIR is made when missing; files of the same
      name in it are replaced.
      """;

  private Main() {}

  /**
   * Runs the command.
   *
   * @param args as in the help text
   */
  public static void main(String[] args) {
    PrintStream out = new PrintStream(System.out, true, StandardCharsets.UTF_8);
    PrintStream err = new PrintStream(System.err, true, StandardCharsets.UTF_8);
    int code;
    try {
      code = run(List.of(args), out);
    } catch (IllegalArgumentException e) {
      err.println("make-samples: " + e.getMessage() + "; --help shows what can be asked for");
      code = 2;
    } catch (IOException e) {
      err.println("make-samples: cannot write: " + e.getMessage());
      code = 1;
    }
    System.exit(code);
  }

  static int run(List<String> args, PrintStream out) throws IOException {
    if (args.contains("--help") || args.isEmpty()) {
      out.print(HELP);
    } else if (args.equals(List.of("--list"))) {
      names().forEach(out::println);
    } else {
      Map<String, String> options = options(args);
      if (options.containsKey("--samples")) {
        samples(Path.of(options.get("--samples")), out);
      } else if (options.containsKey("--set")) {
        set(options, out);
      } else {
        out.println(one(options));
      }
    }
    return 0;
  }

  private static Map<String, String> options(List<String> args) {
    Map<String, String> options = new HashMap<>();
    List<String> known = List.of("--samples", "--scenario", "--set", "--seed", "--out");
    for (int i = 0; i < args.size(); i += 2) {
      if (!known.contains(args.get(i))) {
        throw new IllegalArgumentException("no option '" + args.get(i) + "'");
      }
      if (i + 1 == args.size()) {
        throw new IllegalArgumentException(args.get(i) + " needs a value");
      }
      options.put(args.get(i), args.get(i + 1));
    }
    return options;
  }

  private static String needed(Map<String, String> options, String name) {
    return Optional.ofNullable(options.get(name))
        .orElseThrow(() -> new IllegalArgumentException(name + " is missing"));
  }

  private static long number(Map<String, String> options, String name) {
    String text = needed(options, name);
    try {
      return Long.parseLong(text);
    } catch (NumberFormatException e) {
      throw new IllegalArgumentException(name + " takes a whole number, not '" + text + "'", e);
    }
  }

  private static void samples(Path folder, PrintStream out) throws IOException {
    List<Sample> samples = SampleCatalogue.all();
    for (Sample sample : samples) {
      write(sample, folder);
      out.println(sample.name());
    }
    Files.writeString(folder.resolve("README.md"), CataloguePage.of(samples));
  }

  private static void write(Sample sample, Path folder) throws IOException {
    new CaseFolder(Simulation.of(sample.scenario()).run(), sample.dialect(), sample.compression())
        .write(folder.resolve(sample.name()), sample.shows());
  }

  private static void set(Map<String, String> options, PrintStream out) throws IOException {
    Path folder = Path.of(needed(options, "--out"));
    long seed = number(options, "--seed");
    long count = number(options, "--set");
    for (int i = 0; i < count; i++) {
      out.println(RandomSet.write(RandomSet.scenario(seed, i), folder));
    }
  }

  private static String one(Map<String, String> options) throws IOException {
    String name = needed(options, "--scenario");
    Path folder = Path.of(needed(options, "--out"));
    long seed = number(options, "--seed");
    for (Sample sample : SampleCatalogue.all()) {
      if (sample.name().equals(name)) {
        Scenario reseeded = sample.scenario().named(name, seed);
        Sample changed =
            new Sample(
                reseeded, sample.dialect(), sample.compression(), sample.story(), sample.shows());
        write(changed, folder);
        return name;
      }
    }
    return RandomSet.write(scenario(name, seed), folder);
  }

  private static Scenario scenario(String name, long seed) {
    if (name.equals("healthy")) {
      return Scenarios.healthy(seed);
    }
    List<Fault> faults = new ArrayList<>();
    for (String word : name.split("\\+")) {
      faults.add(fault(word));
    }
    return Scenarios.with(faults, seed);
  }

  private static Fault fault(String word) {
    for (Fault fault : Fault.values()) {
      if (words(fault).equals(word)) {
        return fault;
      }
    }
    throw new IllegalArgumentException("no sample or fault '" + word + "'; --list names them");
  }

  private static String words(Fault fault) {
    return fault.name().toLowerCase(Locale.ROOT).replace('_', '-');
  }

  private static List<String> names() {
    List<String> names = new ArrayList<>();
    SampleCatalogue.all().forEach(s -> names.add(s.name()));
    names.add("healthy");
    for (Fault fault : Fault.values()) {
      names.add(words(fault));
    }
    return names;
  }
}
