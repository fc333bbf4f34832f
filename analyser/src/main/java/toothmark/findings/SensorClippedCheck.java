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
      return Outcome.cannotRun("no-wave");
    }
    SignalQuality q = symptoms.seen().edges().quality();
    if (!cutsOff(symptoms.seen())) {
      return Outcome.quiet();
    }
    return Outcome.fires(
        Draft.of(id(), Severity.WATCH)
            .probability(0.97)
            .saw(
                "flat-tops",
                Say.percent(q.clippedShare()),
                Words.height(q.low(), symptoms.seen()),
                Words.height(q.high(), symptoms.seen()))
            .saw("crossings")
            .ratherThan("squared")
            .caution("high-voltage-wave")
            .picture(Picture.WAVEFORM));
  }

  /** Whether so much is cut off that the height of the wave is not known. */
  static boolean cutsOff(Observations seen) {
    return seen.edges().quality().clippedShare() >= MATTERS;
  }
}
