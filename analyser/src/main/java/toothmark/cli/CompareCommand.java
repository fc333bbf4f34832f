package toothmark.cli;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;
import toothmark.capture.Capture;
import toothmark.capture.CaptureReader;
import toothmark.capture.ReadingOptions;
import toothmark.compare.Comparison;
import toothmark.compare.RecordedExamination;
import toothmark.examination.Examiner;
import toothmark.examination.JobSheet;
import toothmark.examination.JobSheetReader;
import toothmark.report.ComparisonPage;
import toothmark.report.ComparisonText;
import toothmark.report.ResultReader;

/** Says what changed from one examination to another. */
@Command(
    name = "compare",
    mixinStandardHelpOptions = true,
    description = {
      "Says what changed between two captures of one engine, by how much against its uncertainty,"
          + " and which findings are gone, new or still there.",
      ""
    },
    footerHeading = "%nExamples:%n",
    footer = {
      "  toothmark compare before.csv after.csv --job job.toml",
      "  toothmark compare monday/ friday/ --out mended",
      "",
      "Exit codes: 0 compared; 2 unusable arguments or job sheet; 3 unreadable input;",
      "1 anything else."
    })
final class CompareCommand implements Callable<Integer> {

  @Spec private CommandSpec spec;

  @Parameters(
      index = "0",
      paramLabel = "BEFORE",
      description = "a capture, or the folder of an examination")
  private Path before;

  @Parameters(index = "1", paramLabel = "AFTER", description = "the same, recorded later")
  private Path after;

  @Option(names = "--job", paramLabel = "FILE", description = "job sheet (TOML) of both captures")
  private Path job;

  @Option(
      names = "--out",
      paramLabel = "DIR",
      description = "folder for the page " + ComparisonPage.FILE + "; without it, none is written")
  private Path out;

  @Override
  public Integer call() throws Exception {
    JobSheet sheet = job == null ? JobSheet.empty() : JobSheetReader.read(job);
    Comparison c = Comparison.of(record(before, sheet), record(after, sheet));
    ComparisonText.of(c).forEach(spec.commandLine().getOut()::println);
    if (out != null) {
      spec.commandLine().getOut().println("\npage  " + ComparisonPage.write(c, out));
    }
    return 0;
  }

  private static RecordedExamination record(Path path, JobSheet sheet) throws Exception {
    if (Files.isDirectory(path)) {
      return ResultReader.read(path);
    }
    ReadingOptions options = ReadingOptions.withDefaults().withLayout(sheet.layout());
    try (Capture capture = CaptureReader.read(path, options)) {
      return ResultReader.of(Examiner.examine(capture, sheet, Optional.empty()));
    }
  }
}
