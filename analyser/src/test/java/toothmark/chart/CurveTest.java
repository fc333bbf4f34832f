package toothmark.chart;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import org.jfree.data.Range;
import org.junit.jupiter.api.Test;
import toothmark.capture.EventSignal;
import toothmark.capture.SampledSignal;
import toothmark.capture.StepSignal;

class CurveTest {

  private static final int SAMPLES = 1_000_000;

  @Test
  void keepsASpikeOfOneSampleHoweverCoarseThePicture() {
    double[] samples = new double[SAMPLES];
    samples[654_321] = 5;
    Curve curve = SignalCurve.of(SampledSignal.of(2, 1e-6, samples)).orElseThrow();
    Collected line = trace(curve, 2, 3, 700);
    assertThat(line.points).anyMatch(p -> p[1] == 5 && Math.abs(p[0] - 2.654321) < 1e-9);
    assertThat(line.points.size()).isLessThan(4 * 702);
    assertThat(curve.up(2, 3)).isEqualTo(new Range(0, 5));
  }

  @Test
  void drawsEverySampleWhereThereIsRoom() {
    Curve curve = SignalCurve.of(SampledSignal.of(0, 1, 1, 4, 2, 8, 5, 7)).orElseThrow();
    Collected line = trace(curve, 1, 4, 100);
    assertThat(line.points.stream().map(p -> p[1])).containsExactly(4.0, 2.0, 8.0, 5.0);
  }

  @Test
  void goesRoundTheCornersOfALevel() {
    StepSignal steps = new StepSignal(new double[] {0, 1, 2}, new double[] {0, 1, 0}, 0, 3);
    Collected line = trace(SignalCurve.of(steps).orElseThrow(), 0.5, 2.5, 1000);
    assertThat(line.points.stream().map(p -> p[0] + ":" + p[1]))
        .containsExactly("0.5:0.0", "1.0:0.0", "1.0:1.0", "2.0:1.0", "2.0:0.0", "2.5:0.0");
  }

  @Test
  void leavesAGapWhereNothingIsKnown() {
    SeriesCurve curve =
        new SeriesCurve(new double[] {0, 1, 2, 9, 10}, new double[] {1, 1, 1, 2, 2}, 3);
    assertThat(trace(curve, 0, 10, 100).starts).isEqualTo(2);
  }

  @Test
  void bareInstantsHaveNoHeight() {
    assertThat(SignalCurve.of(new EventSignal(new double[] {1, 2}, 0))).isEmpty();
  }

  private static Collected trace(Curve curve, double from, double to, int columns) {
    Collected line = new Collected();
    curve.trace(from, to, columns, line);
    return line;
  }

  private static final class Collected implements Curve.Line {

    private final List<double[]> points = new ArrayList<>();
    private int starts;

    @Override
    public void moveTo(double x, double y) {
      starts++;
      lineTo(x, y);
    }

    @Override
    public void lineTo(double x, double y) {
      points.add(new double[] {x, y});
    }
  }
}
