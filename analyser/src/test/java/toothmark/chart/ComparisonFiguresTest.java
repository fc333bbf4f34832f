package toothmark.chart;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import toothmark.examination.Examination;

class ComparisonFiguresTest {

  private static final Examination FULL = SampleRun.full();

  private final ComparisonFigures same = ComparisonFigures.of(FULL, FULL);
  private final ComparisonFigures nothing = ComparisonFigures.of(SampleRun.undecodable(), FULL);

  @Test
  void aCaptureAgainstItselfShowsNoChange() {
    assertThat(same.spacing().orElseThrow().answer())
        .isEqualTo("Yes: no tooth moved by more than its uncertainty.");
    assertThat(same.gap().orElseThrow().answer())
        .isEqualTo(
            "Before: −2.604\u00a0±\u00a00.061° and 100.3\u00a0±\u00a03.7\u202fµs;"
                + " after: −2.604\u00a0±\u00a00.061° and 100.3\u00a0±\u00a03.7\u202fµs.");
  }

  @Test
  void bothSpeedsAreDrawnOverTurnsOfTheCrank() {
    List<Double> across = new ArrayList<>();
    same.speed()
        .orElseThrow()
        .tell(
            (axes, series, x, y) -> {
              assertThat(axes.across()).isEqualTo("turns of the crank");
              across.add(x);
            });
    int half = across.size() / 2;
    assertThat(across.subList(0, half)).isEqualTo(across.subList(half, across.size())).isSorted();
    assertThat(across.get(0)).isZero();
  }

  @Test
  void oneTurnOfEachRunsOverItsAngle() {
    same.turn().orElseThrow().tell((axes, series, x, y) -> assertThat(x).isBetween(-0.5, 360.5));
  }

  @Test
  void whatOneSideLacksIsSaid() {
    assertThat(nothing.spacing()).isEmpty();
    assertThat(nothing.speed().orElseThrow().answer())
        .startsWith("Before: nothing to compare; after: ");
  }
}
