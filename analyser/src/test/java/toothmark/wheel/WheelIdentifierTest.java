package toothmark.wheel;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import toothmark.edges.CrankEdges;
import toothmark.edges.EdgeTrain;
import toothmark.edges.SensorKind;
import toothmark.edges.SignalQuality;

class WheelIdentifierTest {

  private static final EdgeTrain NONE =
      new EdgeTrain(new double[0], new double[0], new double[0], new double[0]);

  @ParameterizedTest
  @ValueSource(
      strings = {"36-1", "60-2", "24-1", "12-1", "4-1", "36-2-2-2", "12+1", "90-1", "120-2"})
  void namesTheWheel(String wheel) {
    EdgeTrain train =
        EdgeScenario.of(wheel).rpm(t -> 900 + 400 * t).ripple(0.03, 2).make(7).train();
    WheelSearch search = WheelIdentifier.withDefaults().identify(listed(train));
    assertThat(search.found().orElseThrow().pattern()).hasToString(wheel);
    assertThat(search.found().orElseThrow().confidence()).isGreaterThan(0.95);
  }

  /** Its edges are no strays: they come at one place in every turn, and are all of one strength. */
  @ParameterizedTest
  @ValueSource(strings = {"36-1", "60-2", "24-1"})
  void takesAWeakToothOutOfPlaceForATooth(String wheel) {
    EdgeScenario chipped = EdgeScenario.of(wheel).bent(6, 0.9).bentStrength(0.25);
    EdgeTrain train = chipped.rpm(t -> 900 + 800 * t).ripple(0.02, 2).make(3).train();
    WheelSearch search = WheelIdentifier.withDefaults().identify(listed(train));
    assertThat(search.found().orElseThrow().pattern()).hasToString(wheel);
    DecodedWheel decoded =
        WheelDecoder.withDefaults().decode(train, search.found().orElseThrow().pattern());
    assertThat(decoded.events().count(ToothKind.STRAY)).isZero();
    assertThat(decoded.events().count(ToothKind.MISSING)).isZero();
  }

  /** Offset in pitches: the slot before or behind the tooth must not be taken for the gap. */
  @ParameterizedTest
  @CsvSource({
    "36-1, 0.12",
    "36-1, -0.19",
    "36-1, 0.25",
    "36-1, -0.32",
    "24-1, 0.19",
    "24-1, -0.19",
    "60-2, 0.19",
    "60-2, -0.25"
  })
  void namesTheWheelWhicheverToothIsBent(String wheel, double pitches) {
    WheelPattern pattern = WheelPattern.parse(wheel);
    for (int tooth = 3; tooth < pattern.teeth() - 1; tooth += 5) {
      EdgeScenario bent =
          EdgeScenario.of(pattern)
              .rpm(t -> 900 + 900 * t)
              .firing(0.02, 2)
              .bent(tooth, pitches * pattern.pitchDegrees());
      EdgeTrain train = bent.make(3 + tooth).train();
      WheelSearch search = WheelIdentifier.withDefaults().identify(listed(train));
      assertThat(search.found().orElseThrow().pattern()).as("tooth %d", tooth).isEqualTo(pattern);
    }
  }

  /**
   * As of a wave so smooth that each tooth's field reaches its neighbours: 2 % of a pitch, many
   * times what else the edges scatter by.
   */
  @ParameterizedTest
  @ValueSource(strings = {"36-1", "60-2", "24-1", "36-2-2-2"})
  void takesTeethThatTheGapSetsOutOfPlaceForTeeth(String wheel) {
    double pitch = WheelPattern.parse(wheel).pitchDegrees();
    for (double rpm : new double[] {850, 900, 2000}) {
      EdgeScenario smooth = EdgeScenario.of(wheel).rpm(rpm).firing(0.02, 2);
      EdgeTrain train =
          smooth.toothError(0).jitter(0.003).besideGaps(0.019 * pitch).make(4).train();
      WheelSearch search = WheelIdentifier.withDefaults().identify(listed(train));
      assertThat(search.found().orElseThrow().pattern()).as("%s", rpm).hasToString(wheel);
    }
  }

  /** 36-2-1 is a wheel in use, but not with its second gap just anywhere. */
  @ParameterizedTest
  @ValueSource(doubles = {200, 900})
  void takesASecondGapForABrokenTooth(double rpm) {
    EdgeScenario.Made made = EdgeScenario.of("36-2").rpm(rpm).ripple(0.05, 2).make(5);
    EdgeTrain train = WheelDecoderTest.without(7, made);
    WheelSearch search = WheelIdentifier.withDefaults().identify(listed(train));
    assertThat(search.found().orElseThrow().pattern()).hasToString("36-2");
  }

  @Test
  void knowsAWheelOfTwoGapsAsItIsLaidOutOrTold() {
    WheelPattern usual = WheelPattern.parse("36-2-1");
    WheelPattern other = WheelPattern.ofRuns(36, new int[] {26, 7}, new int[] {2, 1});
    EdgeTrain usualTrain = EdgeScenario.of(usual).ripple(0.03, 2).make(7).train();
    EdgeTrain otherTrain = EdgeScenario.of(other).ripple(0.03, 2).make(7).train();
    WheelIdentifier told = WheelIdentifier.withDefaults().withStated(usual);
    assertThat(WheelIdentifier.withDefaults().identify(listed(usualTrain)).found())
        .hasValueSatisfying(w -> assertThat(w.pattern()).isEqualTo(usual));
    assertThat(told.identify(listed(otherTrain)).found())
        .hasValueSatisfying(w -> assertThat(w.pattern()).isEqualTo(other));
  }

  /**
   * On wheels that are not in wide use; over so few turns the gaps could be teeth lost by chance.
   */
  @ParameterizedTest
  @CsvSource({
    "40, 26 2 9, 1 1 1, 13.9", "34, 13 11 7, 1 1 1, 12.7", "61, 25 20 13, 1 1 1, 6.3",
    "58, 36 20, 1 1, 2.2", "50, 29 17, 2 2, 2.2", "22, 9 7 3, 1 1 1, 2.4"
  })
  void takesAGapOfEveryTurnForAGap(int slots, String runs, String gaps, double turns) {
    WheelPattern wheel = WheelPattern.ofRuns(slots, ints(runs), ints(gaps));
    for (int seed = 1; seed <= 3; seed++) {
      EdgeScenario made = EdgeScenario.of(wheel).toothError(0.04).ripple(0.02, 2).rpm(1500);
      EdgeTrain train = made.seconds(turns / 25).make(seed).train();
      WheelSearch search = WheelIdentifier.withDefaults().identify(listed(train));
      assertThat(search.found().orElseThrow().pattern()).as("seed %d", seed).isEqualTo(wheel);
    }
  }

  private static int[] ints(String words) {
    return Arrays.stream(words.split(" ")).mapToInt(Integer::parseInt).toArray();
  }

  /** A broken tooth of a wheel in wide use is as likely as a wheel with one gap more. */
  @Test
  void isNotSureWhetherASecondGapIsABrokenTooth() {
    WheelPattern wheel = WheelPattern.ofRuns(36, new int[] {20, 14}, new int[] {1, 1});
    EdgeTrain train = EdgeScenario.of(wheel).ripple(0.02, 2).rpm(1000).make(4).train();
    WheelIdentification found =
        WheelIdentifier.withDefaults().identify(listed(train)).found().orElseThrow();
    assertThat(found.confidence()).isBetween(0.5, 0.9);
    List<WheelPattern> both = List.of(found.pattern(), found.alternatives().get(0).pattern());
    assertThat(both).containsExactlyInAnyOrder(wheel, WheelPattern.of(36, 1));
  }

  /**
   * The speed jumps by a third within an interval: calm teeth before and after tell nothing of it.
   */
  @ParameterizedTest
  @CsvSource({"6+1, 0.07", "8-1, 0.06", "12-2, 0.065"})
  void followsTheFirstFire(String wheel, double fires) {
    EdgeScenario made =
        EdgeScenario.of(wheel).rpm(t -> t < fires ? 590 : 780 + 7000 * (t - fires)).seconds(0.2);
    WheelSearch search = WheelIdentifier.withDefaults().identify(listed(made.make(3).train()));
    assertThat(search.found().orElseThrow().pattern()).hasToString(wheel);
  }

  /**
   * A tooth of one gap more, broken off, and a gap more are the same edges: what is usual decides.
   */
  @Test
  void prefersAThirdGapToABrokenToothOfAWheelThatNobodyUses() {
    WheelPattern wheel = WheelPattern.ofRuns(36, new int[] {22, 9, 2}, new int[] {1, 1, 1});
    EdgeScenario made = EdgeScenario.of(wheel).ripple(0.01, 2).rpm(4000).besideGaps(0.1);
    for (int seed = 1; seed <= 4; seed++) {
      EdgeTrain train = made.seconds(0.11).make(seed).train();
      WheelSearch search = WheelIdentifier.withDefaults().identify(listed(train));
      assertThat(search.found().orElseThrow().pattern()).as("seed %d", seed).isEqualTo(wheel);
    }
  }

  /** The last passing may lie at the record's end, so that nothing comes half a pitch after it. */
  @ParameterizedTest
  @CsvSource({"10+1, 2.2, 90", "15+1, 2.83, 60", "9+1, 2.11, 210"})
  void findsAnExtraToothWithinTwoTurns(String wheel, double turns, double from) {
    EdgeScenario made = EdgeScenario.of(wheel).rpm(3000).ripple(0.005, 2).from(from);
    EdgeTrain train = made.seconds(turns / 50).make(2).train();
    WheelSearch search = WheelIdentifier.withDefaults().identify(listed(train));
    assertThat(search.found().orElseThrow().pattern()).hasToString(wheel);
  }

  /** Two turns of a few teeth: each crossing's own doubt differs by chance. */
  @Test
  void takesTheMiddleOfAWideSlotForNoTooth() {
    double[] teeth = {0.0100, 0.0300, 0.0500, 0.0900, 0.1100, 0.1300, 0.1700, 0.1900};
    double[] slots = {0.0198, 0.0405, 0.0697, 0.1003, 0.1196, 0.1502, 0.1799};
    EdgeTrain sharp = edges(teeth, 1e-6, 1e-8, 1e-6, 2e-8);
    EdgeTrain flat = edges(slots, 1.1e-3);
    CrankEdges edges =
        new CrankEdges(
            SensorKind.VARIABLE_RELUCTANCE, flat, sharp, new SignalQuality(0, 0, 1, 0, 0, 0, 0));
    assertThat(WheelIdentifier.withDefaults().identify(edges).found())
        .hasValueSatisfying(
            w -> {
              assertThat(w.pattern()).hasToString("4-1");
              assertThat(w.orientation()).isEqualTo(Orientation.REVERSED);
            });
  }

  /** Edges of one strength and level, their uncertainties in turn. */
  private static EdgeTrain edges(double[] times, double... uncertainties) {
    double[] u = new double[times.length];
    double[] ones = new double[times.length];
    Arrays.fill(ones, 1);
    Arrays.setAll(u, i -> uncertainties[i % uncertainties.length]);
    return new EdgeTrain(times, u, ones, ones);
  }

  @Test
  void saysHowManyEdgesAreTooFew() {
    WheelSearch search = WheelIdentifier.withDefaults().identify(listed(NONE));
    assertThat(search.found()).isEmpty();
    assertThat(search.reason())
        .isEqualTo("The crank channel has 0 edges of one direction; a wheel needs at least 7.");
  }

  static CrankEdges listed(EdgeTrain train) {
    return new CrankEdges(
        SensorKind.EDGES_ONLY, train, NONE, new SignalQuality(0, 0, 1, 0, 0, 0, 0));
  }
}
