package toothmark.findings;

import java.util.Set;

/**
 * Where the wheel itself is in doubt, nothing that rests on the numbers of its teeth is proven, and
 * where it is too coarse to follow the engine, nothing that rests on angles between them.
 */
final class WheelDoubt {

  /** Below this the wheel is in doubt; the limit of a proven mismatch as well. */
  static final double SURE = 0.95;

  /** Two teeth a firing are the limit of sampling (Shannon, Proc. IRE 37 (1949) 10-21). */
  private static final double FEWEST_A_FIRING = 3;

  private static final double COARSE = 0.5;

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

  private static final Set<String> RESTS_ON_ANGLES =
      Set.of(
          "wheel-slip",
          "wheel-misaligned",
          "timing-delay",
          "timing-scatter",
          "timing-step",
          "coils-swapped");

  private WheelDoubt() {}

  /**
   * A finding with the severity that the wheel's certainty allows.
   *
   * @param f as its check gave it
   * @param symptoms of the same capture
   * @return the same, or a watch with the doubt among what speaks against it
   */
  static Finding weigh(Finding f, Symptoms symptoms) {
    if (f.severity() != Severity.FAULT) {
      return f;
    }
    double confidence = symptoms.crank().map(WheelDoubt::confidence).orElse(1.0);
    if (confidence < SURE && RESTS_ON_NUMBERS.contains(f.id())) {
      return f.doubted(confidence, Words.of("any.wheel-doubt"));
    }
    return RESTS_ON_ANGLES.contains(f.id()) && isCoarse(symptoms)
        ? f.doubted(COARSE, Words.of("any.coarse-wheel"))
        : f;
  }

  private static boolean isCoarse(Symptoms symptoms) {
    double firings = symptoms.seen().stated().cylinders() / 2.0;
    return symptoms
        .crank()
        .filter(c -> c.turns().pattern().slots() < FEWEST_A_FIRING * firings)
        .isPresent();
  }

  /** Without a gap or extra tooth even the number of slots in a turn is a guess. */
  private static double confidence(CrankSymptoms crank) {
    boolean reference = crank.turns().pattern().hasReference();
    return reference ? crank.turns().crank().identification().confidence() : NO_REFERENCE;
  }
}
