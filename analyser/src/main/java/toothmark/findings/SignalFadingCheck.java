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
      return Outcome.cannotRun("Only a wave has a strength of its own.");
    }
    double loss = 1 - crank.swings().get().change();
    if (loss < WATCH_LOSS) {
      return Outcome.quiet();
    }
    return Outcome.fires(
        Draft.of(
                id(),
                loss >= FAULT_LOSS ? Severity.FAULT : Severity.WATCH,
                "The crank sensor's signal fades during the capture.")
            .probability(0.85)
            .saw(
                "Its strength, with the speed taken out, falls by "
                    + Say.percent(loss)
                    + " from the first quarter of the record to the last.")
            .ratherThan("A falling speed lowers the voltage too, but not the strength.")
            .against("A pick-up or lead that is filtered loses height at high speed as well.")
            .next("Warm the sensor with a heat gun and measure its resistance cold and hot.")
            .caution(Cautions.UNPLUG)
            .picture(Picture.WAVEFORM));
  }
}
