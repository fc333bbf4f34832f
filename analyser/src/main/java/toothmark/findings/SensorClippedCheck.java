package toothmark.findings;

import toothmark.edges.SensorKind;
import toothmark.edges.SignalQuality;
import toothmark.units.Say;

/** The wave is cut off flat at the recorder's limit. */
final class SensorClippedCheck implements Check {

  /** Below this share of all samples a few peaks only touch the limit. */
  private static final double MATTERS = 0.005;

  @Override
  public String id() {
    return "sensor-clipped";
  }

  @Override
  public Outcome examine(Symptoms symptoms) {
    if (symptoms.seen().edges().kind() != SensorKind.VARIABLE_RELUCTANCE) {
      return Outcome.cannotRun("Only a wave can be cut off; this signal has two levels or none.");
    }
    SignalQuality q = symptoms.seen().edges().quality();
    if (q.clippedShare() < MATTERS) {
      return Outcome.quiet();
    }
    return Outcome.fires(
        Draft.of(id(), Severity.WATCH, "The crank signal is cut off at the recorder's limit.")
            .probability(0.97)
            .saw(
                Say.percent(q.clippedShare())
                    + " of the samples stand in flat tops at "
                    + Words.height(q.low(), symptoms.seen())
                    + " and "
                    + Words.height(q.high(), symptoms.seen())
                    + ".")
            .saw(
                "Zero crossings are still right, so teeth and timing hold; the amplitude does not.")
            .ratherThan(
                "An input circuit that squares the signal off has steep sides down to zero; here the"
                    + " sides still slope like a wave's.")
            .next("Choose a larger range or an attenuating probe, and record again.")
            .caution(
                "A variable-reluctance sensor can give 100 V at high speed; use a divider before a"
                    + " sound card.")
            .picture(Picture.WAVEFORM));
  }
}
