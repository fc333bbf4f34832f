package toothmark.findings;

import java.util.Optional;

/** What was measured of a capture, once, for all checks. */
final class Symptoms {

  private final Observations seen;
  private final Optional<CrankSymptoms> crank;

  Symptoms(Observations seen) {
    this.seen = seen;
    this.crank = seen.crank().map(c -> CrankSymptoms.of(new Turns(c), seen));
  }

  Observations seen() {
    return seen;
  }

  /** What shows at the teeth; empty when they could not be named. */
  Optional<CrankSymptoms> crank() {
    return crank;
  }
}
