package toothmark.findings;

import toothmark.edges.SensorKind;
import toothmark.edges.SignalQuality;

/** A switching sensor does not reach its levels. */
final class HallLevelsCheck implements Check {

  /** Highest low and lowest high level of 5 V logic, V (TTL levels; JEDEC JESD8C for 3.3 V). */
  private static final double LOW_VOLTS = 0.8;

  private static final double HIGH_VOLTS = 2.0;

  /** States are written as 0 and 1; levels are known to about this. */
  private static final double STATE = 0.01;

  @Override
  public String id() {
    return "hall-levels-poor";
  }

  @Override
  public Outcome examine(Symptoms symptoms) {
    SignalQuality q = symptoms.seen().edges().quality();
    if (symptoms.seen().edges().kind() != SensorKind.HALL || q.sampleRateHz() <= 0) {
      return Outcome.cannotRun("Only samples of a switching sensor show its levels.");
    }
    if (Math.abs(q.low()) < STATE && Math.abs(q.high() - 1) < STATE) {
      return Outcome.cannotRun("The channel holds states, 0 and 1, and no voltages.");
    }
    boolean high = q.low() > LOW_VOLTS;
    boolean low = q.high() < HIGH_VOLTS && q.low() > -LOW_VOLTS;
    if (symptoms.crank().isEmpty() || !high && !low) {
      return Outcome.quiet();
    }
    return Outcome.fires(
        Draft.of(id(), Severity.WATCH, "The sensor's output does not reach its levels.")
            .probability(0.7)
            .saw(
                "It switches between "
                    + Words.height(q.low(), symptoms.seen())
                    + " and "
                    + Words.height(q.high(), symptoms.seen())
                    + "; a logic input wants under 0.8 V and over 2.0 V.")
            .against("A probe with a divider set wrong shows the same.")
            .ratherThan(
                "Noise and spikes would only widen the levels; here even the outermost sample falls short.")
            .next(
                high
                    ? "Measure the voltage between the sensor's ground and the engine's while it runs."
                    : "Check the pull-up resistor and the sensor's supply.")
            .caution(Cautions.TURNING)
            .picture(Picture.WAVEFORM));
  }
}
