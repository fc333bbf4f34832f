package toothmark.cli;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;
import toothmark.capture.Capture;
import toothmark.capture.CaptureReader;
import toothmark.capture.ReadingOptions;
import toothmark.chart.ComparisonFigures;
import toothmark.chart.Figure;
import toothmark.chart.RunOutline;
import toothmark.compare.Comparison;
import toothmark.compare.Drift;
import toothmark.compare.RecordedExamination;
import toothmark.compare.Visit;
import toothmark.compare.When;
import toothmark.examination.Examination;
import toothmark.examination.Examiner;
import toothmark.examination.JobSheet;
import toothmark.examination.JobSheetReader;
import toothmark.report.ComparisonPage;
import toothmark.report.ComparisonText;
import toothmark.report.DriftPage;
import toothmark.report.DriftText;
import toothmark.report.ResultReader;
import toothmark.units.ShortNames;

/** Says what changed from one examination to another. */
@Command(
    name = "compare",
    mixinStandardHelpOptions = true,
    description = {
      "Says what changed between two captures of one engine, by how much against its uncertainty,"
          + " and which findings are gone, new, graver, milder or still there. Of more than two, or of a folder of"
          + " examinations, says what moved over time.",
      ""
    },
    footerHeading = "%nExamples:%n",
    footer = {
      "  toothmark compare before.csv after.csv --job job.toml",
      "  toothmark compare monday/ friday/ --out mended",
      "  toothmark compare examinations/ --out drift",
      "",
      "Dates and times are those in the names (2026-05-31, 2026-05-31T14-30), else when each capture's",
      "file was last written.",
      "Exit codes: 0 compared; 2 unusable arguments or job sheet; 3 unreadable input;",
      "1 anything else."
    })
final class CompareCommand implements Callable<Integer> {

  @Spec private CommandSpec spec;

  @Parameters(
      arity = "1..*",
      paramLabel = "EXAMINATION",
      description =
          "a capture, the folder of an examination, or a folder of such folders; of two, the earlier"
              + " first")
  private List<Path> named;

  @Option(names = "--job", paramLabel = "FILE", description = "job sheet (TOML) of all captures")
  private Path job;

  @Option(
      names = "--out",
      paramLabel = "DIR",
      description =
          "folder for the page, "
              + ComparisonPage.FILE
              + " or "
              + DriftPage.FILE
              + "; without it, none is written")
  private Path out;

  @Override
  public Integer call() throws Exception {
    List<Path> paths = new ArrayList<>();
    for (Path path : named) {
      paths.addAll(examinationsIn(path));
    }
    if (paths.size() < 2) {
      throw new ParameterException(
          spec.commandLine(), "one examination is nothing to compare; name two or more");
    }
    JobSheet sheet = job == null ? JobSheet.empty() : JobSheetReader.read(job);
    if (named.size() == 2 && paths.size() == 2) {
      two(paths.get(0), paths.get(1), sheet);
      return 0;
    }
    List<RecordedExamination> records = new ArrayList<>();
    for (Path path : paths) {
      records.add(record(path, sheet));
    }
    records = toldApart(paths, records);
    List<Visit> visits = new ArrayList<>();
    for (int i = 0; i < paths.size(); i++) {
      visits.add(new Visit(when(paths.get(i), records.get(i)), records.get(i)));
    }
    Drift drift = Drift.of(visits);
    DriftText.of(drift).forEach(spec.commandLine().getOut()::println);
    page(out == null ? null : DriftPage.write(drift, out));
    return 0;
  }

  private void two(Path earlier, Path later, JobSheet sheet) throws Exception {
    Side before = side(earlier, sheet);
    Side after = side(later, sheet);
    List<RecordedExamination> named =
        toldApart(List.of(earlier, later), List.of(before.record(), after.record()));
    Comparison c = Comparison.of(named.get(0), named.get(1));
    ComparisonText.of(c).forEach(spec.commandLine().getOut()::println);
    if (out != null) {
      List<Figure> curves = ComparisonFigures.of(before.outline(), after.outline()).all();
      List<String> bare = new ArrayList<>();
      for (int i = 0; i < named.size(); i++) {
        Path path = i == 0 ? earlier : later;
        if (Files.isDirectory(path) && ResultReader.isBare(path)) {
          bare.add(named.get(i).name());
        }
      }
      page(ComparisonPage.write(c, curves, bare, out));
    }
  }

  /** What is on record of one of two, and what to draw of it. */
  private record Side(RecordedExamination record, RunOutline outline) {}

  private static Side side(Path path, JobSheet sheet) throws Exception {
    if (Files.isDirectory(path)) {
      return new Side(ResultReader.read(path), ResultReader.outline(path));
    }
    try (Capture capture = open(path, sheet)) {
      Examination examination = Examiner.examine(capture, sheet, Optional.empty());
      return new Side(ResultReader.of(examination), RunOutline.of(examination));
    }
  }

  private void page(Path page) {
    if (page != null) {
      spec.commandLine().getOut().println("\npage  " + page);
    }
  }

  /** Each under a name that the others do not bear; captures may lie in folders of one name. */
  private static List<RecordedExamination> toldApart(
      List<Path> paths, List<RecordedExamination> records) {
    List<Path> files = new ArrayList<>();
    for (int i = 0; i < paths.size(); i++) {
      Path path = paths.get(i);
      files.add(Files.isDirectory(path) ? path.resolve(records.get(i).name()) : path);
    }
    List<String> names = ShortNames.of(files);
    return IntStream.range(0, names.size())
        .mapToObj(i -> records.get(i).named(names.get(i)))
        .toList();
  }

  /** A path itself, or the examinations in a folder that is none. */
  private static List<Path> examinationsIn(Path path) throws IOException {
    if (!Files.isDirectory(path) || Files.exists(path.resolve(ResultReader.FILE))) {
      return List.of(path);
    }
    try (Stream<Path> below = Files.list(path)) {
      List<Path> found = below.filter(p -> Files.exists(p.resolve(ResultReader.FILE))).toList();
      return found.isEmpty() ? List.of(path) : found;
    }
  }

  private static When when(Path path, RecordedExamination examination) throws IOException {
    Path file = Files.isDirectory(path) ? path.resolve(ResultReader.FILE) : path;
    return When.of(
        List.of(String.valueOf(path.getFileName()), examination.name()),
        examination.saved(),
        Files.getLastModifiedTime(file).toInstant());
  }

  private static RecordedExamination record(Path path, JobSheet sheet) throws Exception {
    if (Files.isDirectory(path)) {
      return ResultReader.read(path);
    }
    try (Capture capture = open(path, sheet)) {
      return ResultReader.of(Examiner.examine(capture, sheet, Optional.empty()));
    }
  }

  private static Capture open(Path path, JobSheet sheet) throws Exception {
    return CaptureReader.read(path, ReadingOptions.withDefaults().withLayout(sheet.layout()));
  }
}
