package toothmark.receiver;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * The textbook follower: it knows where it is from one ratio of intervals at a time.
 *
 * <p>With r the ratio of an interval to the one before and G = 1 + M/2 for a gap of M missing
 * teeth: searching, an edge with r &gt; G is tooth 1 and it follows. Following, with tooth k the
 * last: r &gt; G ends a gap, right only after the last tooth of a run; r &le; G is the next tooth,
 * right only before it. Anything else is a loss, and it searches from the next edge on.
 *
 * <p>Where the wheel differs from one gap: with several gaps an interval is first divided by the
 * slots of the one before, if that was a gap, since a single tooth between two gaps would else hide
 * the second; and searching ends at the first gap whose run it has counted whole and knows. With an
 * extra tooth the mark is a short interval, r &lt; 1/&radic;2 (the geometric mean of a half and a
 * whole pitch). A wheel without reference has nothing to lose.
 */
final class Follower {

  private static final double SHORT = Math.sqrt(0.5);

  private final FollowedWheel wheel;
  private final boolean severalGaps;
  private final double smallestGap;
  private double last = Double.NaN;
  private double interval = Double.NaN;
  private int losses;

  private boolean following;
  private int run;
  private int tooth;

  /** While searching a wheel with several gaps: edges since the last gap, 0 before one. */
  private int sinceGap;

  Follower(FollowedWheel wheel) {
    this.wheel = wheel;
    this.severalGaps = wheel.runCount() > 1;
    int smallest = wheel.gap(0);
    for (int i = 1; i < wheel.runCount(); i++) {
      smallest = Math.min(smallest, wheel.gap(i));
    }
    this.smallestGap = smallest;
  }

  /** Every loss over these edges. */
  static List<SyncLoss> losses(ReceiverEdges edges, FollowedWheel wheel) {
    Follower follower = new Follower(wheel);
    List<SyncLoss> losses = new ArrayList<>();
    for (int i = 0; i < edges.size(); i++) {
      int teeth = follower.counted();
      if (follower.loses(edges.time(i))) {
        losses.add(loss(edges, i, teeth, wheel));
      }
    }
    return losses;
  }

  /** Takes the next edge; true where the count is lost there. */
  boolean loses(double seconds) {
    double before = interval;
    interval = seconds - last;
    last = seconds;
    if (Double.isNaN(before) || wheel.gap(0) == 0) {
      return false;
    }
    double ratio = before > 0 ? interval / before : 0;
    if (wheel.gap(0) < 0) {
      return stepExtra(ratio);
    }
    return following ? follow(ratio) : search(ratio);
  }

  /** How often the count was lost. */
  int losses() {
    return losses;
  }

  private static double limit(double missing) {
    return 1 + missing / 2;
  }

  private boolean follow(double ratio) {
    boolean atEnd = tooth == wheel.run(run);
    boolean afterGap = severalGaps && tooth == 1;
    int runBefore = Math.floorMod(run - 1, wheel.runCount());
    double normal = afterGap ? ratio * (wheel.gap(runBefore) + 1) : ratio;
    boolean gap = normal > limit(atEnd ? wheel.gap(run) : smallestGap);
    if (gap != atEnd) {
      return lose();
    }
    run = gap ? (run + 1) % wheel.runCount() : run;
    tooth = gap ? 1 : tooth + 1;
    return false;
  }

  private boolean search(double ratio) {
    double normal = severalGaps && sinceGap == 1 ? ratio * (smallestGap + 1) : ratio;
    if (normal <= limit(smallestGap)) {
      sinceGap += sinceGap > 0 ? 1 : 0;
      return false;
    }
    for (int j = 0; j < wheel.runCount() && !following; j++) {
      if (!severalGaps || wheel.run(j) == sinceGap) {
        following = true;
        run = (j + 1) % wheel.runCount();
        tooth = 1;
      }
    }
    sinceGap = 1;
    return false;
  }

  private boolean stepExtra(double ratio) {
    boolean shortInterval = ratio < SHORT;
    int slots = wheel.run(0);
    if (!following) {
      following = shortInterval;
      tooth = slots + 1;
    } else if (shortInterval != (tooth == slots)) {
      return lose();
    } else {
      tooth = tooth > slots ? 1 : tooth + 1;
    }
    return false;
  }

  private boolean lose() {
    losses++;
    following = false;
    sinceGap = 0;
    return true;
  }

  /** Teeth since tooth 1, that tooth included. */
  private int counted() {
    int teeth = tooth;
    for (int j = 0; j < run; j++) {
      teeth += wheel.run(j);
    }
    return teeth;
  }

  private static SyncLoss loss(ReceiverEdges edges, int i, int teeth, FollowedWheel wheel) {
    return SyncLoss.at(edges.time(i), teeth, rpmAround(edges, i, wheel));
  }

  /**
   * Speed from the median of the intervals of up to a revolution around an edge, so that neither a
   * stray nor a gap counts.
   */
  private static double rpmAround(ReceiverEdges edges, int i, FollowedWheel wheel) {
    int half = Math.max(1, wheel.teeth() / 2);
    int from = Math.max(1, i - half + 1);
    int to = Math.min(edges.size(), i + half + 1);
    double[] intervals = new double[to - from];
    for (int j = from; j < to; j++) {
      intervals[j - from] = edges.time(j) - edges.time(j - 1);
    }
    Arrays.sort(intervals);
    double median = intervals[intervals.length / 2];
    return 60 / (wheel.slots() * Math.max(median, 1e-9));
  }
}
