package toothmark.findings;

import toothmark.units.Measured;
import toothmark.units.Say;

/** The wheel is oval, or bent so that it wobbles twice a turn. */
final class WheelOvalCheck extends CrankCheck {

  /** As for run-out, see {@link WheelRunOutCheck}. */
  private static final double WATCH_DEGREES = 0.2;

  private static final double FAULT_DEGREES = 0.4;

  @Override
  public String id() {
    return "wheel-oval";
  }

  @Override
  Outcome examine(Observations seen, CrankSymptoms crank) {
    if (crank.rim().isEmpty()) {
      return Outcome.cannotRun("few-turns");
    }
    int cylinders = seen.stated().cylinders();
    if (cylinders == 1 || cylinders == 2 || cylinders == 4 || cylinders == 0) {
      return Outcome.cannotRun("fires-slowly");
    }
    Measured a = crank.rim().get().oval();
    double sure = a.value() - Say.EXPAND * a.standardUncertainty();
    if (sure < WATCH_DEGREES) {
      return Outcome.quiet();
    }
    return Outcome.fires(
        Draft.of(
                id(),
                sure >= FAULT_DEGREES && crank.severalSpeeds() ? Severity.FAULT : Severity.WATCH)
            .probability(0.85)
            .saw("early-and-late", Say.degrees(a))
            .ratherThan("firing")
            .caution("by-hand")
            .picture(Picture.WHEEL));
  }
}
