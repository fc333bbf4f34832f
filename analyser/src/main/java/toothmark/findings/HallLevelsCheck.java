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
      return Outcome.cannotRun("no-levels");
    }
    if (Math.abs(q.low()) < STATE && Math.abs(q.high() - 1) < STATE) {
      return Outcome.cannotRun("states-only");
    }
    boolean high = q.low() > LOW_VOLTS;
    boolean low = q.high() < HIGH_VOLTS && q.low() > -LOW_VOLTS;
    if (symptoms.crank().isEmpty() || !high && !low) {
      return Outcome.quiet();
    }
    return Outcome.fires(
        Draft.of(id(), Severity.WATCH)
            .probability(0.7)
            .saw(
                "levels",
                Words.height(q.low(), symptoms.seen()),
                Words.height(q.high(), symptoms.seen()))
            .against("divider")
            .ratherThan("noise")
            .next(high ? "ground" : "pull-up")
            .caution("turning")
            .picture(Picture.WAVEFORM));
  }
}
