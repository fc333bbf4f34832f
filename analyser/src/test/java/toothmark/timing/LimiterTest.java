package toothmark.timing;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Random;
import java.util.function.DoublePredicate;
import java.util.function.ToDoubleBiFunction;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import toothmark.edges.LogicEdges;
import toothmark.edges.SensorKind;
import toothmark.ignition.Coil;
import toothmark.ignition.CoilChannel;
import toothmark.ignition.CoilReader;
import toothmark.ignition.FiringOrder;
import toothmark.ignition.PickUp;
import toothmark.ignition.SketchedEngine;
import toothmark.rotation.AngleTimeline;
import toothmark.wheel.ToothGeometry;
import toothmark.wheel.WheelPattern;

/** Limiters are named, counted, and kept out of the fit. */
class LimiterTest {

  private static final FiringOrder FOUR = FiringOrder.even(List.of(1, 3, 4, 2));
  private static final double DELAY = 50e-6;

  private final Random random = new Random(99);

  private Timing measure(
      SketchedEngine engine, DoublePredicate fires, ToDoubleBiFunction<Double, Integer> advance) {
    AngleTimeline timeline = engine.timeline(10, 12e-6);
    List<CoilChannel> coils =
        IntStream.range(0, 2)
            .mapToObj(
                c -> {
                  double[] due = engine.passings(90 + 180 * c - 28, 360);
                  double[] t =
                      Arrays.stream(due)
                          .filter(fires)
                          .map(
                              x ->
                                  engine.timeAt(
                                          engine.degreesAt(x)
                                              + 28
                                              - advance.applyAsDouble(engine.rpmAt(x), c))
                                      + DELAY
                                      + 4e-6 * random.nextGaussian())
                          .toArray();
                  Coil coil =
                      new Coil(
                          "coil " + (c + 1), c == 0 ? List.of(1, 4) : List.of(3, 2), PickUp.LOGIC);
                  return new CoilChannel(coil, engine.pulses(t, 2e-3, 1e-6));
                })
            .toList();
    double[] tdc = Arrays.stream(engine.passings(90, 360)).map(t -> t + 1e-3).toArray();
    return TimingMeasurement.measure(
        new TimingInputs(
            timeline,
            new WheelSetting(
                OptionalDouble.of(90),
                OptionalDouble.empty(),
                WheelPattern.plain(36),
                new ToothGeometry(new double[36], uncertain(36, 0.01), new double[36], 0),
                SensorKind.VARIABLE_RELUCTANCE),
            TdcMarks.read(LogicEdges.detect(engine.pulses(tdc, 1e-3, 1e-6)), timeline),
            TdcReadings.NONE,
            CoilReader.read(coils, timeline, FOUR),
            FOUR,
            Optional.of(new FixedAdvance(28))));
  }

  @Test
  void aRetardIsNamedAndLeftOut() {
    SketchedEngine engine =
        new SketchedEngine(3, t -> t < 1 ? 3000 + 3300 * t : 6300 + 200 * Math.sin(12 * t));

    Timing timing = measure(engine, t -> true, (n, c) -> n > 6350 ? 8 : 28);

    assertThat(timing.limiters()).hasSize(1);
    Limiter limiter = timing.limiters().get(0);
    assertThat(limiter.manner()).isEqualTo(Limiter.Manner.RETARD);
    assertThat(limiter.pulledBackDegrees()).isCloseTo(20, within(0.3));
    assertThat(limiter.fromRpm()).isCloseTo(6350, within(30.0));
    GapFit gap = timing.gap().orElseThrow();
    assertThat(gap.delaySeconds().orElseThrow().value()).isCloseTo(DELAY, within(3e-6));
    assertThat(gap.offsetDegrees().value()).isCloseTo(0, within(0.15));
    assertThat(
            timing.sparks().stream()
                .filter(s -> s.standing() == SparkTiming.Standing.LIMITED)
                .count())
        .isEqualTo(limiter.sparks());
  }

  @Test
  void aRetardThatHoldsMostOfTheSparksIsStillTheLimiter() {
    SketchedEngine engine =
        new SketchedEngine(4, t -> t < 1 ? 3000 + 3500 * t : 6500 + 60 * Math.sin(9 * t));

    Timing timing = measure(engine, t -> true, (n, c) -> n > 6400 ? 13 : 28);

    assertThat(timing.limiters())
        .extracting(Limiter::manner)
        .containsExactly(Limiter.Manner.RETARD);
    assertThat(timing.limiters().get(0).sparks()).isGreaterThan(timing.sparks().size() / 2);
    assertThat(timing.gap().orElseThrow().delaySeconds().orElseThrow().value())
        .isCloseTo(DELAY, within(4e-6));
  }

  @Test
  void aCutIsNamed() {
    SketchedEngine engine =
        new SketchedEngine(3, t -> t < 1 ? 3000 + 3300 * t : 6300 + 150 * Math.sin(12 * t));

    Timing timing =
        measure(engine, t -> engine.rpmAt(t) < 6300 || random.nextInt(3) == 0, (n, c) -> 28);

    assertThat(timing.limiters()).hasSize(1);
    assertThat(timing.limiters().get(0).manner()).isEqualTo(Limiter.Manner.SPARK_CUT);
    assertThat(timing.limiters().get(0).fromRpm()).isCloseTo(6300, within(40.0));
    assertThat(timing.gap().orElseThrow().delaySeconds().orElseThrow().value())
        .isCloseTo(DELAY, within(4e-6));
  }

  @Test
  void missesAtAllSpeedsAreNoLimiter() {
    SketchedEngine engine = SketchedEngine.sweep(3, 1000, 6000);

    Timing timing = measure(engine, t -> random.nextInt(12) != 0, (n, c) -> 28);

    assertThat(timing.limiters()).isEmpty();
  }

  @Test
  void aDelayIsNoLimiter() {
    SketchedEngine engine = SketchedEngine.sweep(3, 1000, 6000);

    assertThat(measure(engine, t -> true, (n, c) -> 28).limiters()).isEmpty();
  }

  private static double[] uncertain(int teeth, double degrees) {
    double[] u = new double[teeth];
    Arrays.fill(u, degrees);
    return u;
  }
}
