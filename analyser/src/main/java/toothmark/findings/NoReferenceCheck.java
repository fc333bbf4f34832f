package toothmark.findings;

/** A wheel without a gap or extra tooth: no turn can be told from the next. */
final class NoReferenceCheck extends CrankCheck {

  @Override
  public String id() {
    return "wheel-without-reference";
  }

  @Override
  Outcome examine(Observations seen, CrankSymptoms crank) {
    if (crank.turns().pattern().hasReference()) {
      return Outcome.quiet();
    }
    return Outcome.fires(
        Draft.of(id(), Severity.NOTE)
            .probability(0.9)
            .saw("alike", crank.turns().pattern().slots())
            .ratherThan("noise")
            .caution("turning")
            .picture(Picture.TOOTH_PERIOD));
  }
}
