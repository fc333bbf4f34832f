package toothmark.timing;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Random;
import java.util.function.DoubleUnaryOperator;
import java.util.function.IntFunction;
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
import toothmark.units.Measured;
import toothmark.wheel.ToothGeometry;
import toothmark.wheel.WheelPattern;

/** Engines whose alignment, delay and lag are known; one of each sign. */
class TimingMeasurementTest {

  private static final FiringOrder FOUR = FiringOrder.even(List.of(1, 3, 4, 2));
  private static final double TOOTH1 = 90;
  private static final double RESOLUTION = 2e-6;

  /** What is wrong with an engine. */
  private record Wrong(double alignmentDegrees, double delaySeconds, double lagSeconds) {}

  private final Random random = new Random(20240611);

  /** So long a fixed time is the filter of a switching sensor; that of a coil would bend over. */
  private static SensorKind sensor(Wrong wrong) {
    return wrong.lagSeconds() > 15e-6 ? SensorKind.HALL : SensorKind.VARIABLE_RELUCTANCE;
  }

  private TimingInputs inputs(SketchedEngine engine, Wrong wrong, double advance) {
    return inputs(engine, wrong, advance, c -> sparks(engine, wrong, advance, c));
  }

  private TimingInputs inputs(
      SketchedEngine engine, Wrong wrong, double advance, IntFunction<double[]> sparks) {
    AngleTimeline timeline = engine.timeline(10, wrong.lagSeconds());
    double[] tdc = engine.passings(TOOTH1, 360);
    WheelSetting wheel =
        new WheelSetting(
            OptionalDouble.of(TOOTH1 - wrong.alignmentDegrees()),
            OptionalDouble.of(150),
            WheelPattern.plain(36),
            new ToothGeometry(new double[36], uncertain(36, 0.0), new double[36], 0),
            sensor(wrong));
    List<CoilChannel> coils =
        IntStream.range(0, 2)
            .mapToObj(
                c ->
                    new CoilChannel(
                        new Coil(
                            "coil " + (c + 1),
                            c == 0 ? List.of(1, 4) : List.of(3, 2),
                            PickUp.LOGIC),
                        engine.pulses(sparks.apply(c), 2e-3, RESOLUTION)))
            .toList();
    return new TimingInputs(
        timeline,
        wheel,
        TdcMarks.read(
            LogicEdges.detect(engine.pulses(shifted(tdc, 1e-3), 1e-3, RESOLUTION)), timeline),
        TdcReadings.NONE,
        CoilReader.read(coils, timeline, FOUR),
        FOUR,
        Optional.of(new FixedAdvance(advance)));
  }

  private double[] sparks(SketchedEngine engine, Wrong wrong, double advance, int coil) {
    double[] t = engine.passings(TOOTH1 + 180 * coil - advance - wrong.alignmentDegrees(), 360);
    for (int i = 0; i < t.length; i++) {
      t[i] += wrong.delaySeconds() + 0.1 * random.nextGaussian() / (6 * engine.rpmAt(t[i]));
    }
    return t;
  }

  private static double[] shifted(double[] t, double by) {
    return java.util.Arrays.stream(t).map(x -> x + by).toArray();
  }

  private void checkSweep(Wrong wrong) {
    Timing timing =
        TimingMeasurement.measure(inputs(SketchedEngine.sweep(4, 900, 5000), wrong, 12));

    Alignment alignment = timing.alignment().orElseThrow();
    assertThat(alignment.errorDegrees().orElseThrow().value())
        .isCloseTo(wrong.alignmentDegrees(), within(0.05));
    assertThat(alignment.lag().seconds().value()).isCloseTo(wrong.lagSeconds(), within(1.5e-6));
    GapFit gap = timing.gap().orElseThrow();
    assertThat(gap.delaySeconds().orElseThrow().value())
        .isCloseTo(wrong.delaySeconds(), within(3e-6));
    assertThat(gap.offsetDegrees().value()).isCloseTo(wrong.alignmentDegrees(), within(0.1));
    assertThat(gap.foretoldDegrees()).isEmpty();
  }

  @Test
  void aSoundEngineShowsNothing() {
    checkSweep(new Wrong(0, 0, 15e-6));
  }

  @Test
  void anAdvancedWheelReadsPositive() {
    checkSweep(new Wrong(3, 0, 10e-6));
  }

  @Test
  void aRetardedWheelReadsNegative() {
    checkSweep(new Wrong(-2, 0, 5e-6));
  }

  @Test
  void aLateSparkReadsAsPositiveDelay() {
    checkSweep(new Wrong(0, 80e-6, 15e-6));
  }

  @Test
  void anEarlySparkReadsAsNegativeDelay() {
    checkSweep(new Wrong(1, -60e-6, 20e-6));
  }

  @Test
  void aLargeLagIsToldFromAlignment() {
    checkSweep(new Wrong(-1, 40e-6, 60e-6));
  }

  /** A controller that counts the time of the last 50 degrees at the speed of the 10 before. */
  private double[] foretold(SketchedEngine engine, Wrong wrong, double advance, int coil) {
    double[] t =
        engine.passings(TOOTH1 + 180 * coil - advance - wrong.alignmentDegrees() + 360, 360);
    for (int i = 0; i < t.length; i++) {
      double aim = engine.degreesAt(t[i]);
      double from = engine.timeAt(aim - 50);
      double aDegree = (from - engine.timeAt(aim - 60)) / 10;
      double late = wrong.delaySeconds() + 0.05 * random.nextGaussian() / (6 * engine.rpmAt(t[i]));
      t[i] = from + 50 * aDegree + late;
    }
    return t;
  }

  @Test
  void whatForetellingDoesIsHeldApart() {
    SketchedEngine quickUpSlowDown =
        new SketchedEngine(4, t -> 900 + 3000 * (t < 1 ? t * t * (3 - 2 * t) : (4 - t) / 3));
    Wrong wrong = new Wrong(1.5, 60e-6, 15e-6);

    Timing timing =
        TimingMeasurement.measure(
            inputs(quickUpSlowDown, wrong, 12, c -> foretold(quickUpSlowDown, wrong, 12, c)));

    GapFit gap = timing.gap().orElseThrow();
    Measured offset = gap.offsetDegrees();
    Measured delay = gap.delaySeconds().orElseThrow();
    assertThat(offset.value()).isCloseTo(1.5, within(3 * offset.standardUncertainty()));
    assertThat(delay.value()).isCloseTo(60e-6, within(3 * delay.standardUncertainty()));
    assertThat(offset.standardUncertainty()).isLessThan(0.05);
    assertThat(gap.foretoldDegrees().orElseThrow().value())
        .as("late, most where it speeds up quickly at low speed")
        .isLessThan(-0.3);
    assertThat(gap.shapes().get(0).shape()).isEqualTo(GapShape.DELAY);
  }

  /** A wheel that stands 4 degrees off, and by time a further way. */
  private Alignment alignment(DoubleUnaryOperator moved) {
    SketchedEngine engine = SketchedEngine.sweep(4, 900, 4000);
    TimingInputs in = inputs(engine, new Wrong(4, 0, 15e-6), 12);
    double[] tdc = engine.passings(TOOTH1, 360);
    for (int i = 0; i < tdc.length; i++) {
      tdc[i] = engine.timeAt(engine.degreesAt(tdc[i]) + moved.applyAsDouble(tdc[i]));
    }
    List<TdcMark> marks =
        TdcMarks.read(
            LogicEdges.detect(engine.pulses(shifted(tdc, 1e-3), 1e-3, RESOLUTION)), in.timeline());
    return TimingMeasurement.measure(
            new TimingInputs(
                in.timeline(),
                in.wheel(),
                marks,
                TdcReadings.NONE,
                in.coils(),
                in.order(),
                in.commanded()))
        .alignment()
        .orElseThrow();
  }

  @Test
  void aWheelThatIsOnlyOffIsOffAllTheTime() {
    Alignment off = alignment(t -> 0);

    assertThat(off.slip()).isEmpty();
    assertThat(off.errorDegrees().orElseThrow().value()).isCloseTo(4, within(0.05));
  }

  @Test
  void aRingThatSlipsHasNoOneAngle() {
    Alignment step = alignment(t -> t < 2.2 ? 0 : -3);
    Alignment creep = alignment(t -> 3 * Math.max(0, Math.min(1, (t - 1) / 2)));

    assertThat(step.errorDegrees()).isEmpty();
    assertThat(step.slip().orElseThrow().manner()).isEqualTo(WheelSlip.Manner.STEP);
    assertThat(step.slip().orElseThrow().degrees().value()).isCloseTo(-3, within(0.1));
    assertThat(creep.errorDegrees()).isEmpty();
    assertThat(creep.slip().orElseThrow().manner()).isEqualTo(WheelSlip.Manner.CREEP);
    assertThat(creep.slip().orElseThrow().degrees().value()).isCloseTo(3, within(0.2));
  }

  /** There compressions move the angle between teeth more than any delay does. */
  @Test
  void theStarterAloneShowsNoDelay() {
    SketchedEngine cranked = SketchedEngine.sweep(6, 130, 280);
    Timing t = TimingMeasurement.measure(inputs(cranked, new Wrong(0, 0, 15e-6), 10));
    assertThat(t.gap().orElseThrow().delaySeconds()).isEmpty();
  }

  @Test
  void oneSpeedShowsNoDelay() {
    Timing timing =
        TimingMeasurement.measure(
            inputs(SketchedEngine.steady(3, 900), new Wrong(1, 50e-6, 15e-6), 10));

    assertThat(timing.gap().orElseThrow().delaySeconds()).isEmpty();
    assertThat(timing.gap().orElseThrow().verdict()).isEqualTo(GapFit.Verdict.CANNOT_TELL);
    assertThat(timing.gap().orElseThrow().offsetDegrees().value())
        .isCloseTo(1 - 6 * 900 * 50e-6, within(0.06));
    assertThat(timing.alignment().orElseThrow().lag().knownFrom())
        .isEqualTo(SensorLag.KnownFrom.USUAL_FOR_SENSOR);
  }

  @Test
  void theMoveOfTheSensorFollowsTheError() {
    Timing timing =
        TimingMeasurement.measure(
            inputs(SketchedEngine.sweep(3, 900, 4000), new Wrong(2, 0, 15e-6), 10));

    Alignment a = timing.alignment().orElseThrow();
    assertThat(a.sensorMoveMillimetres().orElseThrow().value())
        .isCloseTo(a.errorDegrees().orElseThrow().value() * 1.3090, within(1e-3));
  }

  @Test
  void withoutAMarkAdvanceIsAgainstTheNominalSetting() {
    TimingInputs in = inputs(SketchedEngine.sweep(3, 900, 4000), new Wrong(0, 0, 0), 10);
    Timing timing = TimingMeasurement.measure(withoutMarks(in, TdcReadings.NONE));

    assertThat(timing.reference()).isEqualTo(Timing.Reference.NOMINAL);
    assertThat(timing.alignment()).isEmpty();
    assertThat(timing.gap().orElseThrow().offsetDegrees().value()).isCloseTo(0, within(0.05));
  }

  private static TimingInputs withoutMarks(TimingInputs in, TdcReadings readings) {
    return new TimingInputs(
        in.timeline(), in.wheel(), List.of(), readings, in.coils(), in.order(), in.commanded());
  }

  /** Touches at 21.4 and 18.6 by a pointer that reads 1.4 too much, and tooth 1 at 91.4 by it. */
  private static TdcReadings stop() {
    return new TdcReadings(
        List.of(new PistonStop(21.4, 18.6, 0.5)), List.of(91.4), Optional.empty(), 0.5);
  }

  /** What an exact eye reads by a light that is 30 microseconds late, by the same pointer. */
  private static TdcReadings light(Wrong wrong, double commanded, double... speeds) {
    List<StrobeWorksheet.Reading> seen =
        Arrays.stream(speeds)
            .mapToObj(
                n ->
                    new StrobeWorksheet.Reading(
                        n,
                        commanded
                            + wrong.alignmentDegrees()
                            + 1.4
                            - 6 * n * (wrong.delaySeconds() + 30e-6),
                        commanded))
            .toList();
    return new TdcReadings(
        stop().stops(),
        List.of(),
        Optional.of(new TdcReadings.Light(Path.of("light.csv"), seen)),
        0.5);
  }

  @Test
  void aPistonStopTellsTheWheelsAngle() {
    Wrong wrong = new Wrong(4, 60e-6, 15e-6);
    Timing timing =
        TimingMeasurement.measure(
            withoutMarks(inputs(SketchedEngine.sweep(4, 900, 5000), wrong, 12), stop()));

    Alignment a = timing.alignment().orElseThrow();
    assertThat(a.source()).isEqualTo(TdcSource.PISTON_STOP);
    assertThat(a.tooth1BtdcDegrees().orElseThrow().value()).isCloseTo(90, within(1e-9));
    assertThat(a.errorDegrees().orElseThrow().value()).isCloseTo(4, within(1e-9));
    assertThat(a.errorDegrees().orElseThrow().standardUncertainty())
        .as("two touches' mean, the reading at tooth 1, and its centring")
        .isCloseTo(Math.sqrt(0.125 + 0.25 + 0.25), within(1e-9));
    assertThat(timing.reference()).isEqualTo(Timing.Reference.MEASURED);
    GapFit gap = timing.gap().orElseThrow();
    assertThat(gap.offsetDegrees().value()).isCloseTo(4, within(0.2));
    assertThat(gap.offsetDegrees().standardUncertainty()).isBetween(0.79, 0.81);
    assertThat(gap.delaySeconds().orElseThrow().value()).isCloseTo(60e-6, within(10e-6));
  }

  /** A controller that fires 2 degrees late by itself: the light sees 4 - 2, the wheel is 4 off. */
  @Test
  void aLightTellsTheWheelsAngleOnceTheControllersPartIsTakenOff() {
    SketchedEngine engine = SketchedEngine.sweep(4, 900, 5000);
    Wrong wheel = new Wrong(4, 60e-6, 15e-6);
    Wrong seen = new Wrong(2, 60e-6, 15e-6);
    TimingInputs in = inputs(engine, wheel, 12, c -> sparks(engine, seen, 12, c));
    TdcReadings readings = light(seen, 12, 1000, 2000, 3000, 4000);

    Timing timing = TimingMeasurement.measure(withoutMarks(in, readings));

    Alignment a = timing.alignment().orElseThrow();
    Measured error = a.errorDegrees().orElseThrow();
    assertThat(a.source()).isEqualTo(TdcSource.TIMING_LIGHT);
    assertThat(error.value()).isCloseTo(4, within(0.3));
    assertThat(error.standardUncertainty()).as("pointer, eye and light").isBetween(0.45, 0.8);
    assertThat(timing.gap().orElseThrow().offsetDegrees().value()).isCloseTo(2, within(0.4));
  }

  @Test
  void aLightAtTheOneSpeedOfTheCapture() {
    Wrong wrong = new Wrong(-3, 60e-6, 15e-6);
    TimingInputs in = inputs(SketchedEngine.steady(4, 1500), wrong, 12);

    Alignment near =
        TimingMeasurement.measure(withoutMarks(in, light(wrong, 12, 1500))).alignment().get();
    Alignment far =
        TimingMeasurement.measure(withoutMarks(in, light(wrong, 12, 4500))).alignment().get();

    Measured error = near.errorDegrees().orElseThrow();
    assertThat(error.value()).isCloseTo(-3, within(1.96 * error.standardUncertainty()));
    assertThat(error.standardUncertainty()).isBetween(0.7, 0.9);
    assertThat(far.errorDegrees().orElseThrow().standardUncertainty())
        .as("the controller's delay is open away from the capture's speed")
        .isGreaterThan(2);
  }

  @Test
  void withoutACommandedAdvanceALightSaysNothing() {
    TimingInputs in = inputs(SketchedEngine.sweep(3, 900, 4000), new Wrong(0, 0, 0), 10);
    Timing timing =
        TimingMeasurement.measure(
            new TimingInputs(
                in.timeline(),
                in.wheel(),
                List.of(),
                light(new Wrong(0, 0, 0), 10, 1000, 2000),
                in.coils(),
                in.order(),
                Optional.empty()));

    assertThat(timing.reference()).isEqualTo(Timing.Reference.NOMINAL);
    assertThat(timing.unused())
        .containsExactly(new TdcEvidence(TdcSource.TIMING_LIGHT, Optional.empty()));
  }

  @Test
  void theBestSourceIsUsedAndTheOthersAreTold() {
    Wrong wrong = new Wrong(4, 60e-6, 15e-6);
    TimingInputs in = inputs(SketchedEngine.sweep(4, 900, 5000), wrong, 12);
    TdcReadings light = light(wrong, 12, 1000, 2000, 3000);
    TdcReadings all = new TdcReadings(light.stops(), List.of(91.4), light.light(), 0.5);

    Timing marked =
        TimingMeasurement.measure(
            new TimingInputs(
                in.timeline(),
                in.wheel(),
                in.marks(),
                all,
                in.coils(),
                in.order(),
                in.commanded()));
    Timing read = TimingMeasurement.measure(withoutMarks(in, all));

    assertThat(marked.alignment().orElseThrow().source()).isEqualTo(TdcSource.MARK_CHANNEL);
    assertThat(marked.unused())
        .extracting(TdcEvidence::source)
        .containsExactly(TdcSource.PISTON_STOP, TdcSource.TIMING_LIGHT);
    assertThat(marked.unused())
        .allSatisfy(
            u -> assertThat(u.tooth1BtdcDegrees().orElseThrow().value()).isCloseTo(90, within(1.)));
    assertThat(read.alignment().orElseThrow().source()).isEqualTo(TdcSource.PISTON_STOP);
    assertThat(read.unused())
        .extracting(TdcEvidence::source)
        .containsExactly(TdcSource.TIMING_LIGHT);
  }

  private static double[] uncertain(int teeth, double degrees) {
    double[] u = new double[teeth];
    Arrays.fill(u, degrees);
    return u;
  }
}
