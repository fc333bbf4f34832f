package toothmark.ignition;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import toothmark.capture.SampledSignal;

/**
 * Analogue pick-ups on waves drawn after the equations of the coil: i = V/R (1 - exp(-R t / L)),
 * with L 3.5 mH and R 0.6 ohm.
 */
class PickUpTest {

  private static final FiringOrder FOUR = FiringOrder.even(List.of(1, 3, 4, 2));
  private static final double INTERVAL = 5e-6;
  private static final double BATTERY = 13.5;

  private final Random random = new Random(7);

  /** A wave by the time since charging began last and the time since the last spark. */
  private interface Wave {
    double at(double sinceStart, double sinceSpark);
  }

  private SampledSignal draw(SketchedEngine engine, double[] sparks, double dwell, Wave wave) {
    double[] v = new double[(int) (engine.seconds() / INTERVAL)];
    int next = 0;
    for (int i = 0; i < v.length; i++) {
      double t = i * INTERVAL;
      while (next < sparks.length && sparks[next] <= t) {
        next++;
      }
      double start = next < sparks.length ? t - (sparks[next] - dwell) : -1;
      double spark = next > 0 ? t - sparks[next - 1] : 1;
      v[i] = wave.at(start, spark);
    }
    return SampledSignal.of(0, INTERVAL, v);
  }

  private CoilTrack read(SketchedEngine engine, SampledSignal signal, PickUp pickUp) {
    Coil coil = new Coil("coil 1", List.of(1, 4), pickUp);
    return CoilReader.read(List.of(new CoilChannel(coil, signal)), engine.timeline(10, 0), FOUR)
        .get(0);
  }

  private double primary(double sinceStart, double sinceSpark, double clip) {
    double noise = 0.1 * random.nextGaussian();
    double v = BATTERY;
    if (sinceStart >= 0) {
      v = 0.4 + 0.15 * sinceStart * 1e3;
    } else if (sinceSpark < 30e-6) {
      v = 350;
    } else if (sinceSpark < 1.4e-3) {
      v = 38 + 6 * Math.exp(-sinceSpark / 1e-4) * Math.cos(sinceSpark * 2 * Math.PI * 15e3);
    } else {
      double t = sinceSpark - 1.4e-3;
      v = BATTERY + 40 * Math.exp(-t / 3e-4) * Math.cos(2 * Math.PI * 6e3 * t);
    }
    return Math.min(clip, v + noise);
  }

  private static double current(double sinceStart) {
    return sinceStart < 0 ? 0 : BATTERY / 0.6 * (1 - Math.exp(-0.6 * sinceStart / 3.5e-3));
  }

  private void check(CoilTrack track, double[] sparks, double dwell, double dwellWithin) {
    assertThat(track.sparks().stream().mapToDouble(Spark::timeSeconds).toArray())
        .containsExactly(sparks, within(1.01 * INTERVAL));
    assertThat(track.dwell().orElseThrow().meanSeconds()).isCloseTo(dwell, within(dwellWithin));
    assertThat(track.absent()).isEmpty();
    assertThat(track.repeated()).isZero();
  }

  @ParameterizedTest
  @ValueSource(doubles = {40, 60, 500})
  void readsAPrimaryVoltageAtIdleThroughRingingAndClipping(double clip) {
    SketchedEngine engine = SketchedEngine.steady(1.5, 850);
    double[] sparks = engine.passings(80, 360);

    SampledSignal signal = draw(engine, sparks, 3e-3, (a, b) -> primary(a, b, clip));

    check(read(engine, signal, PickUp.PRIMARY_VOLTAGE), sparks, 3e-3, 2 * INTERVAL);
  }

  /** Then the burning spark stands longer than the charge, and battery voltage far longer. */
  @Test
  void readsAPrimaryVoltageThatChargesTooBriefly() {
    SketchedEngine engine = SketchedEngine.steady(0.7, 2200);
    double[] sparks = engine.passings(80, 360);

    SampledSignal signal = draw(engine, sparks, 1.1e-3, (a, b) -> primary(a, b, 400));

    check(read(engine, signal, PickUp.PRIMARY_VOLTAGE), sparks, 1.1e-3, 2 * INTERVAL);
  }

  @Test
  void readsAPrimaryVoltageThatChargesMostOfTheTime() {
    SketchedEngine engine = SketchedEngine.steady(0.5, 7500);
    double[] sparks = engine.passings(80, 360);

    SampledSignal signal = draw(engine, sparks, 4.8e-3, (a, b) -> primary(a, b, 400));

    check(read(engine, signal, PickUp.PRIMARY_VOLTAGE), sparks, 4.8e-3, 2 * INTERVAL);
  }

  @Test
  void aChargeThatIsLetGoWithoutFlybackIsNoSpark() {
    SketchedEngine engine = SketchedEngine.steady(1.5, 850);
    double[] sparks = engine.passings(80, 360);
    double soft = sparks[8];

    SampledSignal signal = draw(engine, sparks, 3e-3, (a, b) -> primary(a, b, 400));
    double[] v = new double[(int) signal.size()];
    signal.read(0, v, v.length);
    for (int i = (int) (soft / INTERVAL) - 1; i < (soft + 5e-3) / INTERVAL; i++) {
      v[i] = BATTERY;
    }
    CoilTrack track = read(engine, SampledSignal.of(0, INTERVAL, v), PickUp.PRIMARY_VOLTAGE);

    assertThat(track.sparks()).hasSize(sparks.length - 1);
    assertThat(track.absent()).hasSize(1);
    assertThat(track.absent().get(0).timeSeconds()).isCloseTo(soft, within(1e-4));
  }

  @ParameterizedTest
  @ValueSource(doubles = {1, -1})
  void readsACurrentClampEitherWayRound(double sign) {
    SketchedEngine engine = SketchedEngine.sweep(1.5, 900, 5000);
    double[] sparks = engine.passings(80, 360);

    SampledSignal signal =
        draw(
            engine,
            sparks,
            3e-3,
            (a, b) -> sign * (0.05 + current(a)) + 0.05 * random.nextGaussian());

    check(read(engine, signal, PickUp.CURRENT_CLAMP), sparks, 3e-3, 0.05e-3);
  }

  @Test
  void readsACurrentClampWhoseCoilIsLimited() {
    SketchedEngine engine = SketchedEngine.steady(1, 2000);
    double[] sparks = engine.passings(80, 360);

    SampledSignal signal =
        draw(
            engine, sparks, 6e-3, (a, b) -> Math.min(7, current(a)) + 0.05 * random.nextGaussian());

    check(read(engine, signal, PickUp.CURRENT_CLAMP), sparks, 6e-3, 0.05e-3);
  }

  @Test
  void oneBurstOfAnInductiveClampIsOneSparkWeakOrStrong() {
    SketchedEngine engine = SketchedEngine.steady(1.5, 2500);
    double[] sparks = engine.passings(80, 360);
    int[] number = {-1};
    double[] before = {1};

    SampledSignal signal =
        draw(
            engine,
            sparks,
            3e-3,
            (a, b) -> {
              number[0] += b < before[0] ? 1 : 0;
              before[0] = b;
              double peak = number[0] % 2 == 0 ? 4 : 1;
              return peak * Math.exp(-b / 1e-4) * Math.cos(2 * Math.PI * 20e3 * b)
                  + 0.01 * random.nextGaussian();
            });
    CoilTrack track = read(engine, signal, PickUp.INDUCTIVE_CLAMP);

    assertThat(track.sparks().stream().mapToDouble(Spark::timeSeconds).toArray())
        .containsExactly(sparks, within(1.01 * INTERVAL));
    assertThat(track.dwell()).isEmpty();
  }
}
