package toothmark.cli;

import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.concurrent.Callable;
import java.util.stream.Stream;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;
import toothmark.capture.Capture;
import toothmark.capture.CaptureReader;
import toothmark.capture.ReadingOptions;
import toothmark.examination.Examination;
import toothmark.examination.Examiner;
import toothmark.examination.JobSheet;
import toothmark.examination.JobSheetReader;
import toothmark.report.ResultFolder;
import toothmark.report.ResultFolder.Page;
import toothmark.report.VerdictText;
import toothmark.timing.ControllerLog;
import toothmark.timing.ControllerLogReader;

/** Runs the whole chain over a capture. */
@Command(
    name = "examine",
    mixinStandardHelpOptions = true,
    description = {
      "Decodes the crank signal of a capture, measures timing, finds faults, and writes a report.",
      ""
    },
    footerHeading = "%nExamples:%n",
    footer = {
      "  toothmark examine idle.csv",
      "  toothmark examine sweep.csv.gz --job job.toml --log controller.csv --out sweep",
      "",
      "Exit codes: 0 examined, whatever was found; 2 unusable arguments or job sheet;",
      "3 unreadable or unsupported input; 4 no crank signal that can be decoded; 1 anything else."
    })
final class ExamineCommand implements Callable<Integer> {

  @Spec private CommandSpec spec;

  @Parameters(
      paramLabel = "CAPTURE",
      description =
          "delimited text, value change dump, sound, NumPy, MATLAB or HDF5 arrays, or list of edges"
              + " or periods; may be packed (gz, zst, xz, zip); - for standard input")
  private Path capture;

  @Option(
      names = "--job",
      paramLabel = "FILE",
      description =
          "job sheet (TOML): engine, wheel, sensor, channels, coils, layout of the capture")
  private Path job;

  @Option(
      names = "--log",
      paramLabel = "FILE",
      description = "controller log (CSV) with time, speed and commanded advance")
  private Path log;

  @Option(
      names = "--out",
      paramLabel = "DIR",
      description = "where to write; without it a folder named after the capture, here")
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
    JobSheet sheet = job == null ? JobSheet.empty() : JobSheetReader.read(job);
    Optional<ControllerLog> commanded =
        log == null ? Optional.empty() : Optional.of(ControllerLogReader.read(log));
    Path folder = out == null ? folderNamedAfter(capture) : out;
    ResultFolder.mustSpare(folder, inputs());
    try (Progress progress = Progress.onTerminal(quiet);
        Capture read = CaptureReader.read(capture, options(sheet, progress))) {
      Examination examination = Examiner.examine(read, sheet, commanded);
      List<Path> written =
          ResultFolder.write(examination, folder, pdf ? Page.HTML_AND_PDF : Page.HTML);
      progress.close();
      return report(examination, written);
    }
  }

  private static ReadingOptions options(JobSheet sheet, Progress progress) {
    return ReadingOptions.withDefaults().withLayout(sheet.layout()).withProgress(progress);
  }

  private List<Path> inputs() {
    return Stream.of(capture, job, log).filter(Objects::nonNull).toList();
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

  private int report(Examination examination, List<Path> written) {
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
