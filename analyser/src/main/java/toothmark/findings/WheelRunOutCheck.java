package toothmark.findings;

import java.util.Optional;
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
    Optional<RimForm> rim = crank.rim();
    Optional<Measured> strength =
        crank
            .swings()
            .flatMap(w -> w.runOut(crank.turns().pattern()))
            .filter(m -> lowerBound(m) > 0 && agrees(rim));
    Optional<Measured> places = rim.map(RimForm::runOut);
    Optional<Measured> both = strength.isPresent() ? mean(strength.get(), places) : places;
    if (both.isEmpty()) {
      return Outcome.cannotRun(TOO_FEW_TURNS);
    }
    return lowerBound(both.get()) < WATCH_DEGREES
        ? Outcome.quiet()
        : Outcome.fires(draft(seen, crank, both.get(), strength));
  }

  /** A wave in the strength that does not fit the places of the teeth comes from elsewhere. */
  private static boolean agrees(Optional<RimForm> rim) {
    return rim.isEmpty() || rim.get().quadrature() == RimForm.Quadrature.SEEN;
  }

  private static double lowerBound(Measured m) {
    return m.value() - Say.EXPAND * m.standardUncertainty();
  }

  /** Mean of two independent estimates, weighted by their variances. */
  private static Optional<Measured> mean(Measured a, Optional<Measured> b) {
    if (b.isEmpty()) {
      return Optional.of(a);
    }
    double p = 1 / Math.pow(a.standardUncertainty(), 2);
    double q = 1 / Math.pow(b.get().standardUncertainty(), 2);
    double value = (p * a.value() + q * b.get().value()) / (p + q);
    return Optional.of(new Measured(value, 1 / Math.sqrt(p + q)));
  }

  private Draft draft(
      Observations seen, CrankSymptoms crank, Measured runOut, Optional<Measured> strength) {
    boolean proven =
        lowerBound(runOut) >= FAULT_DEGREES && (strength.isPresent() || crank.severalSpeeds());
    Draft d =
        Draft.of(
                id(),
                proven ? Severity.FAULT : Severity.WATCH,
                "The trigger wheel runs off centre.")
            .probability(proven ? 0.97 : strength.isPresent() ? 0.8 : 0.5)
            .saw(
                "Teeth come early on one side and late on the other, by "
                    + Say.degrees(runOut)
                    + " each way, once a turn"
                    + crank.rim().map(r -> "; latest at tooth " + r.highTooth()).orElse("")
                    + ".");
    seen.stated()
        .sensorCircleMillimetres()
        .ifPresent(
            mm ->
                d.saw(
                    "That is "
                        + Say.number(Math.toRadians(runOut.value()) * mm / 2, 2)
                        + " mm off centre on a circle of "
                        + Say.number(mm, 0)
                        + " mm, twice as much on a dial gauge."));
    double swing = strength.map(m -> share(m, crank)).orElse(0.0);
    d.sawIf(
        strength.isPresent(),
        "The signal's strength swings once a turn, by "
            + Say.percent(swing)
            + " each way, as on a rim that comes nearer and goes away.");
    d.sawIf(crank.severalSpeeds(), "It is the same angle at all speeds of the capture.");
    if (strength.isEmpty() && !crank.severalSpeeds()) {
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

  private static double share(Measured strength, CrankSymptoms crank) {
    return Math.toRadians(strength.value()) * crank.turns().pattern().slots();
  }

  static final String TOO_FEW_TURNS =
      "The form of the wheel shows only over five turns or more at a running speed.";
}
