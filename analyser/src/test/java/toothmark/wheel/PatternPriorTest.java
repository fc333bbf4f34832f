package toothmark.wheel;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;

class PatternPriorTest {

  private static WheelPattern runs(int slots, int[] runs, int... gaps) {
    return WheelPattern.ofRuns(slots, runs, gaps);
  }

  @Test
  void aTurnThatIsTwoOrThreeAlikeIsDearer() {
    assertThat(PatternPrior.sameAgain(runs(72, new int[] {35, 35}, 1, 1))).isPositive();
    assertThat(PatternPrior.sameAgain(runs(72, new int[] {22, 22, 22}, 2, 2, 2))).isPositive();
    assertThat(PatternPrior.sameAgain(runs(72, new int[] {20, 14, 20, 14}, 1, 1, 1, 1)))
        .isPositive();
  }

  @Test
  void aTurnWithPartsThatDifferIsNot() {
    assertThat(PatternPrior.sameAgain(WheelPattern.of(36, 1))).isZero();
    assertThat(PatternPrior.sameAgain(WheelPattern.parse("36-2-2-2"))).isZero();
    assertThat(PatternPrior.sameAgain(runs(72, new int[] {36, 34}, 1, 1))).isZero();
    assertThat(PatternPrior.sameAgain(runs(72, new int[] {34, 35}, 1, 2))).isZero();
  }
}
