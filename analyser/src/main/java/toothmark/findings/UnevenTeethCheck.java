package toothmark.findings;

import toothmark.units.Say;

/** The teeth all stand more or less off their places: the wheel is badly cut. */
final class UnevenTeethCheck extends CrankCheck {

  /** Scatter worth a look, as a share of the pitch; a machined wheel keeps to under 0.5 %. */
  private static final double WATCH_PITCH = 0.015;

  @Override
  public String id() {
    return "uneven-teeth";
  }

  @Override
  Outcome examine(Observations seen, CrankSymptoms crank) {
    if (crank.rim().isEmpty()) {
      return Outcome.cannotRun("few-turns");
    }
    RimForm rim = crank.rim().get();
    double pitch = crank.turns().pattern().pitchDegrees();
    if (rim.scatterDegrees() < WATCH_PITCH * pitch) {
      return Outcome.quiet();
    }
    return Outcome.fires(
        Draft.of(id(), Severity.WATCH)
            .probability(0.8)
            .saw("off-place", Say.degrees(rim.scatterDegrees()))
            .ratherThan("jitter")
            .caution("by-hand")
            .picture(Picture.WHEEL));
  }
}
