package toothmark.findings;

import java.util.Set;

/** Where the wheel itself is in doubt, nothing that rests on the numbers of its teeth is proven. */
final class WheelDoubt {

  /** Below this the wheel is in doubt; the limit of a proven mismatch as well. */
  static final double SURE = 0.95;

  private static final double NO_REFERENCE = 0.5;

  private static final Set<String> RESTS_ON_NUMBERS =
      Set.of(
          "wheel-misaligned",
          "wheel-run-out",
          "damaged-tooth",
          "extra-wheel-feature",
          "gap-noise",
          "timing-scatter",
          "coils-swapped",
          "wheel-pattern-mismatch",
          "coil-misses",
          "double-sparks");

  private WheelDoubt() {}

  /**
   * A finding with the severity that the wheel's certainty allows.
   *
   * @param f as its check gave it
   * @param symptoms of the same capture
   * @return the same, or a watch with the doubt among what speaks against it
   */
  static Finding weigh(Finding f, Symptoms symptoms) {
    double confidence = symptoms.crank().map(WheelDoubt::confidence).orElse(1.0);
    return confidence < SURE && f.severity() == Severity.FAULT && RESTS_ON_NUMBERS.contains(f.id())
        ? f.doubted(confidence, Words.of("any.wheel-doubt"))
        : f;
  }

  /** Without a gap or extra tooth even the number of slots in a turn is a guess. */
  private static double confidence(CrankSymptoms crank) {
    boolean reference = crank.turns().pattern().hasReference();
    return reference ? crank.turns().crank().identification().confidence() : NO_REFERENCE;
  }
}
