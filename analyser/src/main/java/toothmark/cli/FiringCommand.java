package toothmark.cli;

import java.util.List;
import java.util.Locale;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Spec;
import toothmark.ignition.FiringOrder;
import toothmark.timing.FiringTeeth;
import toothmark.units.CrankAngle;
import toothmark.units.Say;
import toothmark.wheel.WheelPattern;

/** Plans which teeth go before charge and spark. */
@Command(
    name = "firing",
    mixinStandardHelpOptions = true,
    description = {
      "Plans a wheel: which tooth passes before each charge and spark, whether there is room for"
          + " the dwell, and whether a gap falls where timing matters.",
      ""
    },
    footerHeading = "%nExamples:%n",
    footer = {
      "  toothmark firing --wheel 36-1 --tooth1 90 --advance 5,38 --rpm 6500",
      "  toothmark firing --wheel 60-2 --tooth1 114 --order 1,5,3,6,2,4"
    })
final class FiringCommand implements Callable<Integer> {

  /** Beyond this share a coil hardly rests (common practice). */
  private static final double MOST_DUTY = 0.8;

  @Spec private CommandSpec spec;

  @Option(
      names = "--wheel",
      required = true,
      paramLabel = "PATTERN",
      description = "slots-missing, such as 36-1, 60-2, 12+1 or 36-2-2-2")
  private String wheel;

  @Option(
      names = "--tooth1",
      required = true,
      paramLabel = "DEG",
      description = "degrees before TDC of cylinder 1 at which tooth 1 passes the sensor")
  private double tooth1;

  @Option(
      names = "--order",
      split = ",",
      defaultValue = "1,3,4,2",
      paramLabel = "N",
      description = "firing order of an even-firing engine (${DEFAULT-VALUE})")
  private List<Integer> order;

  @Option(
      names = "--advance",
      split = ",",
      arity = "1",
      defaultValue = "5,40",
      paramLabel = "DEG",
      description = "least and most advance, degrees before TDC (${DEFAULT-VALUE})")
  private List<Double> advance;

  @Option(
      names = "--dwell",
      defaultValue = "3",
      paramLabel = "MS",
      description = "how long a coil charges, ms (${DEFAULT-VALUE})")
  private double dwellMilliseconds;

  @Option(
      names = "--rpm",
      defaultValue = "6500",
      paramLabel = "RPM",
      description = "highest speed, rev/min (${DEFAULT-VALUE})")
  private double rpm;

  @Option(
      names = "--coil-fires-every",
      defaultValue = "360",
      paramLabel = "DEG",
      description =
          "360 for wasted spark, 720 for one coil each, 720 / cylinders for one coil in all (${DEFAULT-VALUE})")
  private double coilEvery;

  @Override
  public Integer call() {
    FiringTeeth teeth =
        Failures.checked(
            spec, () -> FiringTeeth.of(WheelPattern.parse(wheel), tooth1, FiringOrder.even(order)));
    if (advance.size() != 2
        || advance.get(0) > advance.get(1)
        || !(dwellMilliseconds > 0 && rpm > 0 && coilEvery > 0)) {
      throw new ParameterException(
          spec.commandLine(),
          "--advance needs the least and the most; dwell, speed and coil angle must be positive");
    }
    Paragraphs out = Paragraphs.of(spec);
    for (double degrees : advance) {
      table(out, teeth, degrees);
    }
    room(out);
    gap(out, teeth);
    out.say(
        "Tooth 1 to TDC comes from you: prove it with a piston stop and a light before the engine"
            + " runs under load. Wrong advance can break an engine.");
    return 0;
  }

  private void table(Paragraphs out, FiringTeeth teeth, double degrees) {
    out.row(String.format(Locale.ROOT, "%s before TDC at %s:", Say.degrees(degrees), Say.rpm(rpm)));
    out.row("cylinder   charge: after tooth     spark: after tooth   teeth between");
    for (FiringTeeth.Firing f : teeth.plan(degrees, dwellMilliseconds * 1e-3, rpm)) {
      out.row(
          String.format(
              Locale.ROOT,
              "%8d   %10d  %6.1f\u00b0   %12d  %6.1f\u00b0   %13d",
              f.cylinder(),
              f.charge().tooth(),
              f.charge().degreesAfter(),
              f.spark().tooth(),
              f.spark().degreesAfter(),
              f.teethBetween()));
    }
  }

  private double dwellDegrees() {
    return CrankAngle.turned(rpm, dwellMilliseconds * 1e-3);
  }

  private void room(Paragraphs out) {
    double share = dwellDegrees() / coilEvery;
    String duty =
        String.format(
            Locale.ROOT,
            "Charging takes %.0f\u00b0 of the %.0f\u00b0 between a coil's sparks, %.0f %%. ",
            dwellDegrees(),
            coilEvery,
            100 * share);
    out.say(
        duty
            + (share >= 1
                ? "There is no room for this dwell at this speed."
                : share > MOST_DUTY
                    ? "Little is left for the spark to burn and the coil to cool: shorten the dwell"
                        + " or use more coils."
                    : "There is room."));
  }

  private void gap(Paragraphs out, FiringTeeth teeth) {
    List<String> met =
        order.stream()
            .filter(c -> teeth.gapBetween(c, advance.get(1) + dwellDegrees(), advance.get(0)))
            .map(String::valueOf)
            .toList();
    out.say(
        met.isEmpty()
            ? "No gap passes between the earliest charge and the latest spark."
            : "A gap passes between the earliest charge and the latest spark of cylinder "
                + String.join(", ", met)
                + ": there the controller works from an older tooth. Another place of the sensor,"
                + " if there is one, times better.");
  }
}
