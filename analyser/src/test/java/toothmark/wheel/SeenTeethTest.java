package toothmark.wheel;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;

class SeenTeethTest {

  @Test
  void aToothThatNoTurnShowsIsAGap() {
    Labelling labels = labels(3, 4);

    assertThat(SeenTeeth.wheel(WheelPattern.of(12, 2), List.of(labels)))
        .hasValue(WheelPattern.ofRuns(12, new int[] {5, 3}, new int[] {2, 2}));
  }

  @Test
  void whatOneTurnLacksIsLost() {
    Labelling labels = labels(3, 4);
    labels.teeth[2] = 3;
    labels.steps[2] = 2;
    labels.steps[3] = 2;

    assertThat(SeenTeeth.wheel(WheelPattern.of(12, 2), List.of(labels)))
        .hasValue(WheelPattern.ofRuns(12, new int[] {5, 4}, new int[] {2, 1}));
    assertThat(SeenTeeth.wheel(WheelPattern.withExtraTooth(8), k -> k == 2)).isEmpty();
  }

  /** Three turns of 12-2 without two of its teeth. */
  private static Labelling labels(int lost, int alsoLost) {
    Labelling labels = new Labelling(0, 24);
    int i = 0;
    int steps = 0;
    for (int k = 0; k < 30; k++) {
      int tooth = k % 10;
      steps++;
      if (tooth != lost && tooth != alsoLost) {
        labels.teeth[i] = tooth;
        labels.steps[i++] = i == 1 ? 0 : steps;
        steps = 0;
      }
    }
    return labels;
  }
}
