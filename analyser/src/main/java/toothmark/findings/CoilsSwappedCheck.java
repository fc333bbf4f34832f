package toothmark.findings;

import java.util.List;
import toothmark.timing.CoilTiming;
import toothmark.units.Say;

/** Coils fire in each other's place. */
final class CoilsSwappedCheck implements Check {

  private static final int FEWEST_SPARKS = 3;

  @Override
  public String id() {
    return "coils-swapped";
  }

  @Override
  public Outcome examine(Symptoms symptoms) {
    List<CoilTiming> coils = symptoms.seen().timing().coils();
    if (coils.isEmpty()) {
      return Outcome.cannotRun("No coil's advance is known.");
    }
    List<CoilTiming> turned =
        coils.stream()
            .filter(c -> Math.abs(c.turnedDegrees()) > 1 && c.sparks() >= FEWEST_SPARKS)
            .toList();
    if (turned.isEmpty()) {
      return Outcome.quiet();
    }
    Draft d =
        Draft.of(id(), Severity.FAULT, "Coils fire in each other's place.")
            .probability(turned.size() > 1 || coils.size() > 2 ? 0.96 : 0.8);
    for (CoilTiming c : turned) {
      d.saw(
          "\u201c"
              + c.name()
              + "\u201d fires "
              + Say.degrees(Math.abs(c.turnedDegrees()))
              + " away from the top dead centre of its own cylinders, in all its "
              + Words.count(c.sparks(), "spark", "sparks")
              + ".");
    }
    boolean halfTurn = turned.size() == coils.size();
    if (halfTurn) {
      d.against(
          "All recorded coils are off alike. Probes on each other's coil, or a TDC mark of another"
              + " cylinder, would look the same.");
    }
    return Outcome.fires(
        d.ratherThan("The crank signal is sound, so this is not a loss of sync.")
            .next(
                "Put an inductive clamp on each plug lead in turn and compare with the firing order;"
                    + " then check the plugs of the coils' wires.")
            .caution(
                "Do not try to start it meanwhile: it can backfire through the intake. "
                    + Cautions.HIGH_VOLTAGE)
            .picture(Picture.WHEEL));
  }
}
