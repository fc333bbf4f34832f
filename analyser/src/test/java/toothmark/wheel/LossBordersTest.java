package toothmark.wheel;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

/** A 60-2 wheel that speeds up evenly; its signal is lost from tooth 11 to tooth 25. */
class LossBordersTest {

  private static final WheelPattern WHEEL = WheelPattern.of(60, 2);

  private final List<double[]> edges = new ArrayList<>();
  private final List<int[]> named = new ArrayList<>();

  private void tooth(int number, int steps, double pitchesEarly) {
    double turned = (WHEEL.degreesAfterTooth1(number) - 6 * pitchesEarly) / 360;
    edges.add(new double[] {0.06 * turned - 0.004 * turned * turned, 1});
    named.add(new int[] {number - 1, steps});
  }

  private Labelling cleared(double lastEarly, double firstEarly) {
    for (int k = 1; k <= 10; k++) {
      tooth(k, k == 1 ? 0 : 1, k == 10 ? lastEarly : 0);
    }
    for (int k = 26; k <= 40; k++) {
      tooth(k, k == 26 ? 16 : 1, k == 26 ? firstEarly : 0);
    }
    Labelling labels = new Labelling(0, edges.size());
    for (int i = 0; i < edges.size(); i++) {
      labels.teeth[i] = named.get(i)[0];
      labels.steps[i] = named.get(i)[1];
    }
    LossBorders.clear(EdgeSeries.of(EdgeScenario.train(edges)), labels, WHEEL);
    return labels;
  }

  @Test
  void takesBackTheJumpOfASignalThatComesBack() {
    Labelling labels = cleared(0, 0.4);
    assertThat(labels.teeth[10]).isEqualTo(Labelling.STRAY);
    assertThat(labels.steps[11]).isEqualTo(17);
    assertThat(labels.count()).isEqualTo(edges.size() - 1);
  }

  @Test
  void takesBackTheJumpOfASignalThatGoes() {
    Labelling labels = cleared(-0.4, 0);
    assertThat(labels.teeth[9]).isEqualTo(Labelling.STRAY);
    assertThat(labels.steps[10]).isEqualTo(17);
  }

  @Test
  void leavesTeethThatAreInPlace() {
    assertThat(cleared(0.05, -0.05).count()).isEqualTo(edges.size());
  }
}
