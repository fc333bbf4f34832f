package toothmark.cli;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.DateTimeException;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
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
import toothmark.compare.Comparison;
import toothmark.compare.Drift;
import toothmark.compare.RecordedExamination;
import toothmark.compare.Visit;
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
      "Dates are those in the names (2026-05-31), else those of the files.",
      "Exit codes: 0 compared; 2 unusable arguments or job sheet; 3 unreadable input;",
      "1 anything else."
    })
final class CompareCommand implements Callable<Integer> {

  private static final Pattern DATE = Pattern.compile("(\\d{4})-?(\\d{2})-?(\\d{2})");

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
      visits.add(new Visit(date(paths.get(i)), records.get(i)));
    }
    Drift drift = Drift.of(visits);
    DriftText.of(drift).forEach(spec.commandLine().getOut()::println);
    page(out == null ? null : DriftPage.write(drift, out));
    return 0;
  }

  /** Captures are both kept open until their curves are drawn; folders hold none to draw. */
  private void two(Path earlier, Path later, JobSheet sheet) throws Exception {
    List<Path> paths = List.of(earlier, later);
    if (Files.isDirectory(earlier) || Files.isDirectory(later)) {
      say(toldApart(paths, List.of(record(earlier, sheet), record(later, sheet))), List.of());
      return;
    }
    try (Capture first = open(earlier, sheet);
        Capture second = open(later, sheet)) {
      Examination before = Examiner.examine(first, sheet, Optional.empty());
      Examination after = Examiner.examine(second, sheet, Optional.empty());
      List<Figure> curves = out == null ? List.of() : ComparisonFigures.of(before, after).all();
      say(toldApart(paths, List.of(ResultReader.of(before), ResultReader.of(after))), curves);
    }
  }

  private void say(List<RecordedExamination> two, List<Figure> curves) throws IOException {
    Comparison c = Comparison.of(two.get(0), two.get(1));
    ComparisonText.of(c).forEach(spec.commandLine().getOut()::println);
    page(out == null ? null : ComparisonPage.write(c, curves, out));
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
      List<Path> found =
          below.filter(p -> Files.exists(p.resolve(ResultReader.FILE))).sorted().toList();
      return found.isEmpty() ? List.of(path) : found;
    }
  }

  private static LocalDate date(Path path) throws IOException {
    Matcher m = DATE.matcher(path.getFileName().toString());
    while (m.find()) {
      try {
        return LocalDate.of(
            Integer.parseInt(m.group(1)),
            Integer.parseInt(m.group(2)),
            Integer.parseInt(m.group(3)));
      } catch (DateTimeException e) {
        // figures that are no date; look on
      }
    }
    Path file = Files.isDirectory(path) ? path.resolve(ResultReader.FILE) : path;
    return LocalDate.ofInstant(Files.getLastModifiedTime(file).toInstant(), ZoneId.systemDefault());
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
