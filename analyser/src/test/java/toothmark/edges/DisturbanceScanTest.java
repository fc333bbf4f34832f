package toothmark.edges;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import toothmark.capture.SampledSignal;

class DisturbanceScanTest {

  private static final double INTERVAL = 1e-5;

  /** A tooth each millisecond, and a ringing burst from sample 33 333 on where one is asked for. */
  private static Disturbances of(double burstVolts) {
    double[] v =
        IntStream.range(0, 100_000)
            .mapToDouble(
                i -> {
                  double wave = 3 * Math.sin(2 * Math.PI * i * INTERVAL / 1e-3);
                  int k = i - 33_333;
                  double ring = Math.exp(-k / 6.0) * Math.cos(0.6 * k);
                  return k < 0 ? wave : wave + burstVolts * ring;
                })
            .toArray();
    SampledSignal signal = SampledSignal.of(0, INTERVAL, v);
    CrankEdges edges =
        EdgeDetector.withDefaults().withKind(SensorKind.VARIABLE_RELUCTANCE).detect(signal);
    return DisturbanceScan.of(signal, edges);
  }

  @Test
  void aBurstBeginsWithItsFirstSampleAndNotBefore() {
    Disturbances found = of(2);
    assertThat(found.size()).isEqualTo(1);
    assertThat(found.time(0)).isCloseTo(33_333 * INTERVAL, within(INTERVAL / 2));
  }

  @Test
  void aCleanWaveHoldsNone() {
    assertThat(of(0).size()).isZero();
  }
}
