package toothmark.simulator.command;

import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import toothmark.simulator.Recorder;
import toothmark.simulator.Scenario;
import toothmark.simulator.Scenarios;
import toothmark.simulator.Simulation;
import toothmark.simulator.file.CaseFolder;
import toothmark.simulator.file.CaseFolder.Compression;
import toothmark.simulator.file.Dialect;

/** A set of random cases on the disk; every fourth one is healthy. */
final class RandomSet {
  private static final int HEALTHY_EVERY = 4;
  private static final List<Dialect> SCOPE_DIALECTS =
      List.of(
          Dialect.PLAIN,
          Dialect.PLAIN,
          Dialect.UNITS_ROW,
          Dialect.DECIMAL_COMMA,
          Dialect.NO_TIME,
          Dialect.SAMPLE_NUMBERS);
  private static final List<Dialect> LEVEL_DIALECTS =
      List.of(Dialect.LOGIC_CHANGES, Dialect.VALUE_CHANGE_DUMP);
  private static final List<Dialect> LIST_DIALECTS =
      List.of(Dialect.EDGES, Dialect.PERIODS, Dialect.PERIODS_IN_COUNTS);

  private RandomSet() {}

  static Scenario scenario(long seed, int index) {
    long own = seed * 100_000 + index;
    return index % HEALTHY_EVERY == 0 ? Scenarios.healthy(own) : Scenarios.faulty(own);
  }

  /** Writes one case under a folder and returns its name. */
  static String write(Scenario scenario, Path folder) throws IOException {
    Dialect dialect = dialectFor(scenario);
    Compression compression =
        scenario.recorder().kind() == Recorder.Kind.OSCILLOSCOPE
            ? Compression.GZIP
            : Compression.NONE;
    new CaseFolder(Simulation.of(scenario).run(), dialect, compression)
        .write(folder.resolve(scenario.name()), "");
    return scenario.name();
  }

  static Dialect dialectFor(Scenario scenario) {
    List<Dialect> choice =
        switch (scenario.recorder().kind()) {
          case OSCILLOSCOPE -> SCOPE_DIALECTS;
          case LOGIC_ANALYSER -> LEVEL_DIALECTS;
          case EDGE_LOGGER -> LIST_DIALECTS;
        };
    return choice.get((int) Math.floorMod(scenario.seed(), (long) choice.size()));
  }
}
