package toothmark.receiver;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

/** The follower on sequences written by hand. */
class FollowerTest {

  private static final FollowedWheel THIRTY_SIX =
      FollowedWheel.withGaps(new int[] {35}, new int[] {1});

  /** Times of edges from intervals in pitches. */
  private static ReceiverEdges edges(double pitchSeconds, List<Double> intervals) {
    double[] t = new double[intervals.size() + 1];
    for (int i = 0; i < intervals.size(); i++) {
      t[i + 1] = t[i] + intervals.get(i) * pitchSeconds;
    }
    return ReceiverEdges.of(t);
  }

  private static List<Double> turns(int turns, int teeth, double gap) {
    List<Double> out = new ArrayList<>();
    for (int k = 0; k < turns; k++) {
      for (int i = 1; i < teeth; i++) {
        out.add(1.0);
      }
      out.add(gap);
    }
    return out;
  }

  /** At 853 rev/min, in times that binary fractions hold, so that ratios are exact. */
  private static List<SyncLoss> losses(List<Double> intervals) {
    return ReferenceReceiver.follow(edges(1.0 / 512, intervals), THIRTY_SIX).losses();
  }

  @Test
  void keepsItsCountOnASoundWheel() {
    assertThat(losses(turns(10, 35, 2))).isEmpty();
  }

  @Test
  void losesItsCountAtALostTooth() {
    List<Double> intervals = turns(6, 35, 2);
    // Third turn: the tenth tooth is missing, two intervals become one of two pitches.
    intervals.set(2 * 35 + 8, 2.0);
    intervals.remove(2 * 35 + 9);
    List<SyncLoss> losses = losses(intervals);
    assertThat(losses).hasSize(1);
    assertThat(losses.get(0).teethCounted()).isEqualTo(9);
    assertThat(losses.get(0).rpm()).isCloseTo(60 * 512 / 36.0, within(1.0));
    assertThat(losses.get(0).phase()).isEqualTo(SyncLoss.Phase.RUNNING);
  }

  /** One edge too many is noticed where the gap should be: the 35th tooth is already passed. */
  @Test
  void losesItsCountAtAStray() {
    List<Double> intervals = turns(6, 35, 2);
    intervals.set(2 * 35 + 8, 0.5);
    intervals.add(2 * 35 + 9, 0.5);
    // After the stray the next interval is twice as long: a gap in the wrong place at once.
    List<SyncLoss> losses = losses(intervals);
    assertThat(losses).isNotEmpty();
    assertThat(losses.get(0).teethCounted()).isEqualTo(11);
  }

  @Test
  void noticesAGapThatDoesNotCome() {
    List<Double> intervals = turns(3, 35, 2);
    intervals.set(2 * 35 - 1, 1.4);
    List<SyncLoss> losses = losses(intervals);
    assertThat(losses).hasSize(1);
    assertThat(losses.get(0).teethCounted()).isEqualTo(35);
  }

  /** The ratio must exceed 1 + M/2; equal is not a gap. */
  @Test
  void asksMoreThanOneAndAHalfOfASingleMissingTooth() {
    assertThat(losses(turns(3, 35, 1.5))).isEmpty();
    assertThat(losses(turns(3, 35, 1.51))).isEmpty();
    List<Double> one = turns(3, 35, 2);
    one.set(35 + 34, 1.5);
    assertThat(losses(one)).hasSize(1);
  }

  @Test
  void callsALossUnderFourHundredRevolutionsCranking() {
    List<Double> intervals = turns(6, 35, 2);
    intervals.set(2 * 35 + 8, 2.0);
    intervals.remove(2 * 35 + 9);
    double pitch = 60.0 / 36 / 200;
    List<SyncLoss> losses = ReferenceReceiver.follow(edges(pitch, intervals), THIRTY_SIX).losses();
    assertThat(losses).extracting(SyncLoss::phase).containsExactly(SyncLoss.Phase.CRANKING);
  }

  @Test
  void followsSeveralGapsWithALoneToothBetween() {
    FollowedWheel wheel = FollowedWheel.withGaps(new int[] {16, 13, 1}, new int[] {2, 2, 2});
    List<Double> intervals = new ArrayList<>();
    for (int k = 0; k < 6; k++) {
      intervals.addAll(turns(1, 16, 3));
      intervals.addAll(turns(1, 13, 3));
      intervals.addAll(turns(1, 1, 3));
    }
    assertThat(ReferenceReceiver.follow(edges(1e-3, intervals), wheel).losses()).isEmpty();
    intervals.set(3 * 30 + 5, 2.5);
    assertThat(ReferenceReceiver.follow(edges(1e-3, intervals), wheel).losses()).hasSize(1);
  }

  @Test
  void followsAnExtraTooth() {
    FollowedWheel wheel = FollowedWheel.withExtraTooth(12);
    List<Double> intervals = new ArrayList<>();
    for (int k = 0; k < 6; k++) {
      intervals.addAll(turns(1, 12, 0.5));
      intervals.add(0.5);
    }
    assertThat(ReferenceReceiver.follow(edges(1e-3, intervals), wheel).losses()).isEmpty();
    intervals.set(3 * 13 + 11, 1.0);
    intervals.remove(3 * 13 + 12);
    assertThat(ReferenceReceiver.follow(edges(1e-3, intervals), wheel).losses()).hasSize(1);
  }

  @Test
  void hasNothingToLoseOnAPlainWheel() {
    List<Double> intervals = turns(3, 35, 2);
    assertThat(ReferenceReceiver.follow(edges(1e-3, intervals), FollowedWheel.plain(36)).losses())
        .isEmpty();
  }
}
