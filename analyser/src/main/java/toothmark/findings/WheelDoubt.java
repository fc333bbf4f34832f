package toothmark.findings;

import java.util.Set;

/** Where the wheel itself is in doubt, nothing that rests on the numbers of its teeth is proven. */
final class WheelDoubt {

  /** Below this the wheel is in doubt; the limit of a proven mismatch as well. */
  static final double SURE = 0.95;

  private static final Set<String> RESTS_ON_NUMBERS =
      Set.of(
          "wheel-misaligned",
          "wheel-run-out",
          "damaged-tooth",
          "extra-wheel-feature",
          "gap-noise",
          "timing-scatter",
          "coils-swapped",
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
    double confidence =
        symptoms.crank().map(c -> c.turns().crank().identification().confidence()).orElse(1.0);
    return confidence < SURE && f.severity() == Severity.FAULT && RESTS_ON_NUMBERS.contains(f.id())
        ? f.doubted(confidence, "The wheel itself is not certain, see below.")
        : f;
  }
}
