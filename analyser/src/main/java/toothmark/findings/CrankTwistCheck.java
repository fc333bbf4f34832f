package toothmark.findings;

/** The crank twists between its pistons and the wheel. */
final class CrankTwistCheck extends CrankCheck {

  /** Worth a look, degrees: a tenth of the 2 degrees that makers allow. */
  private static final double WATCH_DEGREES = 0.2;

  @Override
  public String id() {
    return "crank-twist";
  }

  @Override
  Outcome examine(Observations seen, CrankSymptoms crank) {
    if (!crank.severalSpeeds()) {
      return Outcome.cannotRun("no-sweep");
    }
    return crank
        .resonance()
        .filter(r -> r.degrees() >= WATCH_DEGREES && SensorBracketCheck.isTwist(r))
        .map(r -> Outcome.fires(draft(r)))
        .orElse(Outcome.quiet());
  }

  private Draft draft(Resonance r) {
    return SensorBracketCheck.describe(r, Draft.of(id(), Severity.WATCH))
        .probability(0.65)
        .saw("strength")
        .against("along-the-rim")
        .ratherThan("sensor")
        .caution("worst-speed", "turning")
        .picture(Picture.ORDERS);
  }
}
