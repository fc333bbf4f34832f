package toothmark.findings;

/** A check that needs the teeth named. */
abstract class CrankCheck implements Check {

  @Override
  public final Outcome examine(Symptoms symptoms) {
    return symptoms
        .crank()
        .map(c -> examine(symptoms.seen(), c))
        .orElseGet(() -> Outcome.cannotRun("undecoded", symptoms.seen().undecodable()));
  }

  abstract Outcome examine(Observations seen, CrankSymptoms crank);
}
