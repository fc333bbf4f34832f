package toothmark.findings;

import java.util.List;
import toothmark.receiver.SyncLoss;
import toothmark.units.Say;

/** The sensor's wave is too small: the air gap is too wide, or the sensor is failing. */
final class WeakSignalCheck extends CrankCheck {

  /**
   * Least peak-to-peak voltage while cranking to be content with, V. Usual is 0.2 to 2 V, below 0.3
   * V is marginal (common practice, no source); a third more for wear and heat.
   */
  private static final double MARGINAL_VOLTS = 0.4;

  /** Below this it is outside of what is usual, V. */
  private static final double TOO_LOW_VOLTS = 0.2;

  /** Usual cranking speed, rev/min (common practice, no source). */
  private static final double CRANKING_RPM = 200;

  static final String NO_VOLTS =
      "A sound card does not say how many volts its full scale is; calibrate it or use a scope.";

  @Override
  public String id() {
    return "weak-signal";
  }

  @Override
  Outcome examine(Observations seen, CrankSymptoms crank) {
    if (seen.scale() == Observations.Scale.UNKNOWN) {
      return Outcome.cannotRun(NO_VOLTS);
    }
    if (crank.swings().isEmpty()) {
      return Outcome.cannotRun("Only a wave has an amplitude that depends on the air gap.");
    }
    double volts =
        crank.swings().get().peakToPeakVolts(crank.turns().pattern().slots(), CRANKING_RPM);
    if (volts >= MARGINAL_VOLTS) {
      return Outcome.quiet();
    }
    return Outcome.fires(draft(crank, volts));
  }

  private Draft draft(CrankSymptoms crank, double volts) {
    List<LostTeeth> lost = crank.losses().events().stream().filter(l -> cranking(l.rpm())).toList();
    long strays =
        crank.strays().events().stream()
            .filter(s -> cranking(s.rpm()) && s.effect() == Stray.Effect.EDGE)
            .count();
    boolean trouble = lost.size() + strays > 0;
    boolean proven = trouble || volts < TOO_LOW_VOLTS;
    Draft d =
        Draft.of(
            id(),
            proven ? Severity.FAULT : Severity.WATCH,
            "The crank sensor's signal is weak at cranking speed.");
    d.probability(trouble ? 0.96 : proven ? 0.9 : 0.7)
        .saw(
            "Its height in proportion to speed is "
                + Say.scaled(volts, "V")
                + " from peak to peak at "
                + Say.rpm(CRANKING_RPM)
                + "; 0.2 to 2 V is usual, and below 0.3 V is marginal.");
    d.sawIf(
        !lost.isEmpty(),
        "A textbook receiver misses teeth "
            + Words.times(lost.size())
            + " where the crank is slow.");
    d.sawIf(
        strays > 0,
        "It takes noise for a tooth " + Words.times((int) strays) + " where the crank is slow.");
    return d.ratherThan(
            "An opening wire loses the whole signal at any speed; here only slow teeth go.")
        .ratherThan("A probe that divides by ten on a channel set to one shows the same.")
        .next(
            "Measure the air gap with a feeler gauge: 0.5 to 1.0 mm is usual. Then check the"
                + " sensor's resistance, hot and cold.")
        .caution("Check the wheel's run-out before closing the gap: contact wrecks the sensor.")
        .picture(Picture.WAVEFORM)
        .where(lost.stream().map(LostTeeth::during).toList());
  }

  private static boolean cranking(double rpm) {
    return rpm < SyncLoss.CRANKING_BELOW_RPM;
  }
}
