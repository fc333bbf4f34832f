package toothmark.edges;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Random;
import java.util.function.DoubleUnaryOperator;
import org.assertj.core.data.Offset;
import org.junit.jupiter.api.Test;
import toothmark.capture.SampledSignal;

class DisturbanceScanTest {

  private static final double INTERVAL = 1 / 100e3;
  private static final int SAMPLES = 100_000;

  /** A wave whose frequency and height rise together from 200 Hz and 1 V to 1400 Hz and 7 V. */
  private static double wave(double t) {
    double turns = 200 * t + 600 * t * t;
    return (1 + 6 * t) * Math.sin(2 * Math.PI * turns);
  }

  private static Disturbances scan(DoubleUnaryOperator v, double noise, double clippedAt) {
    Random random = new Random(5);
    double[] x = new double[SAMPLES];
    for (int i = 0; i < SAMPLES; i++) {
      double raw = v.applyAsDouble(i * INTERVAL) + noise * random.nextGaussian();
      x[i] = Math.max(-clippedAt, Math.min(clippedAt, raw));
    }
    SampledSignal signal = SampledSignal.of(0, INTERVAL, x);
    return DisturbanceScan.of(
        signal,
        EdgeDetector.withDefaults().withKind(SensorKind.VARIABLE_RELUCTANCE).detect(signal));
  }

  @Test
  void findsEachBurstWhereItBegins() {
    double[] at = {0.1003, 0.3217, 0.55021, 0.9004};
    Disturbances found = scan(t -> wave(t) + bursts(t, at), 0.01, 100);
    assertThat(found.size()).isEqualTo(at.length);
    for (int i = 0; i < at.length; i++) {
      assertThat(found.time(i)).isCloseTo(at[i], Offset.offset(30e-6));
      assertThat(found.height(i)).isBetween(2.0, 8.0);
    }
  }

  private static double bursts(double t, double[] at) {
    double sum = 0;
    for (double a : at) {
      double s = t - a;
      sum += s < 0 ? 0 : 4 * Math.exp(-s / 35e-6) * Math.cos(2 * Math.PI * 30e3 * s);
    }
    return sum;
  }

  @Test
  void aCleanWaveHasNone() {
    assertThat(scan(DisturbanceScanTest::wave, 0.01, 100).size()).isZero();
  }

  @Test
  void noiseAsHighAsTheWaveHasNone() {
    assertThat(scan(DisturbanceScanTest::wave, 2, 100).size()).isZero();
  }

  @Test
  void eightBitsMakeNone() {
    double step = 16.0 / 256;
    assertThat(scan(t -> step * Math.rint(wave(t) / step), 0, 100).size()).isZero();
  }

  @Test
  void aWaveCutOffHasNone() {
    assertThat(scan(DisturbanceScanTest::wave, 0.005, 3).size()).isZero();
  }

  @Test
  void aSwitchHasNone() {
    double[] x = new double[1000];
    for (int i = 0; i < x.length; i++) {
      x[i] = i / 20 % 2 == 0 ? 0 : 5;
    }
    SampledSignal signal = SampledSignal.of(0, INTERVAL, x);
    CrankEdges edges = EdgeDetector.withDefaults().withKind(SensorKind.HALL).detect(signal);
    assertThat(DisturbanceScan.of(signal, edges).size()).isZero();
  }
}
