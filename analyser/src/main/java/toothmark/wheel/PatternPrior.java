package toothmark.wheel;

import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/** How much a wheel must be better than a common one to be believed, nats. */
final class PatternPrior {

  /** Wheels in wide use, with several gaps as they are usually laid out; common practice. */
  private static final Set<WheelPattern> COMMON =
      Stream.of(
              "36-1",
              "60-2",
              "24-1",
              "12-1",
              "36-2-2-2",
              "36-2-1",
              "36-1-2",
              "36-2",
              "30-1",
              "24-2",
              "12+1",
              "4-1")
          .map(WheelPattern::parse)
          .collect(Collectors.toUnmodifiableSet());

  private static final double OTHER = 4;

  /** Of each further gap, besides which slot it is at. */
  private static final double EACH_GAP = 2.5;

  /**
   * Of a wheel whose turn is twice or thrice the same: no part of it tells where the crank is, and
   * what looks like one is nearly always some turns of a wheel of fewer teeth.
   */
  private static final double SAME_AGAIN = 8;

  private static final double WIDE_GAP = 3;

  /** An extra tooth stands on coarse wheels, where its half pitch is wide; common practice. */
  private static final int FINEST_WITH_EXTRA = 24;

  private static final double FINE_EXTRA = 6;

  /** Wheels are laid out in quarter degrees; common practice, no source. */
  private static final double ODD_PITCH = 2.5;

  private static final int QUARTER_DEGREES = 1440;

  private PatternPrior() {}

  static double nats(WheelPattern p) {
    if (COMMON.contains(p)) {
      return 0;
    }
    int[] gaps = p.gapLengths();
    double nats = OTHER + (EACH_GAP + Math.log(p.slots())) * Math.max(0, gaps.length - 1);
    for (int g : gaps) {
      nats += g > 2 ? WIDE_GAP : 0;
    }
    nats += sameAgain(p);
    boolean fineExtra = p.teeth() > p.slots() && p.slots() > FINEST_WITH_EXTRA;
    nats += fineExtra ? FINE_EXTRA : 0;
    return nats + (QUARTER_DEGREES % p.slots() != 0 ? ODD_PITCH : 0);
  }

  /** What is the dearer of a wheel of whose turn a part comes again and again, nats. */
  static double sameAgain(WheelPattern p) {
    int[] gaps = p.gapLengths();
    int[] runs = p.runLengths();
    for (int part = 1; part <= gaps.length / 2; part++) {
      boolean same = gaps.length % part == 0;
      for (int k = part; k < gaps.length; k++) {
        same &= gaps[k] == gaps[k - part] && runs[k] == runs[k - part];
      }
      if (same) {
        return SAME_AGAIN;
      }
    }
    return 0;
  }
}
