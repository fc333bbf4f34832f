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
      return Outcome.cannotRun("cylinders-unknown");
    }
    Optional<HalfOrder> half = HalfOrder.of(crank.turns(), seen.stated().cylinders());
    if (half.isEmpty()) {
      return Outcome.cannotRun("few-cycles");
    }
    HalfOrder h = half.get();
    if (h.difference() - Say.EXPAND * h.uncertainty() < WATCH) {
      return Outcome.quiet();
    }
    return Outcome.fires(
        Draft.of(id(), Severity.WATCH)
            .probability(0.75)
            .saw("differs", Say.percent(h.difference()))
            .ratherThan("wheel-errors")
            .caution("raw-fuel", "plug-lead")
            .picture(Picture.ORDERS));
  }
}
