package toothmark.findings;

/**
 * A wheel without a gap or extra tooth: no turn can be told from the next, nor, unless the job
 * sheet tells, how many teeth make one.
 */
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
    int teeth = crank.turns().pattern().slots();
    boolean told = seen.stated().pattern().filter(p -> !p.hasReference()).isPresent();
    Draft draft =
        Draft.of(id(), told ? Severity.NOTE : Severity.WATCH)
            .probability(0.9)
            .saw("alike", teeth)
            .ratherThan("noise")
            .caution("turning")
            .picture(Picture.TOOTH_PERIOD);
    return Outcome.fires(
        told ? draft : draft.title("uncounted", teeth).saw("others-too").next("count"));
  }
}
