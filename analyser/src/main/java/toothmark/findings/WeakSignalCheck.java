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

  @Override
  public String id() {
    return "weak-signal";
  }

  @Override
  Outcome examine(Observations seen, CrankSymptoms crank) {
    if (seen.scale() == Observations.Scale.UNKNOWN) {
      return Outcome.cannotRun("no-volts");
    }
    if (crank.swings().isEmpty()) {
      return Outcome.cannotRun("no-air-gap");
    }
    double volts =
        crank.swings().get().peakToPeakVolts(crank.turns().pattern().slots(), CRANKING_RPM);
    if (volts >= MARGINAL_VOLTS) {
      return Outcome.quiet();
    }
    List<LostTeeth> lost = crank.losses().events().stream().filter(l -> cranking(l.rpm())).toList();
    int strays =
        (int)
            crank.strays().events().stream()
                .filter(s -> cranking(s.rpm()) && s.effect() == Stray.Effect.EDGE)
                .count();
    boolean cutOff = seen.edges().quality().clippedShare() >= SensorClippedCheck.MATTERS;
    return cutOff && lost.size() + strays == 0
        ? Outcome.cannotRun("cut-off")
        : Outcome.fires(draft(volts, lost, strays));
  }

  private Draft draft(double volts, List<LostTeeth> lost, int strays) {
    boolean trouble = lost.size() + strays > 0;
    boolean proven = trouble || volts < TOO_LOW_VOLTS;
    Draft d = Draft.of(id(), proven ? Severity.FAULT : Severity.WATCH);
    d.probability(trouble ? 0.96 : proven ? 0.9 : 0.7)
        .saw("height", Say.scaled(volts, "V"), Say.rpm(CRANKING_RPM));
    d.sawIf(!lost.isEmpty(), "misses", Words.times(lost.size()));
    d.sawIf(strays > 0, "noise", Words.times(strays));
    return d.ratherThan("open-wire")
        .ratherThan("probe")
        .caution("run-out")
        .picture(Picture.WAVEFORM)
        .where(lost.stream().map(LostTeeth::during).toList());
  }

  private static boolean cranking(double rpm) {
    return rpm < SyncLoss.CRANKING_BELOW_RPM;
  }
}
