package toothmark.findings;

import toothmark.units.Measured;
import toothmark.units.Say;

/** The wheel runs off centre. */
final class WheelRunOutCheck extends CrankCheck {

  /**
   * Amplitude worth a look, degrees: 0.1 mm off centre on a 120 mm wheel (peak error e/R; encoder
   * practice).
   */
  private static final double WATCH_DEGREES = 0.1;

  /**
   * Amplitude to mend, degrees: about 0.25 mm off centre on 150 mm, that is, a total reading of 0.5
   * mm, as much as the least usual air gap.
   */
  private static final double FAULT_DEGREES = 0.18;

  @Override
  public String id() {
    return "wheel-run-out";
  }

  @Override
  Outcome examine(Observations seen, CrankSymptoms crank) {
    if (crank.rim().isEmpty()) {
      return Outcome.cannotRun(TOO_FEW_TURNS);
    }
    RimForm rim = crank.rim().get();
    Measured a = rim.runOut();
    double sure = a.value() - Say.EXPAND * a.standardUncertainty();
    if (sure < WATCH_DEGREES) {
      return Outcome.quiet();
    }
    return Outcome.fires(draft(seen, crank, rim, sure));
  }

  private Draft draft(Observations seen, CrankSymptoms crank, RimForm rim, double sure) {
    boolean strengths = rim.quadrature() == RimForm.Quadrature.SEEN;
    boolean proven = sure >= FAULT_DEGREES && (strengths || crank.severalSpeeds());
    Draft d =
        Draft.of(
                id(),
                proven ? Severity.FAULT : Severity.WATCH,
                "The trigger wheel runs off centre.")
            .probability(proven ? 0.97 : strengths ? 0.8 : 0.5)
            .saw(
                "Teeth come early on one side and late on the other, "
                    + Say.degrees(rim.runOut())
                    + " each way, once a turn; latest at tooth "
                    + rim.highTooth()
                    + ".");
    seen.stated()
        .sensorCircleMillimetres()
        .ifPresent(
            mm ->
                d.saw(
                    "That is "
                        + Say.number(Math.toRadians(rim.runOut().value()) * mm / 2, 2)
                        + " mm off centre on a circle of "
                        + Say.number(mm, 0)
                        + " mm, twice as much on a dial gauge."));
    d.sawIf(
        strengths,
        "The signal's strength also swings once a turn, by "
            + Say.percent(rim.strengthWave())
            + " each way and a quarter of a turn apart, as on a rim that is off centre.");
    d.sawIf(crank.severalSpeeds(), "It is the same angle at all speeds of the capture.");
    if (!strengths && !crank.severalSpeeds()) {
      d.against("At one speed, cylinders that push unevenly can look the same.");
    }
    return d.ratherThan(
            "Firing swings the speed too, but several times a turn and less as speed rises.")
        .next(
            "Put a dial gauge on the rim of the wheel and turn the engine by hand: the reading"
                + " is twice the offset.")
        .caution(Cautions.BY_HAND)
        .picture(Picture.WHEEL);
  }

  static final String TOO_FEW_TURNS =
      "The form of the wheel shows only over five turns or more at a running speed.";
}
