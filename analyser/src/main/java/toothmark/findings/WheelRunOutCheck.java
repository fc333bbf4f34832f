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
      return Outcome.cannotRun("few-turns");
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
        Draft.of(id(), proven ? Severity.FAULT : Severity.WATCH)
            .probability(proven ? 0.97 : strength.isPresent() ? 0.8 : 0.5);
    crank
        .rim()
        .ifPresentOrElse(
            r -> d.saw("latest-at", Say.degrees(runOut), r.highTooth()),
            () -> d.saw("early-and-late", Say.degrees(runOut)));
    seen.stated()
        .sensorCircleMillimetres()
        .ifPresent(
            mm ->
                d.saw(
                    "off-centre",
                    Say.number(Math.toRadians(runOut.value()) * mm / 2, 2),
                    Say.number(mm, 0)));
    double swing = strength.map(m -> share(m, crank)).orElse(0.0);
    d.sawIf(strength.isPresent(), "strength", Say.percent(swing));
    d.sawIf(crank.severalSpeeds(), "all-speeds");
    if (strength.isEmpty() && !crank.severalSpeeds()) {
      d.against("one-speed");
    }
    return d.ratherThan("firing").caution("by-hand").picture(Picture.WHEEL);
  }

  private static double share(Measured strength, CrankSymptoms crank) {
    return Math.toRadians(strength.value()) * crank.turns().pattern().slots();
  }
}
