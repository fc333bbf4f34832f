package toothmark.timing;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import toothmark.ignition.SketchedEngine;
import toothmark.rotation.AngleTimeline;

class ForetellingTest {

  /**
   * At constant acceleration a, rev/min each second, a crank at n rev/min needs t = A / 6n for A
   * degrees if it stays so, and turns 3 a t² further in it: a A² / 12n². The speed is 5 degrees
   * older than that, by 5 a / 6n rev/min, for which it turns another 10 a A / 12n².
   */
  @Test
  void steadyAccelerationMovesASparkByTheSquareOfTheWay() {
    SketchedEngine engine = new SketchedEngine(2, t -> 1000 + 2500 * t);
    AngleTimeline timeline = engine.timeline(10, 0);

    for (Foretelling way : Foretelling.WAYS) {
      double ahead = way.aheadDegrees();
      double n = engine.rpmAt(1.0 - ahead / (6 * engine.rpmAt(1.0)));
      double late = 2500 * ahead * (ahead + 10) / (12 * n * n);

      assertThat(way.degreesAt(1.0, timeline).orElseThrow()).isCloseTo(-late, within(0.03 * late));
    }
  }

  @Test
  void atASteadySpeedNothingMoves() {
    AngleTimeline timeline = new SketchedEngine(1, t -> 1500).timeline(10, 0);

    assertThat(new Foretelling(60).degreesAt(0.5, timeline).orElseThrow())
        .isCloseTo(0, within(1e-6));
  }

  @Test
  void beforeTheFirstTeethNothingIsKnown() {
    AngleTimeline timeline = new SketchedEngine(1, t -> 1500).timeline(10, 0);

    assertThat(new Foretelling(60).degreesAt(timeline.span().startInclusive() + 0.005, timeline))
        .isEmpty();
  }
}
