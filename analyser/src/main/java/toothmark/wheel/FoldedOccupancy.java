package toothmark.wheel;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/**
 * Guesses wheels by folding counted slots at every possible number of slots a turn: at the right
 * one each slot is nearly always full or nearly always empty.
 */
final class FoldedOccupancy {

  private static final int FEWEST = 3;
  private static final int MOST = 132;
  private static final double PRESENT = Math.log(0.97);
  private static final double ABSENT = Math.log(0.03);
  private static final double GAP_NATS = 1.5;
  private static final int MOST_GAPS = 6;

  private FoldedOccupancy() {}

  /** A wheel with the cost of explaining the counted slots by it, nats. */
  record Guess(WheelPattern pattern, double cost) {}

  /**
   * Folds one stretch.
   *
   * @param count slots of a stretch without a break of count
   * @param most how many guesses are wanted
   * @return the best first
   */
  static List<Guess> guesses(SlotCount count, int most) {
    int span = count.span();
    boolean[] full = new boolean[span];
    // What comes after the last slot is not known.
    boolean[] half = new boolean[Math.max(0, span - 1)];
    for (int s : count.slots) {
      full[s - count.slots[0]] = true;
    }
    for (int s : count.halfSlots) {
      if (s >= count.slots[0] && s - count.slots[0] < half.length) {
        half[s - count.slots[0]] = true;
      }
    }
    double between = 0;
    for (boolean h : half) {
      between -= h ? ABSENT : PRESENT;
    }
    List<Guess> all = new ArrayList<>();
    for (int n = FEWEST; n <= MOST && n * 1.3 <= span; n++) {
      fold(full, n, between, all);
      if (count.halfSlots.length > 0) {
        foldHalves(full, half, n, all);
      }
    }
    all.sort(Comparator.comparingDouble(Guess::cost));
    return all.subList(0, Math.min(most, all.size()));
  }

  private static void fold(boolean[] full, int n, double between, List<Guess> all) {
    int[] seen = new int[n];
    int[] turns = new int[n];
    for (int i = 0; i < full.length; i++) {
      turns[i % n]++;
      seen[i % n] += full[i] ? 1 : 0;
    }
    boolean[] tooth = new boolean[n];
    double cost = between;
    for (int s = 0; s < n; s++) {
      double there = seen[s] * PRESENT + (turns[s] - seen[s]) * ABSENT;
      double gone = seen[s] * ABSENT + (turns[s] - seen[s]) * PRESENT;
      tooth[s] = there >= gone;
      cost -= Math.max(there, gone);
    }
    WheelPattern p = pattern(tooth);
    if (p != null) {
      int gaps = p.gapLengths().length;
      all.add(new Guess(p, cost + gaps * (GAP_NATS + Math.log(n))));
    }
  }

  /** A wheel of n full slots and one extra tooth half way between two. */
  private static void foldHalves(boolean[] full, boolean[] half, int n, List<Guess> all) {
    int[] seen = new int[n];
    double cost = GAP_NATS + Math.log(n);
    int best = 0;
    for (boolean f : full) {
      cost -= f ? PRESENT : ABSENT;
    }
    for (int i = 0; i < half.length; i++) {
      seen[i % n] += half[i] ? 1 : 0;
      best = seen[i % n] > seen[best] ? i % n : best;
    }
    int turns = 0;
    for (int i = 0; i < half.length; i++) {
      boolean here = i % n == best;
      turns += here ? 1 : 0;
      cost -= half[i] == here ? PRESENT : ABSENT;
    }
    if (2 * seen[best] > turns && n < MOST) {
      all.add(new Guess(WheelPattern.withExtraTooth(n), cost));
    }
  }

  /** The wheel with teeth in these slots, or null when it can be no wheel. */
  static WheelPattern pattern(boolean[] tooth) {
    int n = tooth.length;
    int start = -1;
    int teeth = 0;
    for (int s = 0; s < n; s++) {
      teeth += tooth[s] ? 1 : 0;
      if (tooth[s] && !tooth[(s + n - 1) % n]) {
        start = s;
      }
    }
    if (teeth < 2) {
      return null;
    }
    if (start < 0) {
      return WheelPattern.plain(n);
    }
    List<Integer> runs = new ArrayList<>();
    List<Integer> gaps = new ArrayList<>();
    int i = 0;
    while (i < n) {
      int run = 0;
      for (; i < n && tooth[(start + i) % n]; i++) {
        run++;
      }
      int gap = 0;
      for (; i < n && !tooth[(start + i) % n]; i++) {
        gap++;
      }
      runs.add(run);
      gaps.add(gap);
    }
    if (runs.size() > MOST_GAPS && !hasHalfSlots(runs, gaps) || repeats(tooth)) {
      return null;
    }
    return hasHalfSlots(runs, gaps)
        ? WheelPattern.withExtraTooth(n / 2)
        : WheelPattern.ofRuns(n, ints(runs), ints(gaps));
  }

  /**
   * Whether each second slot is empty but one: then the slots counted are halves of the wheel's.
   */
  private static boolean hasHalfSlots(List<Integer> runs, List<Integer> gaps) {
    return runs.size() > 1
        && gaps.stream().allMatch(g -> g == 1)
        && runs.stream().mapToInt(Integer::intValue).sum() == runs.size() + 2
        && runs.contains(3);
  }

  private static int[] ints(List<Integer> list) {
    return list.stream().mapToInt(Integer::intValue).toArray();
  }

  /** Whether a part of a turn looks like every other: then the wheel is a smaller one. */
  private static boolean repeats(boolean[] tooth) {
    int n = tooth.length;
    for (int p = 2; p <= n / 2; p++) {
      if (n % p == 0 && repeats(tooth, p)) {
        return true;
      }
    }
    return false;
  }

  private static boolean repeats(boolean[] tooth, int period) {
    for (int s = 0; s < tooth.length; s++) {
      if (tooth[s] != tooth[(s + period) % tooth.length]) {
        return false;
      }
    }
    return true;
  }
}
