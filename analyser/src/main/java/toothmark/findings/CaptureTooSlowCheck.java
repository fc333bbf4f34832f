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

  /** No noise of a still sensor spans so much, V, ... */
  private static final double WAVE_VOLTS = 1;

  /** ... and what spans less than this many deviations from sample to sample is no smooth wave. */
  private static final double SMOOTH = 10;

  /** By how much to raise a rate at which not even the teeth can be counted. */
  private static final double MUCH_FASTER = 10;

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
    if (jumps(symptoms.seen())) {
      return Outcome.fires(
          draft(Severity.FAULT, MUCH_FASTER * q.sampleRateHz())
              .saw(
                  "jumps",
                  Words.height(q.high() - q.low(), symptoms.seen()),
                  Say.scaled(q.sampleRateHz(), "Hz")));
    }
    double samples = q.samplesPerEdge();
    boolean noise = symptoms.crank().isEmpty() && samples < NOISE;
    if (samples <= 0 || samples >= WANTED || noise) {
      return Outcome.quiet();
    }
    Severity severity = samples < NEEDED ? Severity.FAULT : Severity.WATCH;
    return Outcome.fires(
        draft(severity, q.sampleRateHz() * 12 / samples)
            .saw("samples", Say.number(samples, 1), Say.scaled(q.sampleRateHz(), "Hz")));
  }

  /** Whether an undecoded wave of volts has no smooth course from sample to sample. */
  static boolean jumps(Observations seen) {
    SignalQuality q = seen.edges().quality();
    double span = q.high() - q.low();
    return seen.crank().isEmpty()
        && seen.edges().kind() == SensorKind.VARIABLE_RELUCTANCE
        && seen.scale() == Observations.Scale.VOLTS
        && span > WAVE_VOLTS
        && span < SMOOTH * q.noise();
  }

  private Draft draft(Severity severity, double better) {
    return Draft.of(id(), severity)
        .probability(0.97)
        .ratherThan("real-jitter")
        .next("record-at", Say.scaled(Math.ceil(better / 1e3) * 1e3, "Hz"))
        .caution("turning")
        .picture(Picture.WAVEFORM);
  }
}
