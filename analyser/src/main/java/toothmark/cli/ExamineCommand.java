package toothmark.cli;

import java.io.PrintWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.concurrent.Callable;
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
import toothmark.cli.ManyCaptures.Planned;
import toothmark.examination.Examination;
import toothmark.examination.Examiner;
import toothmark.examination.JobSheet;
import toothmark.examination.JobSheetReader;
import toothmark.report.IndexEntry;
import toothmark.report.ResultFolder;
import toothmark.report.ResultFolder.Page;
import toothmark.report.ResultIndex;
import toothmark.report.VerdictText;
import toothmark.timing.ControllerLog;
import toothmark.timing.ControllerLogReader;
import toothmark.timing.IgnitionTableReader;

/** Runs the whole chain over a capture, or over many. */
@Command(
    name = "examine",
    mixinStandardHelpOptions = true,
    description = {
      "Decodes the crank signal of a capture, measures timing, finds faults, and writes a report.",
      "Of several captures, or of a folder, each gets a report of its own, and all an index.",
      ""
    },
    footerHeading = "%nExamples:%n",
    footer = {
      "  toothmark examine idle.csv",
      "  toothmark examine sweep.csv.gz --job job.toml --log controller.csv --out sweep",
      "  toothmark examine sweep.csv --job job.toml --table advance.csv --load 60",
      "  toothmark examine monday/ --out monday-reports",
      "  toothmark examine cold.csv warm.csv hot.csv --job job.toml",
      "",
      "Exit codes: 0 examined, whatever was found; 2 unusable arguments or job sheet;",
      "3 unreadable or unsupported input; 4 no crank signal that can be decoded; 1 anything else.",
      "Of many captures all are examined first; then 1 if any returned it, else 3, else 4, else 0."
    })
final class ExamineCommand implements Callable<Integer> {

  @Spec private CommandSpec spec;

  @Parameters(
      arity = "1..*",
      paramLabel = "CAPTURE",
      description =
          "delimited text, value change dump, sound, NumPy, MATLAB or HDF5 arrays, or list of edges"
              + " or periods; may be packed (gz, zst, xz, zip); - for standard input; a folder for"
              + " all captures in it")
  private List<Path> captures;

  @Option(
      names = "--job",
      paramLabel = "FILE",
      description =
          "job sheet (TOML): engine, wheel, sensor, channels, coils, layout of the capture; of all"
              + " captures; of a folder, without it, the job.toml in it")
  private Path job;

  @Option(
      names = "--log",
      paramLabel = "FILE",
      description =
          "controller log (CSV) with time, speed, and commanded advance or load; of one capture")
  private Path log;

  @Option(
      names = "--table",
      paramLabel = "FILE",
      description =
          "ignition table (CSV), speeds across and loads down; read at the loads of the log, or at"
              + " --load")
  private Path table;

  @Option(
      names = "--load",
      paramLabel = "LOAD",
      description = "load at which to read the ignition table, in the unit of its loads")
  private Double load;

  @Option(
      names = "--out",
      paramLabel = "DIR",
      description =
          "where to write; without it a folder named after the capture, here, or examinations")
  private Path out;

  @Option(
      names = "--pdf",
      description = "write the page as a document too, report.pdf, to print or to send")
  private boolean pdf;

  @Option(
      names = {"-q", "--quiet"},
      description = "print nothing but errors")
  private boolean quiet;

  @Override
  public Integer call() throws Exception {
    ResultFolder.prepare();
    boolean many = captures.size() > 1 || Files.isDirectory(captures.get(0));
    return many ? examineMany() : examineOne(captures.get(0), sheet(captures.get(0)));
  }

  /** The job sheet that is named here, else the one that lies in the folder of captures. */
  private JobSheet sheet(Path captureOrFolder) throws Exception {
    Path inside = captureOrFolder.resolve(JobSheetReader.USUAL_NAME);
    Path file = job == null && Files.isRegularFile(inside) ? inside : job;
    return commanded(file == null ? JobSheet.empty() : JobSheetReader.read(file));
  }

  /** What is said here of table and load takes the place of what the job sheet says of each. */
  private JobSheet commanded(JobSheet sheet) throws Exception {
    JobSheet.Commanded stated = sheet.commanded();
    JobSheet.Commanded all =
        new JobSheet.Commanded(
            stated.advanceDegrees(),
            table == null ? stated.table() : Optional.of(IgnitionTableReader.read(table)),
            load == null ? stated.load() : OptionalDouble.of(load));
    if (load != null && all.table().isEmpty()) {
      throw new ParameterException(
          spec.commandLine(),
          "--load is that of an ignition table, and none is given; add --table");
    }
    return sheet.withCommanded(all);
  }

  private int examineOne(Path capture, JobSheet sheet) throws Exception {
    Optional<ControllerLog> commanded =
        log == null ? Optional.empty() : Optional.of(ControllerLogReader.read(log));
    Path folder = out == null ? folderNamedAfter(capture) : out;
    ResultFolder.mustSpare(
        folder, Stream.of(capture, job, log, table).filter(Objects::nonNull).toList());
    try (Progress progress = Progress.onTerminal(quiet);
        Capture read = CaptureReader.read(capture, options(sheet, progress))) {
      Examination examination = Examiner.examine(read, sheet, commanded);
      List<Path> written = ResultFolder.write(examination, folder, forms());
      progress.clear();
      return report(capture, examination, written);
    }
  }

  private static ReadingOptions options(JobSheet sheet, Progress progress) {
    return ReadingOptions.withDefaults().withLayout(sheet.layout()).withProgress(progress);
  }

  private Page forms() {
    return pdf ? Page.HTML_AND_PDF : Page.HTML;
  }

  private int examineMany() throws Exception {
    if (log != null) {
      throw new ParameterException(
          spec.commandLine(), "--log belongs to one capture, and several are named; leave it out");
    }
    List<Planned> all = planned();
    if (all.isEmpty()) {
      throw new ParameterException(spec.commandLine(), captures.get(0) + ": no capture is in it");
    }
    Path folder = out == null ? Path.of("examinations") : out;
    List<IndexEntry> entries;
    try (Progress progress = Progress.onTerminal(quiet)) {
      entries = new ManyCaptures(all, folder, forms()).examine(progress);
    }
    Path index = ResultIndex.write(entries, folder);
    reportMany(entries, index);
    return Stream.of(Failures.OTHER, Failures.INPUT, Failures.NOT_DECODABLE)
        .filter(code -> entries.stream().anyMatch(e -> e.exitCode() == code))
        .findFirst()
        .orElse(0);
  }

  private List<Planned> planned() throws Exception {
    List<Planned> all = new ArrayList<>();
    for (Path path : captures) {
      JobSheet sheet = sheet(path);
      if (Files.isDirectory(path)) {
        CaptureFolder folder = CaptureFolder.read(path, sheet);
        all.addAll(folder.captures());
        if (!quiet) {
          folder.passedOver().forEach(spec.commandLine().getOut()::println);
        }
      } else {
        all.add(new Planned(path, sheet, Optional.empty()));
      }
    }
    return all;
  }

  private void reportMany(List<IndexEntry> entries, Path index) {
    for (IndexEntry e : entries) {
      if (!e.failure().isEmpty()) {
        spec.commandLine().getErr().println("toothmark: " + e.failure());
      } else if (!quiet) {
        spec.commandLine().getOut().println(e.capture() + ": " + e.said());
      }
    }
    if (!quiet) {
      PrintWriter to = spec.commandLine().getOut();
      to.println("\n" + ResultIndex.summary(entries) + "\nindex  " + index);
    }
  }

  /** The capture's name without its endings, in the working directory. */
  static Path folderNamedAfter(Path capture) {
    String name = capture.getFileName().toString();
    String stem =
        name.replaceFirst("(?i)\\.(gz|zst|xz|zip)$", "").replaceFirst("\\.[A-Za-z0-9]{1,5}$", "");
    if (name.equals("-")) {
      return Path.of("examination");
    }
    return Path.of(stem.isEmpty() || stem.equals(name) ? name + "-examination" : stem);
  }

  private int report(Path capture, Examination examination, List<Path> written) {
    if (!quiet) {
      Screen.print(spec.commandLine(), VerdictText.of(examination, written, Screen.columns()));
    }
    if (examination.observations().crank().isPresent()) {
      return 0;
    }
    PrintWriter err = spec.commandLine().getErr();
    err.println(
        "toothmark: " + capture.getFileName() + ": " + examination.observations().undecodable());
    return Failures.NOT_DECODABLE;
  }
}
