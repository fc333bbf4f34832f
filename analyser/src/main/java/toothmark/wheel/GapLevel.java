package toothmark.wheel;

import java.util.Arrays;
import java.util.List;
import java.util.OptionalDouble;
import toothmark.edges.EdgeDirection;
import toothmark.edges.EdgeTrain;

/**
 * How far the flux swings out in the wide slot of a missing tooth.
 *
 * <p>Between two teeth the flux falls to the slot level; in a gap, with no neighbour's fringe, it
 * falls further. So at the turning point within a gap the level lies beyond the common one of its
 * side if the edges taken for teeth are teeth, and not if they are slots.
 */
final class GapLevel {

  private static final int MOST_GAPS = 200;

  private GapLevel() {}

  /**
   * Measures the outward swing in the gaps.
   *
   * @param labels of stretches of the teeth's train
   * @param pattern by which they were labelled
   * @param teeth edges taken for teeth
   * @param slots edges of the other direction
   * @param toothEdge direction of the teeth's edges
   * @return median over the gaps, in units of the local swing: near 0.3 when right, near 0 or below
   *     when wrong; empty when no clean gap was seen
   */
  static OptionalDouble swing(
      List<Labelling> labels,
      WheelPattern pattern,
      EdgeTrain teeth,
      EdgeTrain slots,
      EdgeDirection toothEdge) {
    if (slots.size() == 0) {
      return OptionalDouble.empty();
    }
    double outward = toothEdge == EdgeDirection.FALLING ? -1 : 1;
    double common = medianLevel(slots);
    double[] swings = new double[MOST_GAPS];
    int n = 0;
    for (Labelling l : labels) {
      int last = -1;
      for (int i = 0; i < l.size() && n < MOST_GAPS; i++) {
        if (l.teeth[i] == Labelling.STRAY) {
          continue;
        }
        if (last >= 0 && l.steps[i] == 1 && afterGap(pattern, l.teeth[i])) {
          double a = teeth.time(l.from + last);
          double b = teeth.time(l.from + i);
          int between = nearest(slots, (a + b) / 2);
          if (slots.time(between) > a && slots.time(between) < b) {
            swings[n++] = outward * (slots.level(between) - common);
          }
        }
        last = i;
      }
    }
    if (n == 0) {
      return OptionalDouble.empty();
    }
    Arrays.sort(swings, 0, n);
    return OptionalDouble.of(swings[n / 2]);
  }

  private static boolean afterGap(WheelPattern pattern, int tooth) {
    double before = pattern.degreesAfterTooth1(tooth == 0 ? pattern.teeth() : tooth);
    double step = pattern.degreesAfterTooth1(tooth + 1) - before + (tooth == 0 ? 360 : 0);
    return step > 1.5 * pattern.pitchDegrees();
  }

  private static double medianLevel(EdgeTrain train) {
    int n = train.size();
    double[] level = new double[n];
    int k = 0;
    for (int i = 0; i < n; i++) {
      if (train.strength(i) > 0.5) {
        level[k++] = train.level(i);
      }
    }
    Arrays.sort(level, 0, k);
    return k == 0 ? 0 : level[k / 2];
  }

  private static int nearest(EdgeTrain train, double time) {
    int lo = 0;
    int hi = train.size() - 1;
    while (lo < hi) {
      int mid = (lo + hi) >>> 1;
      if (train.time(mid) < time) {
        lo = mid + 1;
      } else {
        hi = mid;
      }
    }
    boolean before = lo > 0 && time - train.time(lo - 1) < train.time(lo) - time;
    return before ? lo - 1 : lo;
  }
}
