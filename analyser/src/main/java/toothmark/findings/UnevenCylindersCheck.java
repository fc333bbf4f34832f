package toothmark.findings;

import java.util.Optional;
import toothmark.units.Say;

/** One cylinder pushes less than the others. */
final class UnevenCylindersCheck extends CrankCheck {

  /** Difference of a cylinder's share of the speed worth a look. */
  private static final double WATCH = 0.01;

  @Override
  public String id() {
    return "uneven-cylinders";
  }

  @Override
  Outcome examine(Observations seen, CrankSymptoms crank) {
    if (seen.stated().cylinders() < 2) {
      return Outcome.cannotRun("The job sheet does not say how many cylinders there are.");
    }
    Optional<HalfOrder> half = HalfOrder.of(crank.turns(), seen.stated().cylinders());
    if (half.isEmpty()) {
      return Outcome.cannotRun(
          "Cylinders can be compared only over ten engine cycles or more at a running speed.");
    }
    HalfOrder h = half.get();
    if (h.difference() - Say.EXPAND * h.uncertainty() < WATCH) {
      return Outcome.quiet();
    }
    return Outcome.fires(
        Draft.of(id(), Severity.WATCH, "One cylinder pushes less than the others.")
            .probability(0.75)
            .saw(
                "Between the two turns of a cycle the same part of the turn differs by "
                    + Say.percent(h.difference())
                    + " in speed, cycle after cycle.")
            .ratherThan("The wheel's own errors repeat every turn; this repeats every second turn.")
            .next("Compare the cylinders' compression, plugs and injectors.")
            .caution(Cautions.RAW_FUEL + " Ground a plug lead that is taken off.")
            .picture(Picture.ORDERS));
  }
}
