package toothmark.cli;

import java.util.Locale;
import java.util.concurrent.Callable;
import picocli.CommandLine.ArgGroup;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Spec;
import toothmark.timing.PistonTravel;
import toothmark.units.Say;

/** Tabulates piston travel against crank angle. */
@Command(
    name = "piston",
    mixinStandardHelpOptions = true,
    description = {
      "Tabulates how far the piston is below its highest point at each crank angle.",
      ""
    },
    footerHeading = "%nExamples:%n",
    footer = {
      "  toothmark piston --stroke 80 --rod 140",
      "  toothmark piston --stroke 80 --rod 140 --pin-offset 1 --step 5 --to 60"
    })
final class PistonCommand implements Callable<Integer> {

  @Spec private CommandSpec spec;

  @ArgGroup(exclusive = false, multiplicity = "1")
  private Slider slider;

  @Option(
      names = "--step",
      paramLabel = "DEG",
      defaultValue = "5",
      description = "step of the table, whole degrees (${DEFAULT-VALUE})")
  private int step;

  @Option(
      names = "--to",
      paramLabel = "DEG",
      defaultValue = "180",
      description = "last angle, degrees (${DEFAULT-VALUE})")
  private int to;

  @Override
  public Integer call() {
    PistonTravel travel = Failures.checked(spec, slider::travel);
    if (step < 1 || to < step || to > 360) {
      throw new ParameterException(
          spec.commandLine(), "--step must be 1 or more, and --to from the step to 360");
    }
    Paragraphs out = Paragraphs.of(spec);
    out.row("degrees   before TDC, mm   after TDC, mm");
    for (int d = 0; d <= to; d += step) {
      out.row(
          String.format(
              Locale.ROOT,
              "%7d   %14.3f   %13.3f",
              d,
              travel.millimetresBelowTop(-d),
              travel.millimetresBelowTop(d)));
    }
    out.say("Degrees are counted from where crank and rod stand in line.");
    if (travel.pinOffsetMillimetres() != 0) {
      out.say("The piston stands highest at " + Say.degrees(travel.highestDegrees()) + ".");
    }
    return 0;
  }
}
