package toothmark.findings;

import static org.assertj.core.api.Assertions.assertThat;

/** What the tests of checks ask. */
final class Assertions {

  private Assertions() {}

  static Outcome examine(Check check, Scene scene) {
    return check.examine(new Symptoms(scene.seen()));
  }

  static Finding fires(Check check, Scene scene) {
    Outcome outcome = examine(check, scene);
    assertThat(outcome.finding()).as(check.id()).isPresent();
    Finding f = outcome.finding().get();
    assertThat(f.id()).isEqualTo(check.id());
    assertThat(f.title()).endsWith(".");
    assertThat(f.evidence()).isNotEmpty();
    assertThat(f.nextTest()).endsWith(".");
    assertThat(f.toldApartFrom()).isNotEmpty().allMatch(t -> t.endsWith("."));
    assertThat(f.caution()).endsWith(".");
    return f;
  }

  static void quiet(Check check, Scene scene) {
    Outcome outcome = examine(check, scene);
    assertThat(outcome.finding()).as(check.id()).isEmpty();
    assertThat(outcome.reason()).as(check.id()).isEmpty();
  }

  static void cannotRun(Check check, Scene scene, String reason) {
    Outcome outcome = examine(check, scene);
    assertThat(outcome.finding()).as(check.id()).isEmpty();
    assertThat(outcome.reason()).isEqualTo(reason);
  }
}
