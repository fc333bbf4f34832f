package toothmark.accuracy.chain;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Collectors;
import toothmark.accuracy.CaseName;
import toothmark.accuracy.Dice;
import toothmark.accuracy.Run;
import toothmark.accuracy.Section;
import toothmark.accuracy.Section.Worst;
import toothmark.accuracy.Study;
import toothmark.simulator.Recorder;
import toothmark.simulator.Scenario;
import toothmark.simulator.Scenarios;
import toothmark.simulator.SimulatedCapture;
import toothmark.simulator.Simulation;
import toothmark.simulator.file.CaseFolder;
import toothmark.simulator.file.CaseFolder.Compression;
import toothmark.simulator.file.Dialect;

/** Random engines, faults, recorders and ways of writing, from file to result files. */
final class RandomCases implements Study {

  private static final int CASES = 300;
  private static final int HEALTHY_EVERY = 4;

  private static final List<Dialect> SCOPE =
      List.of(
          Dialect.PLAIN,
          Dialect.PLAIN,
          Dialect.UNITS_ROW,
          Dialect.DECIMAL_COMMA,
          Dialect.NO_TIME,
          Dialect.SAMPLE_NUMBERS,
          Dialect.WORDS_AND_GAPS);
  private static final List<Dialect> LEVELS =
      List.of(Dialect.LOGIC_CHANGES, Dialect.VALUE_CHANGE_DUMP);
  private static final List<Dialect> LISTS =
      List.of(Dialect.EDGES, Dialect.PERIODS, Dialect.PERIODS_IN_COUNTS);

  private record Outcome(CaseName name, Dialect dialect, CaseScore score) {}

  @Override
  public String name() {
    return "files";
  }

  @Override
  public SimulatedCapture capture(CaseName name) {
    long seed = name.seed();
    Scenario scenario =
        name.number() % HEALTHY_EVERY == 0 ? Scenarios.healthy(seed) : Scenarios.faulty(seed);
    scenario = scenario.named(name.fileName(), scenario.seed());
    if (dialect(name, scenario.recorder().kind()) == Dialect.SAMPLE_NUMBERS) {
      scenario = scenario.withRecorder(scenario.recorder().withStart(0.0)); // it cannot say when
    }
    return Simulation.of(scenario).run();
  }

  @Override
  public Dialect dialect(CaseName name, SimulatedCapture capture) {
    return dialect(name, capture.scenario().recorder().kind());
  }

  private static Dialect dialect(CaseName name, Recorder.Kind kind) {
    Dice dice = Dice.of(name, "dialect");
    return switch (kind) {
      case OSCILLOSCOPE -> dice.pick(SCOPE);
      case LOGIC_ANALYSER -> dice.pick(LEVELS);
      case EDGE_LOGGER -> dice.pick(LISTS);
    };
  }

  private Outcome measure(CaseName name) {
    SimulatedCapture capture = capture(name);
    Dialect dialect = dialect(name, capture);
    boolean scope = capture.scenario().recorder().kind() == Recorder.Kind.OSCILLOSCOPE;
    try {
      Path folder = Files.createTempDirectory("accuracy-case");
      try {
        new CaseFolder(capture, dialect, scope ? Compression.GZIP : Compression.NONE)
            .write(folder, "");
        return new Outcome(name, dialect, CaseRunner.run(folder));
      } finally {
        CaseRunner.delete(folder);
      }
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  @Override
  public String explain(CaseName name) {
    Scenario s = capture(name).scenario();
    Outcome o = measure(name);
    return String.join(
        "\n",
        "case " + s.name() + ", seed " + s.seed() + ", written as " + o.dialect,
        "wheel " + s.wheel().pattern().name() + ", told " + s.toldPattern() + ", " + s.sensor(),
        "recorder " + s.recorder(),
        "speed " + s.speed(),
        "faults " + s.faults() + ", fair to say " + s.fairFindings(),
        o.score.words());
  }

  @Override
  public void run(Run run) {
    Section section = run.section();
    section.study(
        "Random cases",
        """
        Engines, wheels, sensors, speeds, recorders and sampling as the simulator draws them, one in four healthy, the others with one fault, now and then two; written in one of the ways recorders write, read, examined, and the result files compared. *Labels*: share of teeth with an edge that got their number; *as seen*: and were not called missing. *Scatter*: of tooth instants. *In 2 u*: errors within twice the stated standard uncertainty. *Sync counts agree*: losses reported against a follower written anew, over the reported receiver edges.
        """);
    List<Outcome> all = run.measure(this, "any", run.captures(CASES), this::measure);
    ScoreTables tables = new ScoreTables("written as");
    Map<Dialect, List<CaseScore>> byDialect =
        all.stream()
            .collect(
                Collectors.groupingBy(
                    Outcome::dialect,
                    TreeMap::new,
                    Collectors.mapping(Outcome::score, Collectors.toList())));
    byDialect.forEach((dialect, scores) -> tables.row(words(dialect), scores));
    List<CaseScore> scores = all.stream().map(Outcome::score).toList();
    tables.row("**all**", scores);
    section.table(tables.signal());
    section.table(tables.timing());
    Aims.state(section, scores);
    List<Worst> worst = new ArrayList<>();
    for (Outcome o : all) {
      if (o.score.badness() > 0) {
        worst.add(new Worst(o.name, o.score.badness(), o.score.words()));
      }
    }
    section.worst(worst);
  }

  private static String words(Dialect dialect) {
    return dialect.name().toLowerCase(java.util.Locale.ROOT).replace('_', ' ');
  }
}
