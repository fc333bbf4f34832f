package toothmark.ignition;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.List;
import java.util.stream.DoubleStream;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import toothmark.rotation.AngleTimeline;

class CoilReaderTest {

  private static final FiringOrder FOUR = FiringOrder.even(List.of(1, 3, 4, 2));
  private static final Coil ONE_AND_FOUR = new Coil("coil 1", List.of(1, 4), PickUp.LOGIC);
  private static final Coil TWO_AND_THREE = new Coil("coil 2", List.of(3, 2), PickUp.LOGIC);
  private static final double DWELL = 3e-3;

  private final SketchedEngine engine = SketchedEngine.sweep(2, 900, 4000);

  private List<CoilTrack> read(CoilChannel... channels) {
    return CoilReader.read(List.of(channels), engine.timeline(10, 0), FOUR);
  }

  private CoilChannel channel(Coil coil, double[] sparks) {
    return new CoilChannel(coil, engine.pulses(sparks, DWELL, 1e-6));
  }

  @Test
  void findsEachSparkWithItsDwellAndPlace() {
    double[] sparks = engine.passings(80, 360);

    CoilTrack track = read(channel(ONE_AND_FOUR, sparks)).get(0);

    assertThat(track.sparks()).hasSize(sparks.length);
    Spark third = track.sparks().get(2);
    assertThat(third.timeSeconds()).isCloseTo(sparks[2], within(0.51e-6));
    assertThat(third.uncertaintySeconds()).isCloseTo(1e-6 / Math.sqrt(12), within(1e-12));
    assertThat(third.crank().orElseThrow().degreesAfterTooth1()).isCloseTo(800, within(0.02));
    assertThat(third.crank().orElseThrow().rpm()).isCloseTo(engine.rpmAt(sparks[2]), within(1.0));
    assertThat(track.firesEveryDegrees()).isEqualTo(360);
    assertThat(track.absent()).isEmpty();
    assertThat(track.dwell().orElseThrow().meanSeconds()).isCloseTo(DWELL, within(1e-6));
    assertThat(track.chargingLevel()).isEqualTo(ChargingLevel.HIGH);
  }

  @Test
  void placesAbsentSparksInsideAndAtTheEndOfWhatTheOtherCoilFired() {
    double[] all = engine.passings(80, 360);
    double[] kept =
        IntStream.range(0, all.length - 2)
            .filter(i -> i != 5 && i != 6 && i != 20)
            .mapToDouble(i -> all[i])
            .toArray();

    List<CoilTrack> tracks =
        read(channel(ONE_AND_FOUR, kept), channel(TWO_AND_THREE, engine.passings(260, 360)));

    double[] lost = {all[5], all[6], all[20], all[all.length - 2]};
    assertThat(tracks.get(0).absent().stream().mapToDouble(AbsentSpark::timeSeconds).toArray())
        .as("the last one lies beyond the last spark of any coil, and may just not be recorded")
        .containsExactly(lost, within(1e-4));
    assertThat(tracks.get(1).absent()).isEmpty();
  }

  @Test
  void aSilentCoilWasDueWhereTheFiringOrderPutsIt() {
    CoilChannel silent = new CoilChannel(TWO_AND_THREE, engine.pulses(new double[0], DWELL, 1e-6));

    List<CoilTrack> tracks = read(channel(ONE_AND_FOUR, engine.passings(80, 360)), silent);

    assertThat(tracks.get(1).sparks()).isEmpty();
    assertThat(tracks.get(1).absent()).isNotEmpty();
    assertThat(tracks.get(1).absent())
        .allSatisfy(
            a -> assertThat(a.crank().degreesAfterTooth1() % 360).isCloseTo(260, within(0.1)));
  }

  @Test
  void aCoilOfOneCylinderIsDueEachSecondTurnUnlessItFiresOnTheExhaustStrokeToo() {
    Coil first = new Coil("coil 1", List.of(1), PickUp.LOGIC);

    assertThat(read(channel(first, engine.passings(80, 720))).get(0).firesEveryDegrees())
        .isEqualTo(720);
    assertThat(read(channel(first, engine.passings(80, 720))).get(0).absent()).isEmpty();
    assertThat(read(channel(first, engine.passings(80, 360))).get(0).firesEveryDegrees())
        .isEqualTo(360);
  }

  @Test
  void anUnevenEngineIsDueAtItsOwnIntervals() {
    FiringOrder order = FiringOrder.of(List.of(1, 2), 0, 315);
    Coil both = new Coil("coil", List.of(1, 2), PickUp.LOGIC);
    double[] one = engine.passings(80, 720);
    double[] two = engine.passings(80 + 315, 720);
    double[] sparks =
        DoubleStream.concat(Arrays.stream(one), Arrays.stream(two)).sorted().toArray();
    double lost = sparks[7];
    double[] kept = Arrays.stream(sparks).filter(t -> t != lost).toArray();

    CoilTrack track =
        CoilReader.read(
                List.of(new CoilChannel(both, engine.pulses(kept, DWELL, 1e-6))),
                engine.timeline(10, 0),
                order)
            .get(0);

    assertThat(track.absent()).hasSize(1);
    assertThat(track.absent().get(0).timeSeconds()).isCloseTo(lost, within(2e-4));
  }

  @Test
  void aSecondSparkCloseBehindIsARepeatedOne() {
    double[] due = engine.passings(80, 360);
    double[] sparks =
        Arrays.stream(due).flatMap(t -> Arrays.stream(new double[] {t, t + 4e-3})).toArray();

    CoilTrack track = read(new CoilChannel(ONE_AND_FOUR, engine.pulses(sparks, 2e-3, 1e-6))).get(0);

    assertThat(track.repeated()).isEqualTo(due.length);
    assertThat(track.absent()).isEmpty();
  }

  @Test
  void anInvertedDriveIsSeenToChargeWhileLow() {
    double[] sparks = engine.passings(80, 360);

    CoilTrack track =
        read(new CoilChannel(ONE_AND_FOUR, engine.pulses(sparks, DWELL, 1e-6, 0))).get(0);

    assertThat(track.chargingLevel()).isEqualTo(ChargingLevel.LOW);
    assertThat(track.dwell().orElseThrow().meanSeconds()).isCloseTo(DWELL, within(1e-6));
    assertThat(track.sparks().get(3).timeSeconds()).isCloseTo(sparks[3], within(1e-6));
  }

  @Test
  void aSparkBeforeTheCrankIsDecodedHasNoPlace() {
    double[] sparks = engine.passings(80, 360);

    CoilTrack track =
        CoilReader.read(
                List.of(channel(ONE_AND_FOUR, sparks)),
                new AngleTimeline(
                    new double[] {engine.timeAt(3600), engine.timeAt(3610)},
                    new double[] {3600, 3610},
                    new double[] {6000, 6000}),
                FOUR)
            .get(0);

    assertThat(track.sparks()).hasSize(sparks.length);
    assertThat(track.sparks()).allMatch(s -> s.crank().isEmpty());
  }
}
