package toothmark.accuracy.decode;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;
import toothmark.simulator.Pattern;

/** Edges written by hand: a 6-1 wheel at one pitch a second, tooth 1 at 0, 6, 12, … s. */
class LabelsTest {

  private static final Pattern WHEEL = Pattern.of("6-1");
  private static final double[] CLEAN = {0, 1, 2, 3, 4, 6, 7, 8, 9, 10, 12, 13, 14, 15, 16, 18};

  @Test
  void bothCountFromTheFirstGap() {
    for (Labels labels : both(CLEAN)) {
      assertThat(labels.near(4, 0.5)).isZero();
      assertThat(labels.near(6, 0.5)).isEqualTo(1);
      assertThat(labels.near(10, 0.5)).isEqualTo(5);
      assertThat(labels.near(12, 0.5)).isEqualTo(1);
      assertThat(labels.near(11, 0.5)).isZero();
    }
  }

  @Test
  void aLostToothCostsTheFollowerATurn() {
    Labels labels = Labels.follower(without(CLEAN, 8), WHEEL);
    assertThat(labels.near(7, 0.5)).isEqualTo(2);
    assertThat(labels.near(9, 0.5)).isZero();
    assertThat(labels.near(10, 0.5)).isZero();
    assertThat(labels.near(12, 0.5)).isEqualTo(1);
  }

  @Test
  void aLostToothStartsATurnForTheGapRatio() {
    Labels labels = Labels.gapRatio(without(CLEAN, 8), WHEEL);
    assertThat(labels.near(9, 0.5)).isEqualTo(1);
    assertThat(labels.near(10, 0.5)).isEqualTo(2);
    assertThat(labels.near(12, 0.5)).isEqualTo(1);
  }

  private static Labels[] both(double[] edges) {
    return new Labels[] {Labels.follower(edges, WHEEL), Labels.gapRatio(edges, WHEEL)};
  }

  private static double[] without(double[] edges, double time) {
    return java.util.Arrays.stream(edges).filter(t -> t != time).toArray();
  }
}
