package toothmark.cli;

import java.nio.file.Path;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;
import toothmark.capture.Capture;
import toothmark.capture.CaptureReader;
import toothmark.capture.ReadingOptions;
import toothmark.examination.Examiner;
import toothmark.examination.Glance;
import toothmark.examination.JobSheet;
import toothmark.examination.JobSheetReader;
import toothmark.report.ChannelsText;

/** Shows what a capture holds without examining it whole. */
@Command(
    name = "channels",
    mixinStandardHelpOptions = true,
    description = {
      "Shows the channels of a capture, how it was read, and what it is good for. Of a large text"
          + " the start is looked at.",
      ""
    },
    footerHeading = "%nExamples:%n",
    footer = {"  toothmark channels idle.csv", "  zcat idle.csv.gz | toothmark channels -"})
final class ChannelsCommand implements Callable<Integer> {

  /** About a million rows: what is read and decoded well within a second. */
  private static final long FIRST_BYTES = 10L << 20;

  @Spec private CommandSpec spec;

  @Parameters(paramLabel = "CAPTURE", description = "as for examine; - for standard input")
  private Path capture;

  @Option(
      names = "--job",
      paramLabel = "FILE",
      description = "job sheet (TOML), of which the layout of the capture and the engine are used")
  private Path job;

  @Option(names = "--whole", description = "read all of a large file")
  private boolean whole;

  @Override
  public Integer call() throws Exception {
    JobSheet sheet = job == null ? JobSheet.empty() : JobSheetReader.read(job);
    try (Progress progress = Progress.onTerminal(false)) {
      ReadingOptions options =
          ReadingOptions.withDefaults().withLayout(sheet.layout()).withProgress(progress);
      options = whole ? options : options.withFirstBytes(FIRST_BYTES);
      try (Capture read = CaptureReader.read(capture, options)) {
        Glance seen = Examiner.glance(read, sheet);
        progress.clear();
        Screen.print(spec.commandLine(), ChannelsText.of(seen, Screen.columns()));
      }
    }
    return 0;
  }
}
