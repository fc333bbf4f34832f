package toothmark.wheel;

import java.util.Set;

/** How much a wheel must be better than a common one to be believed, nats. */
final class PatternPrior {

  /** Wheels in wide use; common practice, no source. */
  private static final Set<String> COMMON =
      Set.of(
          "36-1",
          "60-2",
          "24-1",
          "12-1",
          "36-2-2-2",
          "36-2-1",
          "36-2",
          "30-1",
          "24-2",
          "12+1",
          "4-1");

  private static final double OTHER = 3;
  private static final double EACH_GAP = 11;
  private static final double WIDE_GAP = 3;
  private static final double ODD_SLOTS = 1.5;

  private PatternPrior() {}

  static double nats(WheelPattern p) {
    if (COMMON.contains(p.toString())) {
      return 0;
    }
    int[] gaps = p.gapLengths();
    double nats = OTHER + EACH_GAP * Math.max(0, gaps.length - 1);
    for (int g : gaps) {
      nats += g > 2 ? WIDE_GAP : 0;
    }
    int n = p.slots();
    return nats + (n % 2 != 0 && n % 3 != 0 && n % 5 != 0 ? ODD_SLOTS : 0);
  }
}
