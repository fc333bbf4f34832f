package toothmark.findings;

import java.util.List;
import toothmark.edges.SensorKind;
import toothmark.edges.SignalQuality;
import toothmark.units.Say;

/** The sensor's wave is too small: the air gap is too wide, or the sensor is failing. */
final class WeakSignalCheck extends CrankCheck {

  /**
   * Least peak-to-peak voltage while cranking, V. Usual is 0.2 to 2 V, below 0.3 V is marginal
   * (common practice, no source).
   */
  private static final double MARGINAL_VOLTS = 0.3;

  /** Usual cranking speed, rev/min (common practice, no source). */
  private static final double CRANKING_RPM = 200;

  @Override
  public String id() {
    return "weak-signal";
  }

  @Override
  Outcome examine(Observations seen, CrankSymptoms crank) {
    if (seen.edges().kind() != SensorKind.VARIABLE_RELUCTANCE) {
      return Outcome.cannotRun("Only a wave has an amplitude that depends on the air gap.");
    }
    SignalQuality q = seen.edges().quality();
    double volts = (q.high() - q.low()) * CRANKING_RPM / crank.turns().crank().speed().maxRpm();
    List<LostTeeth> lost = crank.losses().of(Losses.SLOW);
    boolean marginal = volts < MARGINAL_VOLTS;
    if (!marginal) {
      return Outcome.quiet();
    }
    Draft d =
        Draft.of(
            id(),
            lost.isEmpty() ? Severity.WATCH : Severity.FAULT,
            "The crank sensor's signal is weak at cranking speed.");
    d.probability(lost.isEmpty() ? 0.7 : 0.95)
        .saw(
            "Its amplitude scales to "
                + Words.volts(volts)
                + " from peak to peak at "
                + Say.rpm(CRANKING_RPM)
                + "; below "
                + Words.volts(MARGINAL_VOLTS)
                + " is marginal.");
    d.sawIf(
        !lost.isEmpty(),
        "A textbook receiver misses teeth "
            + Words.times(lost.size())
            + ", all where the crank is slowest.");
    return Outcome.fires(
        d.ratherThan(
                "An opening wire loses the whole signal at any speed; here only slow teeth go.")
            .next(
                "Measure the air gap with a feeler gauge: 0.5 to 1.0 mm is usual. Then check the"
                    + " sensor's resistance, hot and cold.")
            .caution("Check the wheel's run-out before closing the gap: contact wrecks the sensor.")
            .picture(Picture.WAVEFORM)
            .where(lost.stream().map(LostTeeth::during).toList()));
  }
}
