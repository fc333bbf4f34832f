package toothmark.findings;

import toothmark.units.Measured;
import toothmark.units.Say;

/** The wheel is oval, or bent so that it wobbles twice a turn. */
final class WheelOvalCheck extends CrankCheck {

  /** As for run-out, see {@link WheelRunOutCheck}. */
  private static final double WATCH_DEGREES = 0.15;

  private static final double FAULT_DEGREES = 0.3;

  @Override
  public String id() {
    return "wheel-oval";
  }

  @Override
  Outcome examine(Observations seen, CrankSymptoms crank) {
    if (crank.rim().isEmpty()) {
      return Outcome.cannotRun(WheelRunOutCheck.TOO_FEW_TURNS);
    }
    Measured a = crank.rim().get().oval();
    double sure = a.value() - Say.EXPAND * a.standardUncertainty();
    if (sure < WATCH_DEGREES) {
      return Outcome.quiet();
    }
    return Outcome.fires(
        Draft.of(
                id(),
                sure >= FAULT_DEGREES ? Severity.FAULT : Severity.WATCH,
                "The trigger wheel is not round.")
            .probability(0.85)
            .saw(
                "Teeth come early and late twice a turn, "
                    + Say.degrees(a)
                    + " each way, the same at every speed.")
            .against(
                "A four-cylinder engine also swings its speed twice a turn; that part was taken out"
                    + " by its change with speed.")
            .next("Put a dial gauge on the rim of the wheel and turn the engine by hand.")
            .caution(Cautions.BY_HAND)
            .picture(Picture.WHEEL));
  }
}
