package toothmark.chart;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.Arrays;
import java.util.concurrent.CancellationException;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import toothmark.capture.SampledSignal;
import toothmark.examination.Examination;
import toothmark.rotation.AngleTimeline;

class FoldTest {

  private static final int PER_DEGREE = 4;

  private final Examination run = SampleRun.full();
  private final Figures figures = Figures.of(run, Ink.LIGHT);
  private final String crank = run.roles().crank();

  /** No sample of any turn may be lost, however many turns there are. */
  @ParameterizedTest
  @EnumSource(Fold.class)
  void everySampleLiesBetweenTheLowestAndTheHighestAtItsAngle(Fold fold) {
    int columns = (int) fold.degrees() * PER_DEGREE;
    double[] low = filled(columns, Double.POSITIVE_INFINITY);
    double[] high = filled(columns, Double.NEGATIVE_INFINITY);
    Figure figure = figures.turns(crank, fold, () -> false).orElseThrow();
    figure.tell(
        (axes, series, x, y) -> {
          if (series.startsWith("lowest")) {
            low[(int) (x * PER_DEGREE)] = y;
          } else if (series.startsWith("highest")) {
            high[(int) (x * PER_DEGREE)] = y;
          }
        });
    AngleTimeline angle = run.observations().crank().orElseThrow().angle();
    SampledSignal signal =
        (SampledSignal) run.observations().capture().channel(crank).orElseThrow().signal();
    double[] value = new double[1];
    int checked = 0;
    // the first turns and the last are left out, since a fold holds whole turns and cycles only
    for (long i = signal.size() / 10; i < signal.size() * 9 / 10; i++) {
      double t = signal.timeOf(i);
      if (angle.covers(t)) {
        signal.read(i, value, 1);
        double at = angle.degreesAt(t) % fold.degrees() * PER_DEGREE;
        // a sample on the border of two columns may be counted to either
        if (Math.abs(at - Math.rint(at)) > 1e-6) {
          assertThat(value[0]).as(t + " s").isBetween(low[(int) at] - 1e-9, high[(int) at] + 1e-9);
          checked++;
        }
      }
    }
    assertThat(checked).isGreaterThan(10_000);
  }

  private static double[] filled(int size, double value) {
    double[] all = new double[size];
    Arrays.fill(all, value);
    return all;
  }

  @Test
  void theCoilsAreLaidOverThemselvesToo() {
    run.roles()
        .coils()
        .values()
        .forEach(c -> assertThat(figures.turns(c, Fold.CYCLE, () -> false)).isPresent());
  }

  @Test
  void stopsWhenAskedTo() {
    assertThatThrownBy(() -> figures.turns(crank, Fold.TURN, () -> true))
        .isInstanceOf(CancellationException.class);
  }
}
