package toothmark.examination;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.function.DoubleUnaryOperator;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import toothmark.capture.Capture;
import toothmark.capture.Channel;
import toothmark.capture.Reading;
import toothmark.capture.SampledSignal;
import toothmark.ignition.PickUp;
import toothmark.ignition.SketchedEngine;

/** What channels are where the job sheet names none, on engines that are known exactly. */
class IgnitionChannelsTest {

  private static final double INTERVAL = 20e-6;
  private static final double DWELL = 3e-3;
  private static final double ADVANCE = 10;

  private SketchedEngine engine = SketchedEngine.sweep(3, 900, 4600);
  private final Map<String, SampledSignal> channels = new TreeMap<>();

  /** A channel that stands high from each instant until another. */
  private void channel(String name, double[] starts, DoubleUnaryOperator endOf) {
    double[] v = new double[(int) (engine.seconds() / INTERVAL)];
    for (double start : starts) {
      int from = (int) Math.ceil(start / INTERVAL);
      fill(v, from, (int) Math.ceil(endOf.applyAsDouble(start) / INTERVAL), 5);
    }
    channels.put(name, SampledSignal.of(0, INTERVAL, v));
  }

  /** A sensor of this lag over metal three degrees wide, every turn. */
  private void mark(String name, double lag) {
    channel(
        name,
        delayed(engine.passings(90, 360), lag),
        t -> engine.timeAt(engine.degreesAt(t - lag) + 3) + lag);
  }

  private static double[] delayed(double[] times, double by) {
    return Arrays.stream(times).map(t -> t + by).toArray();
  }

  private void coil(String name, double[] sparks) {
    channel(name, delayed(sparks, -DWELL), t -> t + DWELL);
  }

  private double[] sparks(double topDeadCentre, double every) {
    return engine.passings(topDeadCentre - ADVANCE, every);
  }

  private IgnitionChannels find() throws JobSheetException {
    Channel crank = new Channel("A", "V", SampledSignal.of(0, INTERVAL, 0, 1, 0));
    List<Channel> all = new ArrayList<>(List.of(crank));
    channels.forEach((name, signal) -> all.add(new Channel(name, "V", signal)));
    Capture capture = new Capture("capture.csv", all, new Reading("text", List.of(), List.of()));
    return IgnitionChannels.find(
        capture,
        JobSheet.empty(),
        crank,
        FirstLooks.start(capture, JobSheet.empty(), crank),
        Optional.of(engine.timeline(10, 0)));
  }

  private static List<List<Integer>> cylinders(IgnitionChannels found) {
    return found.coils().stream().map(c -> c.coil().cylinders()).toList();
  }

  private static List<String> names(IgnitionChannels found) {
    return found.coils().stream().map(JobSheet.CoilEntry::channel).toList();
  }

  @Test
  void aMarkThatLagsIsToldFromCoilsOverASweep() throws JobSheetException {
    coil("B", sparks(90, 360));
    coil("C", sparks(270, 360));
    mark("D", 80e-6);
    IgnitionChannels found = find();
    assertThat(found.tdc()).map(Channel::name).hasValue("D");
    assertThat(names(found)).containsExactly("B", "C");
    assertThat(cylinders(found)).containsExactly(List.of(1, 4), List.of(3, 2));
  }

  @Test
  void coilsThatAllSwitchAlikeAtOneSpeedHaveNoMarkAmongThem() throws JobSheetException {
    engine = SketchedEngine.steady(2, 900);
    coil("B", sparks(90, 360));
    coil("C", sparks(270, 360));
    IgnitionChannels found = find();
    assertThat(found.tdc()).isEmpty();
    assertThat(names(found)).containsExactlyInAnyOrder("B", "C");
  }

  @Test
  void atOneSpeedTheMarkIsTheBriefOne() throws JobSheetException {
    engine = SketchedEngine.steady(2, 900);
    coil("B", sparks(90, 360));
    mark("C", 0);
    assertThat(find().tdc()).map(Channel::name).hasValue("C");
  }

  /** Half a turn of the camshaft takes 67 ms at 900 rev/min: no coil is charged for so long. */
  @Test
  void aCamshaftsSensorIsNeitherCoilNorMakesAMarkOfOne() throws JobSheetException {
    engine = SketchedEngine.steady(2, 900);
    channel("A2", engine.passings(200, 720), t -> engine.timeAt(engine.degreesAt(t) + 360));
    coil("B", sparks(90, 720));
    IgnitionChannels found = find();
    assertThat(found.tdc()).isEmpty();
    assertThat(names(found)).containsExactly("B");
  }

  @Test
  void aCamshaftsSensorIsKnownByItsName() throws JobSheetException {
    channel("CAM 1", engine.passings(200, 720), t -> engine.timeAt(engine.degreesAt(t) + 30));
    coil("B", sparks(90, 360));
    assertThat(names(find())).containsExactly("B");
  }

  @Test
  void aLimiterThatLeavesSparksOutMakesNoCoilOfOneCylinder() throws JobSheetException {
    double[] all = sparks(90, 360);
    coil(
        "B",
        IntStream.range(0, all.length).filter(i -> i % 5 < 2).mapToDouble(i -> all[i]).toArray());
    assertThat(cylinders(find())).containsExactly(List.of(1, 2));
  }

  @Test
  void oneCoilOfFourCylindersFiresTwiceATurn() throws JobSheetException {
    coil("B", sparks(90, 180));
    IgnitionChannels found = find();
    assertThat(cylinders(found)).containsExactly(List.of(1, 3, 4, 2));
    assertThat(found.assumption())
        .contains("\"B\" was taken for the drive of coil 1, which fires 4 times in two turns.");
  }

  /** Rest at the battery's 13.8 V, near ground while charging, then a flyback of 400 V and 40 V. */
  @Test
  void aCoilsSwitchedTerminalIsKnownByItsFlyback() throws JobSheetException {
    double[] sparks = sparks(90, 360);
    double[] v = new double[(int) (engine.seconds() / INTERVAL)];
    Arrays.fill(v, 13.8);
    for (double spark : sparks) {
      int at = (int) Math.ceil(spark / INTERVAL);
      fill(v, at - (int) (DWELL / INTERVAL), at, 0.4);
      fill(v, at, at + 1, 400);
      fill(v, at + 1, at + 60, 40);
    }
    channels.put("B", SampledSignal.of(0, INTERVAL, v));
    assertThat(find().coils())
        .extracting(c -> c.coil().pickUp())
        .containsExactly(PickUp.PRIMARY_VOLTAGE);
  }

  private static void fill(double[] v, int from, int to, double value) {
    Arrays.fill(
        v, Math.max(0, Math.min(from, v.length)), Math.max(0, Math.min(to, v.length)), value);
  }
}
