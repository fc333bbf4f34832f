package toothmark.findings;

import java.util.Optional;

/**
 * What a check has to say.
 *
 * @param finding what it found; empty when it stays quiet or could not run
 * @param reason why it could not run, one sentence; empty text when it ran
 */
record Outcome(Optional<Finding> finding, String reason) {

  static Outcome fires(Draft draft) {
    return new Outcome(Optional.of(draft.finish()), "");
  }

  static Outcome quiet() {
    return new Outcome(Optional.empty(), "");
  }

  static Outcome cannotRun(String key, Object... values) {
    return new Outcome(Optional.empty(), Words.of("any." + key, values));
  }
}
