package toothmark.findings;

/** The crank twists between its pistons and the wheel. */
final class CrankTwistCheck extends ResonanceCheck {

  /** Worth a look, degrees: a tenth of the 2 degrees that makers allow. */
  private static final double WATCH_DEGREES = 0.2;

  @Override
  public String id() {
    return "crank-twist";
  }

  @Override
  boolean isIt(Resonance r) {
    return r.degrees() >= WATCH_DEGREES && isTwist(r);
  }

  @Override
  Draft draft(Resonance r) {
    return begin(r, Severity.WATCH)
        .probability(0.65)
        .saw("strength")
        .against("along-the-rim")
        .ratherThan("sensor")
        .caution("worst-speed", "turning")
        .picture(Picture.ORDERS);
  }
}
