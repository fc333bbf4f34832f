package toothmark.findings;

import toothmark.edges.SensorKind;
import toothmark.edges.SignalQuality;
import toothmark.units.Say;

/** The recorder takes too few samples of each tooth. */
final class CaptureTooSlowCheck implements Check {

  /** Samples a tooth for a wave to be drawn well: 8 to 10 (common practice, no source). */
  private static final double WANTED = 8;

  /**
   * Below this many the times of teeth rest on guesswork: 2 is the limit of sampling (Shannon,
   * Proc. IRE 37 (1949) 10-21), and a real filter needs twice that and more.
   */
  private static final double NEEDED = 5.5;

  /** Edges at every other sample that make no wheel are noise, which fills any sample rate. */
  private static final double NOISE = 2.5;

  @Override
  public String id() {
    return "capture-too-slow";
  }

  @Override
  public Outcome examine(Symptoms symptoms) {
    SignalQuality q = symptoms.seen().edges().quality();
    if (q.sampleRateHz() <= 0 || symptoms.seen().edges().kind() == SensorKind.EDGES_ONLY) {
      return Outcome.quiet();
    }
    double samples = q.samplesPerEdge();
    boolean noise = symptoms.crank().isEmpty() && samples < NOISE;
    if (samples <= 0 || samples >= WANTED || noise) {
      return Outcome.quiet();
    }
    Severity severity = samples < NEEDED ? Severity.FAULT : Severity.WATCH;
    double better = q.sampleRateHz() * 12 / samples;
    return Outcome.fires(
        Draft.of(id(), severity, "The recorder is too slow for this speed and wheel.")
            .probability(0.97)
            .saw(
                "At the highest speed there are only "
                    + Say.number(samples, 1)
                    + " samples for each tooth at "
                    + Say.scaled(q.sampleRateHz(), "Hz")
                    + "; 8 to 10 are wanted.")
            .ratherThan(
                "Real jitter is as large at low speed; this grows with speed and steps by whole"
                    + " samples.")
            .next(
                "Record at "
                    + Say.scaled(Math.ceil(better / 1e3) * 1e3, "Hz")
                    + " or more, or at a lower engine speed.")
            .caution(Cautions.TURNING)
            .picture(Picture.WAVEFORM));
  }
}
