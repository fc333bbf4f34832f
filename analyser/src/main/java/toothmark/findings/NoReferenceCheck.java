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
        Draft.of(
                id(),
                Severity.NOTE,
                "The wheel has no gap or extra tooth, so tooth 1 is the first one recorded.")
            .probability(0.9)
            .saw("All tooth spaces are alike over " + crank.turns().pattern().slots() + " teeth.")
            .ratherThan("A gap that is filled with noise shows as strays.")
            .next("Record the camshaft or another sensor that marks the turn beside it.")
            .caution(Cautions.TURNING)
            .picture(Picture.TOOTH_PERIOD));
  }
}
