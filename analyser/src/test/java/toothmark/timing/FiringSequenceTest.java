package toothmark.timing;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import toothmark.ignition.Coil;
import toothmark.ignition.CoilChannel;
import toothmark.ignition.CoilReader;
import toothmark.ignition.CoilTrack;
import toothmark.ignition.FiringOrder;
import toothmark.ignition.PickUp;
import toothmark.ignition.SketchedEngine;
import toothmark.rotation.AngleTimeline;

/** Engines whose sparks are put by hand into an order. */
class FiringSequenceTest {

  private static final FiringOrder FOUR = FiringOrder.even(List.of(1, 3, 4, 2));
  private static final int CYCLES = 30;

  private final SketchedEngine engine = SketchedEngine.sweep(2.5, 900, 4000);
  private final AngleTimeline timeline = engine.timeline(10, 0);

  /** Sparks at angles; the advance grows by 25 degrees along the record, as it does with speed. */
  private double[] sparks(double... degrees) {
    return Arrays.stream(degrees)
        .map(d -> engine.timeAt(d - 25 * d / (CYCLES * 720)))
        .sorted()
        .toArray();
  }

  private FiringSequence read(FiringOrder order, List<List<Integer>> cylinders, double[]... fired) {
    List<CoilChannel> channels = new ArrayList<>();
    for (int c = 0; c < fired.length; c++) {
      Coil coil = new Coil("coil " + (c + 1), cylinders.get(c), PickUp.LOGIC);
      channels.add(new CoilChannel(coil, engine.pulses(fired[c], 2e-3, 1e-6)));
    }
    List<CoilTrack> coils = CoilReader.read(channels, timeline, order);
    return FiringSequence.of(coils, order).orElseThrow();
  }

  /** Each of four coils at its place of each cycle; some of them moved to another one's. */
  private double[] single(double place, double moved, int... cycles) {
    double[] degrees = new double[CYCLES];
    for (int k = 0; k < CYCLES; k++) {
      int cycle = k;
      boolean out = Arrays.stream(cycles).anyMatch(c -> c == cycle);
      degrees[k] = 720 * k + 200 + (out ? moved : place);
    }
    return sparks(degrees);
  }

  private static final List<List<Integer>> SINGLE =
      List.of(List.of(1), List.of(2), List.of(3), List.of(4));

  @Test
  void anOrderKeptIsKeptThroughASweepWithAMissingSpark() {
    double[] fewer = Arrays.copyOf(single(540, 0), CYCLES - 3);
    FiringSequence s = read(FOUR, SINGLE, single(0, 0), fewer, single(180, 0), single(360, 0));

    assertThat(s.out()).isEmpty();
    assertThat(s.cycles()).isEqualTo(CYCLES);
    assertThat(s.sparks()).isEqualTo(4 * CYCLES - 3);
  }

  @Test
  void coilsThatSwapInSomeCyclesAreCountedWithTheirTimes() {
    FiringSequence s =
        read(
            FOUR,
            SINGLE,
            single(0, 0),
            single(540, 180, 8, 20),
            single(180, 540, 8, 20),
            single(360, 0));

    assertThat(s.cyclesOut()).isEqualTo(2);
    assertThat(s.out()).hasSize(4);
    FiringSequence.OutOfOrder first = s.out().get(0);
    assertThat(first.coil()).isEqualTo(1);
    assertThat(first.inPlaceOf()).isEqualTo(Optional.of(2));
    assertThat(Math.abs(first.offDegrees())).isCloseTo(360, within(10.0));
    assertThat(first.timeSeconds())
        .isCloseTo(engine.timeAt((720 * 8 + 380) * (1 - 25.0 / (CYCLES * 720))), within(1e-3));
  }

  /** Swapped in every cycle, by 360 degrees: no advance shows it. */
  @Test
  void coilsSwappedForGoodAreOutInEveryCycle() {
    FiringSequence s =
        read(FOUR, SINGLE, single(0, 0), single(180, 0), single(540, 0), single(360, 0));

    assertThat(s.out()).hasSize(2 * CYCLES);
    assertThat(s.cyclesOut()).isEqualTo(CYCLES);
  }

  @Test
  void aPairThatFiresInTheOthersPlaceForATurn() {
    double[] one = new double[2 * CYCLES];
    double[] two = new double[2 * CYCLES];
    for (int k = 0; k < one.length; k++) {
      boolean out = k == 17;
      one[k] = 360 * k + 200 + (out ? 180 : 0);
      two[k] = 360 * k + 380 - (out ? 180 : 0);
    }
    FiringSequence s = read(FOUR, List.of(List.of(1, 4), List.of(3, 2)), sparks(one), sparks(two));

    assertThat(s.out()).extracting(FiringSequence.OutOfOrder::coil).containsExactly(1, 0);
    assertThat(s.cyclesOut()).isEqualTo(1);
  }

  @Test
  void anUnevenEngineHasItsOwnPlaces() {
    FiringOrder uneven = FiringOrder.of(List.of(1, 2), 0, 405);
    List<List<Integer>> twin = List.of(List.of(1), List.of(2));

    assertThat(read(uneven, twin, single(0, 0), single(405, 0)).out()).isEmpty();
    assertThat(read(uneven, twin, single(0, 0), single(405, 90, 4, 5, 6)).out()).hasSize(3);
  }
}
