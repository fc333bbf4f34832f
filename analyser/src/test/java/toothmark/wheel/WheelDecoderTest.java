package toothmark.wheel;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import toothmark.edges.EdgeTrain;

/** Law: decoding what was rendered from teeth gives those teeth, whatever was done to the edges. */
class WheelDecoderTest {

  @ParameterizedTest
  @ValueSource(strings = {"36-1", "60-2", "24-1", "12-1", "4-1", "36-2-2-2", "12+1"})
  void namesEveryToothOfAHealthyWheel(String wheel) {
    EdgeScenario.Made made =
        EdgeScenario.of(wheel).rpm(t -> 800 + 300 * t).ripple(0.04, 2).make(11);
    assertThat(wronglyNamed(made, wheel)).isZero();
  }

  /** Two compressions a turn swing the speed by half of it and more (common practice). */
  @ParameterizedTest
  @ValueSource(doubles = {0.2, 0.25, 0.3})
  void namesEveryToothOfACoarseWheelOnTheStarter(double ripple) {
    for (double from : new double[] {20, 123, 200, 275}) {
      EdgeScenario cranked = EdgeScenario.of("12-1").rpm(t -> 210 - 3 * t).seconds(4).from(from);
      EdgeScenario.Made made = cranked.ripple(ripple, 2).jitter(0.05).make(6);
      assertThat(wronglyNamed(made, "12-1")).as("from %s", from).isZero();
    }
  }

  @Test
  void namesTeethAmongThirtyPercentStrays() {
    EdgeScenario.Made made =
        EdgeScenario.of("36-1").rpm(t -> 900 + 500 * t).ripple(0.03, 2).strays(0.3).make(3);
    assertThat(wronglyNamed(made, "36-1")).isZero();
  }

  /** The gap is where nothing comes, and not at the tooth whose edge comes at the wrong place. */
  @Test
  void keepsTheGapApartFromAToothFarOutOfPlace() {
    EdgeScenario.Made made =
        EdgeScenario.of("24-1").rpm(4700).ripple(0.002, 4).bent(20, 4.4).seconds(1.4).make(8);
    assertThat(wronglyNamed(made, "24-1")).isZero();
  }

  /** A broken tooth of such a wheel is a second gap; tooth 8 of one way is tooth 4 of the other. */
  @Test
  void readsABrokenToothAndTheGapEitherWay() {
    WheelPattern wheel = WheelPattern.parse("12-1");
    EdgeTrain train = without(8, EdgeScenario.of(wheel).rpm(1200).ripple(0.02, 2).make(4));
    WheelDecoder decoder = WheelDecoder.withDefaults();
    int one = missing(decoder.decode(train, wheel));
    int other = missing(decoder.decodeOtherwise(train, wheel).orElseThrow());
    assertThat(List.of(one, other)).containsExactlyInAnyOrder(8, 4);
  }

  /** Then both are tooth 6, and only a turn by half a turn tells the ways apart. */
  @Test
  void readsABrokenToothOppositeTheGapEitherWay() {
    WheelPattern wheel = WheelPattern.parse("12-1");
    EdgeTrain train = without(6, EdgeScenario.of(wheel).rpm(1200).ripple(0.02, 2).make(4));
    WheelDecoder decoder = WheelDecoder.withDefaults();
    DecodedWheel one = decoder.decode(train, wheel);
    DecodedWheel other = decoder.decodeOtherwise(train, wheel).orElseThrow();
    assertThat(missing(one)).isEqualTo(6);
    assertThat(missing(other)).isEqualTo(6);
    ToothEvents events = one.events();
    for (int i = 0; i < events.size(); i++) {
      if (events.kind(i) == ToothKind.SEEN) {
        int tooth = toothAt(other.events(), events.time(i));
        assertThat(Math.abs(tooth - events.tooth(i))).isEqualTo(6);
      }
    }
  }

  private static int toothAt(ToothEvents events, double time) {
    int i = 0;
    while (events.time(i) < time) {
      i++;
    }
    return events.tooth(i);
  }

  @Test
  void readsAWheelWithoutABrokenToothOneWayOnly() {
    WheelPattern wheel = WheelPattern.parse("12-1");
    EdgeTrain sound = EdgeScenario.of(wheel).rpm(1200).make(4).train();
    assertThat(WheelDecoder.withDefaults().decodeOtherwise(sound, wheel)).isEmpty();
  }

  private static int missing(DecodedWheel decoded) {
    ToothEvents events = decoded.events();
    int[] missing =
        java.util.stream.IntStream.range(0, events.size())
            .filter(i -> events.kind(i) == ToothKind.MISSING)
            .map(events::tooth)
            .distinct()
            .toArray();
    assertThat(missing).hasSize(1);
    return missing[0];
  }

  /** The train of a wheel one tooth of which gives no edge. */
  static EdgeTrain without(int tooth, EdgeScenario.Made made) {
    return EdgeScenario.train(
        made.truth().stream()
            .filter(t -> t.tooth() != tooth)
            .map(t -> new double[] {t.time(), 1})
            .toList());
  }

  @Test
  void doesNotDependOnWhenOrHowFast() {
    EdgeScenario.Made made = EdgeScenario.of("36-1").rpm(900).strays(0.05).lost(0.03).make(5);
    ToothEvents plain = decode(made.train(), "36-1");
    ToothEvents moved = decode(moved(made.train(), 1, -3.5), "36-1");
    ToothEvents slowed = decode(moved(made.train(), 4, 0), "36-1");
    assertThat(labels(moved)).isEqualTo(labels(plain));
    assertThat(labels(slowed)).isEqualTo(labels(plain));
  }

  private static EdgeTrain moved(EdgeTrain train, double scale, double shift) {
    int n = train.size();
    double[] t = new double[n];
    double[] u = new double[n];
    double[] s = new double[n];
    double[] level = new double[n];
    for (int i = 0; i < n; i++) {
      t[i] = train.time(i) * scale + shift;
      u[i] = train.uncertainty(i) * scale;
      s[i] = train.strength(i);
      level[i] = train.level(i);
    }
    return new EdgeTrain(t, u, s, level);
  }

  private static List<String> labels(ToothEvents events) {
    return java.util.stream.IntStream.range(0, events.size())
        .mapToObj(i -> events.kind(i) + " " + events.tooth(i) + " " + events.revolution(i))
        .toList();
  }

  private static ToothEvents decode(EdgeTrain train, String wheel) {
    return WheelDecoder.withDefaults().decode(train, WheelPattern.parse(wheel)).events();
  }

  /**
   * Teeth seen, from one and a half turns on, that were not named as what they are within a tenth
   * of a pitch: a stray closer than that to its tooth cannot be told from it.
   */
  private static int wronglyNamed(EdgeScenario.Made made, String wheel) {
    ToothEvents events = decode(made.train(), wheel);
    int teeth = WheelPattern.parse(wheel).teeth();
    List<EdgeScenario.Truth> truth = made.truth();
    int wrong = 0;
    for (int i = 3 * teeth / 2; i < truth.size(); i++) {
      EdgeScenario.Truth t = truth.get(i);
      double near = 0.1 * (t.time() - truth.get(i - 1).time());
      wrong += t.seen() && !named(events, t, near) ? 1 : 0;
    }
    return wrong;
  }

  private static boolean named(ToothEvents events, EdgeScenario.Truth t, double near) {
    for (int k = 0; k < events.size(); k++) {
      if (events.tooth(k) == t.tooth() && Math.abs(events.time(k) - t.time()) < near) {
        return true;
      }
    }
    return false;
  }
}
