package toothmark.ignition;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
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

  /** One wave behind the first spark, the third and so on, another behind those between. */
  private static Wave inTurn(Wave first, Wave second) {
    int[] sparks = {0};
    double[] before = {1};
    return (a, b) -> {
      sparks[0] += b < before[0] ? 1 : 0;
      before[0] = b;
      return (sparks[0] % 2 == 1 ? first : second).at(a, b);
    };
  }

  private double burst(double peak, double sinceSpark) {
    double ring = Math.cos(2 * Math.PI * 20e3 * sinceSpark);
    return peak * Math.exp(-sinceSpark / 1e-4) * ring + 0.01 * random.nextGaussian();
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

  /**
   * A clamp and its instrument let the current fade for some tens of microseconds (a judgement).
   */
  @ParameterizedTest
  @ValueSource(doubles = {8e-6, 30e-6, 100e-6})
  void aCurrentThatFadesIsOneSpark(double fades) {
    SketchedEngine engine = SketchedEngine.steady(1.5, 1500);
    double[] sparks = engine.passings(80, 360);
    SampledSignal signal =
        draw(
            engine,
            sparks,
            3e-3,
            (a, b) ->
                (a < 0 ? current(3e-3) * Math.exp(-b / fades) : current(a))
                    + 0.05 * random.nextGaussian());

    CoilTrack track = read(engine, signal, PickUp.CURRENT_CLAMP);
    assertThat(track.sparks()).hasSameSizeAs(sparks);
    assertThat(track.repeated()).isZero();
  }

  @Test
  void aClampThatGivesNothingButNoiseShowsNoSpark() {
    SketchedEngine engine = SketchedEngine.steady(1.5, 1500);
    SampledSignal signal =
        draw(engine, new double[0], 3e-3, (a, b) -> 0.05 * random.nextGaussian());
    assertThat(read(engine, signal, PickUp.CURRENT_CLAMP).sparks()).isEmpty();
  }

  /** One charge in seconds of standstill: under a thousandth of the record. */
  @ParameterizedTest
  @EnumSource(names = {"CURRENT_CLAMP", "PRIMARY_VOLTAGE"})
  void fewSparksInALongRecordAreSeen(PickUp pickUp) {
    SketchedEngine engine = SketchedEngine.steady(14, 1);
    double[] sparks = {12.1, 12.7, 13.3, 13.9};
    SampledSignal signal =
        draw(
            engine,
            sparks,
            2.5e-3,
            (a, b) ->
                pickUp == PickUp.PRIMARY_VOLTAGE
                    ? primary(a, b, 400)
                    : current(a) + 0.05 * random.nextGaussian());
    CoilTrack track = read(engine, signal, pickUp);
    assertThat(track.sparks().stream().mapToDouble(Spark::timeSeconds).toArray())
        .containsExactly(sparks, within(1.01 * INTERVAL));
  }

  private static void checkBurn(CoilTrack track, double seconds, int sparks) {
    MeanTime burn = track.burn().orElseThrow();
    assertThat(burn.sparks()).isEqualTo(sparks);
    assertThat(burn.meanSeconds())
        .as("late by a quarter of the ringing's period at most")
        .isBetween(seconds - INTERVAL, seconds + 1 / 6e3 / 4 + INTERVAL);
    assertThat(burn.standardDeviationSeconds()).isLessThan(INTERVAL);
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

    CoilTrack track = read(engine, signal, PickUp.PRIMARY_VOLTAGE);
    check(track, sparks, 3e-3, 2 * INTERVAL);
    checkBurn(track, 1.4e-3, sparks.length);
    assertThat(track.charge()).isEmpty();
  }

  /** Every other plug lead is off: its flyback rings out, and nothing burns. */
  @Test
  void aFlybackThatOnlyRingsBurnsNothing() {
    SketchedEngine engine = SketchedEngine.steady(1.5, 850);
    double[] sparks = engine.passings(80, 360);

    SampledSignal signal =
        draw(
            engine,
            sparks,
            3e-3,
            inTurn(
                (a, b) ->
                    a < 0
                        ? BATTERY + 330 * Math.exp(-b / 0.3e-3) * Math.cos(2 * Math.PI * 6e3 * b)
                        : primary(a, b, 400),
                (a, b) -> primary(a, b, 400)));

    CoilTrack track = read(engine, signal, PickUp.PRIMARY_VOLTAGE);
    assertThat(track.sparks()).hasSameSizeAs(sparks);
    checkBurn(track, 1.4e-3, sparks.length / 2);
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

    CoilTrack track = read(engine, signal, PickUp.CURRENT_CLAMP);
    check(track, sparks, 3e-3, 0.05e-3);
    ChargeCurrent charge = track.charge().orElseThrow();
    assertThat(charge.form()).isEqualTo(ChargeForm.RAMP);
    assertThat(charge.until().sparks()).isEqualTo(charge.charges()).isEqualTo(sparks.length);
    assertThat(charge.shareOfDwell()).isCloseTo(1, within(0.02));
  }

  @Test
  void readsACurrentClampWhoseCoilIsLimited() {
    SketchedEngine engine = SketchedEngine.steady(1, 2000);
    double[] sparks = engine.passings(80, 360);

    SampledSignal signal =
        draw(
            engine, sparks, 6e-3, (a, b) -> Math.min(7, current(a)) + 0.05 * random.nextGaussian());

    CoilTrack track = read(engine, signal, PickUp.CURRENT_CLAMP);
    check(track, sparks, 6e-3, 0.05e-3);
    ChargeCurrent charge = track.charge().orElseThrow();
    assertThat(charge.form()).isEqualTo(ChargeForm.LIMITED);
    assertThat(charge.until().meanSeconds())
        .as("t = -(L/R) ln(1 - I R/V), 7 A: 2.174 ms")
        .isCloseTo(2.174e-3, within(0.06e-3));
    assertThat(charge.shareOfDwell()).isCloseTo(2.174 / 6, within(0.01));
    assertThat(charge.until().sparks()).isEqualTo(sparks.length);
  }

  /** From 8 A on (t = 2.565 ms) a quarter of the inductance is left. */
  private static double saturating(double sinceStart) {
    double more = Math.max(0, sinceStart - 2.565e-3);
    double end = BATTERY / 0.6;
    return more == 0
        ? current(sinceStart)
        : end - (end - current(2.565e-3)) * Math.exp(-0.6 * more / (3.5e-3 / 4));
  }

  @ParameterizedTest
  @ValueSource(doubles = {3.2e-3, 4e-3})
  void readsACurrentClampWhoseCoilSaturates(double dwell) {
    SketchedEngine engine = SketchedEngine.steady(1, 2000);
    double[] sparks = engine.passings(80, 360);

    SampledSignal signal =
        draw(engine, sparks, dwell, (a, b) -> saturating(a) + 0.05 * random.nextGaussian());

    ChargeCurrent charge = read(engine, signal, PickUp.CURRENT_CLAMP).charge().orElseThrow();
    assertThat(charge.form()).isEqualTo(ChargeForm.KNEE);
    assertThat(charge.until().meanSeconds()).isCloseTo(2.565e-3, within(0.1e-3));
  }

  /** Charges far longer than L/R bend over to V/R by themselves: no limit, no knee. */
  @ParameterizedTest
  @ValueSource(doubles = {1.5e-3, 6e-3, 12e-3, 20e-3})
  void aCoilThatOnlyFillsUpIsNotLimited(double dwell) {
    SketchedEngine engine = SketchedEngine.steady(2, 1000);
    double[] sparks = engine.passings(80, 360);

    SampledSignal signal =
        draw(engine, sparks, dwell, (a, b) -> current(a) + 0.05 * random.nextGaussian());

    ChargeCurrent charge = read(engine, signal, PickUp.CURRENT_CLAMP).charge().orElseThrow();
    assertThat(charge.form()).isEqualTo(ChargeForm.RAMP);
    assertThat(charge.until().sparks()).isEqualTo(charge.charges());
  }

  @Test
  void oneBurstOfAnInductiveClampIsOneSparkWeakOrStrong() {
    SketchedEngine engine = SketchedEngine.steady(1.5, 2500);
    double[] sparks = engine.passings(80, 360);

    SampledSignal signal =
        draw(engine, sparks, 3e-3, inTurn((a, b) -> burst(4, b), (a, b) -> burst(1, b)));
    CoilTrack track = read(engine, signal, PickUp.INDUCTIVE_CLAMP);

    assertThat(track.sparks().stream().mapToDouble(Spark::timeSeconds).toArray())
        .containsExactly(sparks, within(1.01 * INTERVAL));
    assertThat(track.dwell()).isEmpty();
  }
}
