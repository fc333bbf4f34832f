package toothmark.cli;

import java.util.List;
import java.util.concurrent.Callable;
import java.util.stream.IntStream;
import picocli.CommandLine.ArgGroup;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;
import toothmark.timing.PistonStop;
import toothmark.timing.PistonTravel;
import toothmark.units.Measured;
import toothmark.units.Say;

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
    Measured top = PistonStop.readingAtTopDegrees(stops);
    double side = stops.stream().mapToDouble(PistonStop::eachSideDegrees).average().orElseThrow();
    Paragraphs out = Paragraphs.of(spec);
    out.say(
        "At true top dead centre the pointer reads %s before TDC (95 %%, %d %s of touches)."
            .formatted(Say.degrees(top), stops.size(), stops.size() == 1 ? "pair" : "pairs"));
    out.say(
        "Take %s off each later reading, or move the pointer by that angle."
            .formatted(Say.degrees(top.value())));
    out.say("The stop touches %s each side of the top.".formatted(Say.degrees(side)));
    if (stops.stream().anyMatch(s -> s.standing() == PistonStop.Standing.TOO_NEAR_THE_TOP)) {
      out.say(
          "Warning: that is nearer than %.0f degrees, where the piston hardly moves; use a longer stop."
              .formatted(PistonStop.LEAST_EACH_SIDE_DEGREES));
    }
    if (slider != null) {
      depth(out, Failures.checked(spec, slider::travel), side);
    } else {
      out.say(
          "An offset wrist pin does not spoil this: it moves the middle of two touches by less than"
              + " 0.05 degrees while the stop stands within 20 mm of the top.");
    }
    out.say("Repeat from the other side and after the engine has run: a damper's ring can slip.");
    return 0;
  }

  private List<PistonStop> stops() {
    if (touches.size() % 2 != 0) {
      throw new IllegalArgumentException(
          "touches come in pairs, before and after TDC; got " + touches.size() + " readings");
    }
    return IntStream.range(0, touches.size() / 2)
        .mapToObj(
            i -> new PistonStop(touches.get(2 * i), touches.get(2 * i + 1), readingUncertainty))
        .toList();
  }

  private static void depth(Paragraphs out, PistonTravel travel, double side) {
    double depth = travel.millimetresBelowTop(travel.highestDegrees() + side);
    out.say("There the piston is %s mm below its highest point.".formatted(Say.number(depth, 1)));
    double middle = (travel.degreesAfter(depth) + travel.degreesBefore(depth)) / 2;
    if (travel.pinOffsetMillimetres() != 0) {
      out.say(
          "With the pin %s mm off, the piston stands highest %s after the crank is in line; the touches find that within %s degrees."
              .formatted(
                  Say.number(travel.pinOffsetMillimetres(), 1),
                  Say.degrees(travel.highestDegrees()),
                  Say.number(Math.abs(middle - travel.highestDegrees()), 3)));
    }
  }
}
