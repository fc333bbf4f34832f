package toothmark.receiver;

import java.util.Arrays;

/**
 * The wheel that a controller is told, as its follower needs it: runs of teeth parted by gaps.
 *
 * <p>A run of teeth is followed by its gap; the first run is the one that starts with tooth 1. A
 * wheel without a gap is one run with a gap of 0, an extra tooth a gap of -1 slots: the extra tooth
 * stands half a slot after the last of the run.
 */
public final class FollowedWheel {

  private final int[] runs;
  private final int[] gaps;

  private FollowedWheel(int[] runs, int[] gaps) {
    this.runs = runs;
    this.gaps = gaps;
  }

  /**
   * A wheel with missing teeth.
   *
   * @param runs teeth of each run, from tooth 1 on; each at least 1
   * @param gaps missing teeth after each run; each at least 1
   * @return that wheel
   */
  public static FollowedWheel withGaps(int[] runs, int[] gaps) {
    boolean sound = runs.length > 0 && runs.length == gaps.length;
    if (!sound
        || Arrays.stream(runs).anyMatch(r -> r < 1)
        || Arrays.stream(gaps).anyMatch(g -> g < 1)) {
      throw new IllegalArgumentException(
          "a followed wheel needs as many runs as gaps, each at least 1, got runs "
              + Arrays.toString(runs)
              + " and gaps "
              + Arrays.toString(gaps));
    }
    return new FollowedWheel(runs.clone(), gaps.clone());
  }

  /**
   * A wheel with one extra tooth.
   *
   * @param slots teeth that stand evenly
   * @return that wheel
   */
  public static FollowedWheel withExtraTooth(int slots) {
    return new FollowedWheel(new int[] {slots}, new int[] {-1});
  }

  /**
   * A wheel without any reference.
   *
   * @param slots teeth
   * @return that wheel
   */
  public static FollowedWheel plain(int slots) {
    return new FollowedWheel(new int[] {slots}, new int[] {0});
  }

  int runCount() {
    return runs.length;
  }

  int run(int index) {
    return runs[index];
  }

  int gap(int index) {
    return gaps[index];
  }

  /** All slots of the wheel, an extra tooth not counted. */
  int slots() {
    int n = 0;
    for (int i = 0; i < runs.length; i++) {
      n += runs[i] + Math.max(0, gaps[i]);
    }
    return n;
  }

  /** All teeth of the wheel. */
  int teeth() {
    return Arrays.stream(runs).sum() + (gaps[0] < 0 ? 1 : 0);
  }
}
