package toothmark.findings;

import toothmark.units.Say;

/** The voltages are so high that the probe's factor is likely wrong. */
final class ProbeFactorCheck extends CrankCheck {

  /**
   * Highest believable height from peak to peak at 6000 rev/min, V: 20 to 100 V and more are usual
   * at the highest speeds (common practice), 26 V was measured on a bench wheel.
   */
  private static final double BELIEVABLE_VOLTS = 240;

  private static final double FAST_RPM = 6000;

  @Override
  public String id() {
    return "probe-factor";
  }

  @Override
  Outcome examine(Observations seen, CrankSymptoms crank) {
    if (seen.scale() == Observations.Scale.UNKNOWN) {
      return Outcome.cannotRun(WeakSignalCheck.NO_VOLTS);
    }
    if (crank.swings().isEmpty()) {
      return Outcome.cannotRun("Only a wave has an amplitude to judge the probe by.");
    }
    int slots = crank.turns().pattern().slots();
    double volts = crank.swings().get().peakToPeakVolts(slots, FAST_RPM);
    if (volts < BELIEVABLE_VOLTS) {
      return Outcome.quiet();
    }
    return Outcome.fires(
        Draft.of(id(), Severity.WATCH, "The probe's factor looks wrong: the voltages are too high.")
            .probability(0.7)
            .saw(
                "In proportion to speed the signal would reach "
                    + Say.scaled(volts, "V")
                    + " from peak to peak at "
                    + Say.rpm(FAST_RPM)
                    + "; 20 to 100 V is usual. Times are not affected.")
            .ratherThan("High speed gives more volts too, and is allowed for.")
            .next("Touch the probe to a battery of known voltage and compare.")
            .caution("A probe set to x1 where x10 is meant may overload the recorder's input.")
            .picture(Picture.WAVEFORM));
  }
}
