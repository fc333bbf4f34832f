package toothmark.edges;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Random;
import java.util.function.IntToDoubleFunction;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import toothmark.capture.EventSignal;
import toothmark.capture.SampledSignal;
import toothmark.capture.StepSignal;

/** Shapes, levels and noise of channels of every kind. */
class ChannelSurveyTest {

  private static ChannelSurvey survey(int n, IntToDoubleFunction volts) {
    return ChannelSurvey.of(
        SampledSignal.of(0, 1e-5, IntStream.range(0, n).mapToDouble(volts).toArray()));
  }

  @Test
  void knowsAWave() {
    ChannelSurvey s = survey(50_000, i -> 3 * Math.sin(i * 0.01));
    assertThat(s.shape()).isEqualTo(SignalShape.WAVE);
    assertThat(s.levels()).isEmpty();
    assertThat(s.peakToPeak()).isCloseTo(6, within(0.01));
  }

  @Test
  void knowsTwoLevels() {
    ChannelSurvey s = survey(50_000, i -> i % 500 < 200 ? 12 : 0.5);
    assertThat(s.shape()).isEqualTo(SignalShape.TWO_LEVEL);
    assertThat(s.duty()).isCloseTo(0.4, within(0.001));
    assertThat(s.levels().orElseThrow().middle()).isCloseTo(6.25, within(0.1));
    assertThat(s.risingEdges()).isEqualTo(99);
  }

  @Test
  void knowsSilence() {
    Random random = new Random(5);
    assertThat(survey(50_000, i -> 0.01 * random.nextGaussian()).shape())
        .isEqualTo(SignalShape.QUIET);
    assertThat(survey(50_000, i -> 0).shape()).isEqualTo(SignalShape.QUIET);
  }

  @Test
  void countsChangesAndInstants() {
    ChannelSurvey steps =
        ChannelSurvey.of(
            new StepSignal(new double[] {0, 1, 2, 3}, new double[] {0, 1, 0, 1}, 0, 4));
    assertThat(steps.risingEdges()).isEqualTo(2);
    assertThat(steps.duty()).isCloseTo(0.5, within(1e-12));
    ChannelSurvey events = ChannelSurvey.of(new EventSignal(new double[] {0, 1, 2}, 0));
    assertThat(events.risingEdges()).isEqualTo(3);
  }

  /** The gain of third differences on white noise is 1 + 9 + 9 + 1 = 20 in variance. */
  @Test
  void measuresNoiseUnderASteepWave() {
    Random random = new Random(9);
    ChannelSurvey s = survey(200_000, i -> 5 * Math.sin(i * 0.04) + 0.02 * random.nextGaussian());
    assertThat(s.noise()).isCloseTo(0.02, within(0.001));
  }

  /** Bennett, Bell Syst. Tech. J. 27 (1948): a step's error has its width over root 12. */
  @Test
  void countsTheConvertersStepAsNoise() {
    ChannelSurvey s = survey(200_000, i -> Math.rint(5 * Math.sin(i * 0.01) / 0.04) * 0.04);
    assertThat(s.noise()).isGreaterThanOrEqualTo(0.04 / Math.sqrt(12) * 0.999).isLessThan(0.02);
  }

  @Test
  void givesQuantilesWithoutSortingTheSamples() {
    ChannelSurvey s = survey(100_000, i -> (i * 7919 % 100_000) / 1000.0);
    assertThat(s.quantile(0.01)).isCloseTo(1.0, within(0.05));
    assertThat(s.quantile(0.99)).isCloseTo(99.0, within(0.05));
    assertThat(s.mean()).isCloseTo(49.9995, within(1e-6));
  }
}
