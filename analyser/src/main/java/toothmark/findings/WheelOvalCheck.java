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
      return Outcome.cannotRun(WheelRunOutCheck.TOO_FEW_TURNS);
    }
    int cylinders = seen.stated().cylinders();
    if (cylinders == 1 || cylinders == 2 || cylinders == 4 || cylinders == 0) {
      return Outcome.cannotRun(
          "On an engine that fires twice a turn or less an oval wheel looks like its own ripple.");
    }
    Measured a = crank.rim().get().oval();
    double sure = a.value() - Say.EXPAND * a.standardUncertainty();
    if (sure < WATCH_DEGREES) {
      return Outcome.quiet();
    }
    return Outcome.fires(
        Draft.of(
                id(),
                sure >= FAULT_DEGREES && crank.severalSpeeds() ? Severity.FAULT : Severity.WATCH,
                "The trigger wheel is not round.")
            .probability(0.85)
            .saw(
                "Teeth come early and late twice a turn, "
                    + Say.degrees(a)
                    + " each way, the same at every speed.")
            .ratherThan("Firing swings the speed more often than twice a turn on this engine.")
            .next("Put a dial gauge on the rim of the wheel and turn the engine by hand.")
            .caution(Cautions.BY_HAND)
            .picture(Picture.WHEEL));
  }
}
