package toothmark.cli;

import picocli.CommandLine.Option;
import toothmark.timing.PistonTravel;

/** Options that give the lengths of a crank slider. */
final class Slider {

  @Option(names = "--stroke", required = true, paramLabel = "MM", description = "stroke, mm")
  private double stroke;

  @Option(
      names = "--rod",
      required = true,
      paramLabel = "MM",
      description = "length of the connecting rod between centres, mm")
  private double rod;

  @Option(
      names = "--pin-offset",
      paramLabel = "MM",
      description = "offset of the wrist pin towards the side on which the crank goes up, mm (0)")
  private double pinOffset;

  PistonTravel travel() {
    return new PistonTravel(stroke, rod, pinOffset);
  }
}
