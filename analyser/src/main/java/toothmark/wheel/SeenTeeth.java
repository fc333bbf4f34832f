package toothmark.wheel;

import java.util.List;
import java.util.Optional;
import java.util.function.IntPredicate;

/** Wheels that have only those teeth of another that give an edge. */
final class SeenTeeth {

  private static final int FEWEST_PASSES = 2;

  private SeenTeeth() {}

  /**
   * The wheel without the teeth that never gave an edge.
   *
   * @param pattern a wheel
   * @param labels of some stretches by it
   * @return empty where each tooth gave one, or that is no wheel
   */
  static Optional<WheelPattern> wheel(WheelPattern pattern, List<Labelling> labels) {
    int n = pattern.teeth();
    int[] passes = new int[n];
    boolean[] seen = new boolean[n];
    for (Labelling l : labels) {
      int before = Labelling.STRAY;
      for (int i = 0; i < l.size(); i++) {
        int tooth = l.teeth[i];
        if (tooth != Labelling.STRAY) {
          int steps = before == Labelling.STRAY || l.steps[i] > n ? 0 : l.steps[i];
          for (int s = 0; s < steps; s++) {
            passes[Math.floorMod(tooth - s, n)]++;
          }
          seen[tooth] = true;
          before = tooth;
        }
      }
    }
    return wheel(pattern, k -> !seen[k] && passes[k] >= FEWEST_PASSES);
  }

  /**
   * The wheel without some teeth.
   *
   * @param pattern a wheel
   * @param gone whether a tooth is one of them, from 0
   * @return empty where none is, or what is left is no wheel
   */
  static Optional<WheelPattern> wheel(WheelPattern pattern, IntPredicate gone) {
    if (pattern.teeth() > pattern.slots()) {
      return Optional.empty();
    }
    boolean[] slots = new boolean[pattern.slots()];
    int left = 0;
    for (int k = 0; k < pattern.teeth(); k++) {
      boolean stays = !gone.test(k);
      slots[(int) Math.round(pattern.degreesAfterTooth1(k + 1) / pattern.pitchDegrees())] = stays;
      left += stays ? 1 : 0;
    }
    return left == pattern.teeth()
        ? Optional.empty()
        : Optional.ofNullable(FoldedOccupancy.pattern(slots));
  }
}
