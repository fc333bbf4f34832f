package toothmark.cli;

import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
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
import toothmark.chart.Figures;
import toothmark.chart.Ink;
import toothmark.examination.Examination;
import toothmark.examination.Examiner;
import toothmark.examination.InputReplay;
import toothmark.examination.JobSheet;
import toothmark.examination.JobSheetReader;
import toothmark.receiver.Conditioner;
import toothmark.report.CircuitsText;
import toothmark.report.FigureSvg;
import toothmark.report.WholeFile;

/** Plays the crank signal of a capture to other input circuits. */
@Command(
    name = "replay",
    mixinStandardHelpOptions = true,
    description = {
      "Plays a capture of a variable-reluctance sensor to controllers' input circuits and counts, for"
          + " each, teeth lost, strays let in and losses of count.",
      ""
    },
    footerHeading = "%nExamples:%n",
    footer = {
      "  toothmark replay cranking.csv",
      "  toothmark replay cranking.csv --levels 0.2,0.05 --picture levels.svg"
    })
final class ReplayCommand implements Callable<Integer> {

  @Spec private CommandSpec spec;

  @Parameters(paramLabel = "CAPTURE", description = "as for examine; - for standard input")
  private Path capture;

  @Option(names = "--job", paramLabel = "FILE", description = "job sheet (TOML)")
  private Path job;

  @Option(
      names = "--levels",
      paramLabel = "V,V",
      split = ",",
      arity = "1",
      description = "try a threshold with its hysteresis to each side, V from the mean, too")
  private List<Double> levels = List.of();

  @Option(
      names = "--picture",
      paramLabel = "FILE",
      description = "draw with which fixed levels no count is lost (SVG)")
  private Path picture;

  @Override
  public Integer call() throws Exception {
    List<Conditioner> circuits = Failures.checked(spec, this::circuits);
    JobSheet sheet = job == null ? JobSheet.empty() : JobSheetReader.read(job);
    ReadingOptions options = ReadingOptions.withDefaults().withLayout(sheet.layout());
    try (Progress progress = Progress.onTerminal(false);
        Capture read = CaptureReader.read(capture, options.withProgress(progress))) {
      Examination examination = Examiner.examine(read, sheet, Optional.empty());
      Optional<InputReplay> replay = InputReplay.of(examination);
      progress.clear();
      if (replay.isEmpty()) {
        spec.commandLine()
            .getErr()
            .println(
                "toothmark: "
                    + capture.getFileName()
                    + ": a replay needs the voltage of a variable-reluctance sensor whose teeth were"
                    + " found.");
        return Failures.NOT_DECODABLE;
      }
      Screen.print(
          spec.commandLine(),
          CircuitsText.of(
              read.file(), replay.get(), replay.get().play(circuits), Screen.columns()));
      if (picture != null) {
        String drawn = FigureSvg.of(Figures.levels(replay.get().sweep(), Ink.LIGHT), "");
        WholeFile.write(picture, drawn.getBytes(StandardCharsets.UTF_8));
      }
    }
    return 0;
  }

  private List<Conditioner> circuits() {
    List<Conditioner> all = new ArrayList<>(Conditioner.usual());
    if (!levels.isEmpty()) {
      if (levels.size() != 2 || levels.get(1) < 0) {
        throw new IllegalArgumentException(
            "--levels takes a threshold and a hysteresis of 0 or more, such as 0.2,0.05");
      }
      all.add(Conditioner.threshold(levels.get(0), levels.get(1)));
    }
    return all;
  }
}
