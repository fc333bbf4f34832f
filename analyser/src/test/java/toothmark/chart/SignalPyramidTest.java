package toothmark.chart;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.CancellationException;
import org.junit.jupiter.api.Test;
import toothmark.capture.SampledSignal;

class SignalPyramidTest {

  private static final long SIZE = 3_000_017;
  private static final long SPIKE = 1_234_567;

  /** A slow wave with one odd sample, computed when asked. */
  private static SampledSignal wave() {
    return new SampledSignal(-1, 1e-5, SIZE) {
      @Override
      public void read(long first, double[] into, int count) {
        for (int i = 0; i < count; i++) {
          long k = first + i;
          into[i] = k == SPIKE ? 9 : Math.sin(k * 1e-4);
        }
      }
    };
  }

  private record Dot(double x, double y) {}

  private static List<Dot> trace(Curve c, double from, double to, int columns) {
    List<Dot> dots = new ArrayList<>();
    c.trace(
        from,
        to,
        columns,
        new Curve.Line() {
          @Override
          public void moveTo(double x, double y) {
            dots.add(new Dot(x, y));
          }

          @Override
          public void lineTo(double x, double y) {
            dots.add(new Dot(x, y));
          }
        });
    return dots;
  }

  @Test
  void oneOddSampleStaysVisibleAtEveryFineness() {
    SampledSignal s = wave();
    Curve c = SignalPyramid.of(s, () -> false);
    double at = s.timeOf(SPIKE);
    for (double half = 1e-4; half < 40; half *= 3) {
      double from = Math.max(-1, at - half);
      double to = Math.min(s.timeOf(SIZE - 1.0), at + half);
      Dot top =
          trace(c, from, to, 800).stream()
              .max(java.util.Comparator.comparingDouble(Dot::y))
              .orElseThrow();
      assertThat(top.y()).isEqualTo(9);
      assertThat(top.x()).isCloseTo(at, within(1.5 * (to - from) / 800));
    }
  }

  @Test
  void aPictureCostsWhatItsWidthCosts() {
    Curve c = SignalPyramid.of(wave(), () -> false);
    assertThat(trace(c, -1, 29, 800)).hasSizeLessThanOrEqualTo(4 * 802);
  }

  @Test
  void extremesAreThoseOfTheSamples() {
    Curve c = SignalPyramid.of(wave(), () -> false);
    assertThat(c.up(-1, 29).getUpperBound()).isEqualTo(9);
    // a float holds the bottom of the wave to 1e-7
    assertThat(c.up(-1, 29).getLowerBound()).isCloseTo(-1, within(1e-7));
    assertThat(c.up(0, 1).getUpperBound()).isCloseTo(1, within(1e-6));
  }

  @Test
  void aPauseOfTheRecorderStaysEmpty() {
    SampledSignal paused =
        new SampledSignal(new double[] {0, 5}, new long[] {0, 1000}, 1e-3, 2000) {
          @Override
          public void read(long first, double[] into, int count) {
            for (int i = 0; i < count; i++) {
              into[i] = first + i < 1000 ? 1 : 2;
            }
          }
        };
    List<Dot> dots = trace(SignalPyramid.of(paused, () -> false), 0, 6, 10);
    assertThat(dots).noneMatch(d -> d.x() > 1 && d.x() < 5);
    assertThat(dots).filteredOn(d -> d.x() <= 1).allMatch(d -> d.y() == 1);
    assertThat(dots).filteredOn(d -> d.x() >= 5).isNotEmpty().allMatch(d -> d.y() == 2);
  }

  @Test
  void itIsDrawnAsFarAsItHasGrown() {
    SampledSignal s = wave();
    SignalPyramid growing = SignalPyramid.growing(s);
    assertThat(trace(growing, -1, 29, 800)).isEmpty();
    assertThat(growing.grow()).isTrue();
    double reached = s.timeOf(Math.round(growing.grown() * SIZE));
    assertThat(trace(growing, -1, 29, 800))
        .isNotEmpty()
        .allMatch(d -> d.x() <= reached + 1e-9)
        .anyMatch(d -> d.x() > reached - 2 * 30.0 / 800);
    while (growing.grow()) {
      assertThat(growing.grown()).isLessThan(1);
    }
    assertThat(trace(growing, -1, 29, 800))
        .isEqualTo(trace(SignalPyramid.of(s, () -> false), -1, 29, 800));
  }

  @Test
  void itStopsWhenAsked() {
    assertThatThrownBy(() -> SignalPyramid.of(wave(), () -> true))
        .isInstanceOf(CancellationException.class);
  }
}
