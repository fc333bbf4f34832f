package toothmark.wheel;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;

class NoiseStudyTest {

  /** The first guess from very regular edges may be so small that rounding makes nonsense of it. */
  @Test
  void findsTheNoiseThoughTheFirstGuessIsLostToRounding() {
    EdgeScenario.Made made =
        EdgeScenario.of("60-2").rpm(t -> 950 + 1000 * t).firing(0.01, 2).seconds(1).make(3);
    EdgeSeries edges = EdgeSeries.of(made.train());
    WheelTemplate wheel = WheelTemplate.of(WheelPattern.parse("60-2"));
    SpeedFilter filter = new SpeedFilter(10);
    NoiseModel usual = NoiseEstimate.of(edges, 0, edges.size()).withMotion(0.004, 0.008);

    NoiseStudy fair = new NoiseStudy(edges, wheel, filter, 0, edges.size()).run(usual);
    NoiseStudy lost =
        new NoiseStudy(edges, wheel, filter, 0, edges.size()).run(usual.withMotion(1e-4, 1e-5));

    MotionFit fit = new MotionFit(edges, wheel, filter, fair.labels());
    assertThat(fit.cost(lost.noise())).isCloseTo(fit.cost(fair.noise()), within(2.0));
  }
}
