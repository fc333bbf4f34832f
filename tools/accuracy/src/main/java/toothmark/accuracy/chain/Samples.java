package toothmark.accuracy.chain;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import toothmark.accuracy.CaseName;
import toothmark.accuracy.Run;
import toothmark.accuracy.Section;
import toothmark.accuracy.Section.Worst;
import toothmark.accuracy.Study;
import toothmark.simulator.SimulatedCapture;

/** The samples that come with the program. */
final class Samples implements Study {

  private final Path folder;

  Samples(Path folder) {
    this.folder = folder;
  }

  @Override
  public String name() {
    return "samples";
  }

  @Override
  public SimulatedCapture capture(CaseName name) {
    throw new IllegalArgumentException("the sample is on disk: " + folder.resolve(name.setting()));
  }

  @Override
  public String explain(CaseName name) {
    return CaseRunner.run(folder.resolve(name.setting())).words();
  }

  private List<String> names() {
    try (Stream<Path> folders = Files.list(folder)) {
      return folders
          .filter(f -> Files.exists(f.resolve("truth.json")))
          .map(f -> f.getFileName().toString())
          .sorted()
          .toList();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  @Override
  public void run(Run run) {
    Section section = run.section();
    section.study("Bundled samples", "The same figures for the captures of `signal-samples`.");
    ScoreTables tables = new ScoreTables("sample");
    List<Worst> worst = new ArrayList<>();
    for (String sample : names()) {
      List<CaseScore> scores =
          run.measure(this, sample, 1, n -> CaseRunner.run(folder.resolve(sample)));
      tables.row(sample, scores);
      scores.stream()
          .filter(s -> s.badness() > 0)
          .forEach(
              s -> worst.add(new Worst(new CaseName(name(), sample, 0), s.badness(), s.words())));
    }
    section.table(tables.signal());
    section.table(tables.timing());
    section.worst(worst);
  }
}
