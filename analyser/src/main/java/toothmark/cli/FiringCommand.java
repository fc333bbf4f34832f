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
import toothmark.report.BenchText;
import toothmark.timing.FiringPlan;
import toothmark.timing.FiringTeeth;
import toothmark.units.Say;
import toothmark.wheel.WheelPattern;

/** Plans which teeth go before charge and spark. */
@Command(
    name = "firing",
    mixinStandardHelpOptions = true,
    description = {
      "Plans a wheel: which tooth passes before each charge and spark at the highest speed and on"
          + " the starter, whether there is room for the dwell before the earliest spark, and"
          + " whether a gap falls where timing matters.",
      ""
    },
    footerHeading = "%nExamples:%n",
    footer = {
      "  toothmark firing --wheel 36-1 --tooth1 90 --advance 5,38 --rpm 6500",
      "  toothmark firing --wheel 60-2 --tooth1 114 --order 1,5,3,6,2,4",
      "  toothmark firing --wheel 24-1 --tooth1 60 --order 1,2 --angles 0,405 --coil-fires-every 720"
    })
final class FiringCommand implements Callable<Integer> {

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
      description = "firing order (${DEFAULT-VALUE})")
  private List<Integer> order;

  @Option(
      names = "--angles",
      split = ",",
      paramLabel = "DEG",
      description =
          "of an uneven engine: crank degrees of each cylinder's firing TDC after the first one's,"
              + " in that order, from 0 and below 720")
  private List<Double> angles;

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
      names = "--cranking",
      defaultValue = "200",
      paramLabel = "RPM",
      description = "speed on the starter, rev/min (${DEFAULT-VALUE})")
  private double crankingRpm;

  @Option(
      names = "--coil-fires-every",
      defaultValue = "360",
      paramLabel = "DEG",
      description =
          "360 for wasted spark, 720 for one coil each, 720 / cylinders for one coil in all"
              + " (${DEFAULT-VALUE})")
  private double coilEvery;

  @Override
  public Integer call() {
    if (advance.size() != 2) {
      throw new ParameterException(spec.commandLine(), "--advance needs the least and the most");
    }
    FiringPlan plan = Failures.checked(spec, this::plan);
    Paragraphs out = Paragraphs.of(spec);
    for (double degrees : advance) {
      table(out, plan, degrees, rpm);
    }
    table(out, plan, advance.get(0), crankingRpm);
    BenchText.of(plan).forEach(out::say);
    return 0;
  }

  private FiringPlan plan() {
    return new FiringPlan(
        WheelPattern.parse(wheel),
        tooth1,
        angles == null
            ? FiringOrder.even(order)
            : FiringOrder.of(order, angles.stream().mapToDouble(Double::doubleValue).toArray()),
        new FiringPlan.Demand(
            advance.get(0), advance.get(1), dwellMilliseconds * 1e-3, rpm, crankingRpm, coilEvery));
  }

  private static void table(Paragraphs out, FiringPlan plan, double degrees, double rpm) {
    out.row(String.format(Locale.ROOT, "%s before TDC at %s:", Say.degrees(degrees), Say.rpm(rpm)));
    out.row("cylinder   charge: after tooth     spark: after tooth   teeth between");
    for (FiringTeeth.Firing f : plan.at(degrees, rpm)) {
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
}
