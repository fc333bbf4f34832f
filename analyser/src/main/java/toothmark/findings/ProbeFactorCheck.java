package toothmark.findings;

import toothmark.units.Say;

/**
 * The voltages are so high, or so low with nothing amiss, that the probe's factor is likely wrong.
 */
final class ProbeFactorCheck extends CrankCheck {

  /**
   * Highest believable height from peak to peak at 6000 rev/min, V: 20 to 100 V and more are usual
   * at the highest speeds (common practice), 26 V was measured on a bench wheel.
   */
  private static final double BELIEVABLE_VOLTS = 240;

  private static final double FAST_RPM = 6000;

  /** Probes divide by ten, or do not. */
  private static final double FACTOR = 10;

  /** More is not usual on the starter, V from peak to peak (common practice). */
  private static final double HIGHEST_CRANKING_VOLTS = 4;

  @Override
  public String id() {
    return "probe-factor";
  }

  @Override
  Outcome examine(Observations seen, CrankSymptoms crank) {
    if (seen.scale() == Observations.Scale.UNKNOWN) {
      return seen.noVolts();
    }
    if (crank.swings().isEmpty()) {
      return Outcome.cannotRun("no-amplitude");
    }
    int slots = crank.turns().pattern().slots();
    double volts = crank.swings().get().peakToPeakVolts(slots, FAST_RPM);
    if (volts >= BELIEVABLE_VOLTS) {
      return Outcome.fires(
          draft().saw("volts", Say.scaled(volts, "V"), Say.rpm(FAST_RPM)).ratherThan("high-speed"));
    }
    if (SensorClippedCheck.cutsOff(seen)) {
      return Outcome.cannotRun("cut-off");
    }
    double cranking = WeakSignalCheck.crankingVolts(crank);
    return WeakSignalCheck.onlyLow(crank) && FACTOR * cranking <= HIGHEST_CRANKING_VOLTS
        ? Outcome.fires(
            draft()
                .title("low")
                .saw("tenth", Say.scaled(cranking, "V"), Say.scaled(FACTOR * cranking, "V"))
                .saw("nothing-lost")
                .ratherThan("weak"))
        : Outcome.quiet();
  }

  private Draft draft() {
    return Draft.of(id(), Severity.WATCH)
        .probability(0.7)
        .caution("overload")
        .picture(Picture.WAVEFORM);
  }
}
