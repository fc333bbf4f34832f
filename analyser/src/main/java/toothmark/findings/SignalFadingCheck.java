package toothmark.findings;

import toothmark.units.Say;

/** The sensor's signal loses strength while it is recorded. */
final class SignalFadingCheck extends CrankCheck {

  /** Share of the strength that may go within a capture: a sound sensor's keeps within 5 %. */
  private static final double WATCH_LOSS = 0.25;

  private static final double FAULT_LOSS = 0.5;

  @Override
  public String id() {
    return "signal-fading";
  }

  @Override
  Outcome examine(Observations seen, CrankSymptoms crank) {
    if (crank.swings().isEmpty()) {
      return Outcome.cannotRun("no-strength");
    }
    double loss = 1 - crank.swings().get().change();
    if (loss < WATCH_LOSS) {
      return Outcome.quiet();
    }
    return Outcome.fires(
        Draft.of(id(), loss >= FAULT_LOSS ? Severity.FAULT : Severity.WATCH)
            .probability(0.85)
            .saw("falls", Say.percent(loss))
            .ratherThan("speed")
            .against("filtered")
            .caution("unplug")
            .picture(Picture.WAVEFORM));
  }
}
