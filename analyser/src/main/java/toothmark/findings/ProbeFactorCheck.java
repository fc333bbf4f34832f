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
      return Outcome.cannotRun("no-volts");
    }
    if (crank.swings().isEmpty()) {
      return Outcome.cannotRun("no-amplitude");
    }
    int slots = crank.turns().pattern().slots();
    double volts = crank.swings().get().peakToPeakVolts(slots, FAST_RPM);
    if (volts < BELIEVABLE_VOLTS) {
      return Outcome.quiet();
    }
    return Outcome.fires(
        Draft.of(id(), Severity.WATCH)
            .probability(0.7)
            .saw("volts", Say.scaled(volts, "V"), Say.rpm(FAST_RPM))
            .ratherThan("high-speed")
            .caution("overload")
            .picture(Picture.WAVEFORM));
  }
}
