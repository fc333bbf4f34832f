package toothmark.wheel;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Law: following the only reading left gives the labels of the full search. */
class SteadyRunTest {

  @ParameterizedTest
  @CsvSource({
    "36-1, 0, 0",
    "60-2, 0, 0",
    "12-1, 0, 0",
    "36-1, 0.01, 0.01",
    "60-2, 0.02, 0.01",
    "36-1, 0.2, 0.05",
    "12+1, 0.02, 0.02",
    "24, 0.02, 0.02"
  })
  void givesTheLabelsOfTheFullSearch(String wheel, double strays, double lost) {
    EdgeSeries edges =
        EdgeSeries.of(
            EdgeScenario.of(wheel)
                .rpm(t -> 1200 + 900 * t)
                .firing(0.03, 2)
                .strays(strays)
                .lost(lost)
                .make(7)
                .train());
    Labelling swift = label(edges, wheel, Labeller.Effort.SWIFT);
    Labelling full = label(edges, wheel, Labeller.Effort.THOROUGH);
    assertThat(swift.teeth).isEqualTo(full.teeth);
    assertThat(swift.steps).isEqualTo(full.steps);
  }

  private static Labelling label(EdgeSeries edges, String wheel, Labeller.Effort effort) {
    WheelTemplate template = WheelTemplate.of(WheelPattern.parse(wheel));
    NoiseModel noise = NoiseEstimate.of(edges, 0, edges.size());
    return new Labeller(edges, template, noise, new SpeedFilter(6), effort).label(0, edges.size());
  }
}
