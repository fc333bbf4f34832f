package toothmark.cli;

import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;
import toothmark.timing.StrobeReader;
import toothmark.timing.StrobeWorksheet;
import toothmark.units.Say;

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
    StrobeWorksheet.Result result = sheet.fit();
    Paragraphs out = Paragraphs.of(spec);
    out.say("Offset " + Say.degrees(result.offsetDegrees()) + " (95 %): the same at every speed.");
    out.say(
        "Delay "
            + Say.interval(result.delaySeconds().times(1e6), Say.THIN + "µs")
            + " (95 %): grows with speed; the light's own delay is in it.");
    out.say(
        String.format(Locale.ROOT, "Correlation of offset and delay %.2f.", result.correlation()));
    out.say(change(sheet.change()));
    out.say(
        "A positive offset means that the spark is further advanced than commanded. The setting's"
            + " sign differs between controllers: change it by five degrees and look.");
    out.say(
        "A light has its own delay, of some to hundreds of microseconds: compare two lights before"
            + " you blame the controller. Lights that count sparks may read half or double with"
            + " wasted spark; use one without a dial, and the tape.");
    return 0;
  }

  private static String change(StrobeWorksheet.Change change) {
    return switch (change) {
      case NONE -> "The gap changes by less than a degree over these speeds.";
      case DELAY -> "The gap changes with speed as a fixed delay does.";
      case NOT_A_LINE ->
          "The readings lie further from a line than they are uncertain: look for a limit or a"
              + " table's edge at one speed, and read again.";
      case CANNOT_TELL ->
          "The readings cannot tell whether the gap changes with speed; take more, over a wider"
              + " range.";
    };
  }
}
