package toothmark.cli;

import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import java.util.stream.IntStream;
import picocli.CommandLine.ArgGroup;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;
import toothmark.report.BenchText;
import toothmark.timing.PistonStop;
import toothmark.timing.PistonTravel;

/** Finds top dead centre from the touches of a piston stop. */
@Command(
    name = "tdc",
    mixinStandardHelpOptions = true,
    description = {
      "Finds top dead centre from touches of a piston stop.",
      "",
      "Fit a stop in the plug hole of cylinder 1. Turn forwards until the piston touches it and"
          + " read the pointer in degrees before TDC; turn back until it touches again and read"
          + " degrees after TDC. Several pairs are averaged.",
      "For an examination write the same pairs into the job sheet, tdc.stop_deg, with what the"
          + " pointer reads when tooth 1 stands at the sensor, tdc.tooth1_deg.",
      "Turn by hand, with the plugs out and the battery off, never on the starter.",
      ""
    },
    footerHeading = "%nExamples:%n",
    footer = {
      "  toothmark tdc 21 15",
      "  toothmark tdc 21 15 21.5 15 20.5 15.5 --stroke 80 --rod 140"
    })
final class TdcCommand implements Callable<Integer> {

  @Spec private CommandSpec spec;

  @Parameters(
      arity = "2..*",
      paramLabel = "BEFORE AFTER",
      description = "readings in pairs: degrees before and after TDC by the pointer")
  private List<Double> touches;

  @Option(
      names = "--reading-uncertainty",
      paramLabel = "DEG",
      defaultValue = "0.5",
      description = "standard uncertainty of one reading, degrees (${DEFAULT-VALUE})")
  private double readingUncertainty;

  @ArgGroup(exclusive = false)
  private Slider slider;

  @Override
  public Integer call() {
    List<PistonStop> stops = Failures.checked(spec, this::stops);
    Optional<PistonTravel> travel =
        Optional.ofNullable(slider).map(s -> Failures.checked(spec, s::travel));
    BenchText.of(stops, travel).forEach(Paragraphs.of(spec)::say);
    return 0;
  }

  private List<PistonStop> stops() {
    if (touches.size() % 2 != 0) {
      throw new IllegalArgumentException(
          "touches come in pairs, before and after TDC; got " + touches.size() + " readings");
    }
    if (!(readingUncertainty >= 0)) {
      throw new IllegalArgumentException(
          "the uncertainty of a reading cannot be negative, got " + readingUncertainty);
    }
    return IntStream.range(0, touches.size() / 2)
        .mapToObj(
            i -> new PistonStop(touches.get(2 * i), touches.get(2 * i + 1), readingUncertainty))
        .toList();
  }
}
