package toothmark.cli;

import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;
import toothmark.report.BenchText;
import toothmark.timing.StrobeReader;
import toothmark.timing.StrobeWorksheet;

/** Parts timing-light readings into an angle and a delay. */
@Command(
    name = "strobe",
    mixinStandardHelpOptions = true,
    description = {
      "Parts readings with a timing light into a constant angle and a delay; needs no capture.",
      "",
      "READINGS is comma-separated text with the columns speed (rev/min), commanded and seen"
          + " (degrees before TDC). Lock the timing, warm the engine, and read at three speeds or"
          + " more.",
      "For an examination name the same file in the job sheet, tdc.light.",
      "Keep hands, clothes and leads clear of belts, fans and high voltage.",
      ""
    },
    footerHeading = "%nExamples:%n",
    footer = {
      "  toothmark strobe readings.csv",
      "  toothmark strobe readings.csv --reading-uncertainty 1"
    })
final class StrobeCommand implements Callable<Integer> {

  @Spec private CommandSpec spec;

  @Parameters(paramLabel = "READINGS", description = "the worksheet (CSV)")
  private Path file;

  @Option(
      names = "--reading-uncertainty",
      paramLabel = "DEG",
      defaultValue = "0.5",
      description = "standard uncertainty of one reading, degrees (${DEFAULT-VALUE})")
  private double readingUncertainty;

  @Override
  public Integer call() throws Exception {
    List<StrobeWorksheet.Reading> readings = StrobeReader.read(file);
    StrobeWorksheet sheet =
        Failures.checked(spec, () -> new StrobeWorksheet(readings, readingUncertainty));
    BenchText.of(sheet).forEach(Paragraphs.of(spec)::say);
    return 0;
  }
}
