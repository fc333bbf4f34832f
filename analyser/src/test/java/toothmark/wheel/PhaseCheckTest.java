package toothmark.wheel;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayDeque;
import java.util.Arrays;
import java.util.Queue;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** A search that settled on a count off by some slots is put right by what all turns show. */
class PhaseCheckTest {

  @ParameterizedTest
  @CsvSource({"36-1, 9", "60-2, 30", "24-1, 1"})
  void putsACountRightThatIsOffBySomeTeeth(String wheel, int off) {
    WheelPattern pattern = WheelPattern.parse(wheel);
    EdgeSeries edges =
        EdgeSeries.of(
            EdgeScenario.of(wheel).rpm(t -> 1200 + 900 * t).firing(0.03, 2).make(7).train());
    Labelling right = search(edges, pattern).label(0, edges.size());
    int[] wrong = Arrays.stream(right.teeth).map(t -> (t + off) % pattern.teeth()).toArray();
    Queue<Labeller> searches = new ArrayDeque<>();
    searches.add(search(edges, pattern).steered(wrong));
    searches.add(search(edges, pattern));

    Labelling found = PhaseCheck.label(edges, pattern, searches::remove, 0, edges.size());

    assertThat(search(edges, pattern).steered(wrong).label(0, edges.size()).teeth)
        .isNotEqualTo(right.teeth);
    assertThat(found.teeth).isEqualTo(right.teeth);
  }

  private static Labeller search(EdgeSeries edges, WheelPattern pattern) {
    NoiseModel noise = NoiseEstimate.of(edges, 0, edges.size());
    return new Labeller(
        edges, WheelTemplate.of(pattern), noise, new SpeedFilter(6), Labeller.Effort.BRISK);
  }
}
