package toothmark.receiver;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.function.DoubleUnaryOperator;
import org.junit.jupiter.api.Test;
import toothmark.capture.EventSignal;
import toothmark.capture.SampledSignal;
import toothmark.capture.StepSignal;
import toothmark.edges.ChannelSurvey;
import toothmark.edges.EdgeDirection;
import toothmark.edges.SensorKind;

/** Input stages on voltages written by hand. */
class InputStagesTest {

  private static final double RATE = 100_000;

  /** One lobe up and one down from each time on, of that height, 2 ms long. */
  private static DoubleUnaryOperator lobes(double[] times, double[] heights) {
    return t -> {
      for (int i = 0; i < times.length; i++) {
        double phase = (t - times[i]) / 2e-3;
        if (phase >= 0 && phase < 1) {
          return heights[i] * Math.sin(2 * Math.PI * phase);
        }
      }
      return 0;
    };
  }

  private static List<Double> hear(InputStage stage, double seconds, DoubleUnaryOperator volts) {
    List<Double> edges = new ArrayList<>();
    for (int i = 0; i < seconds * RATE; i++) {
      double t = (i + 0.25) / RATE;
      if (stage.next(t, volts.applyAsDouble(t)) == InputStage.Outcome.EDGE) {
        edges.add(stage.edgeSeconds());
      }
    }
    return edges;
  }

  private static InputStage reference() {
    return Conditioner.reference().newStage();
  }

  @Test
  void timesTheFallThroughZeroBetweenSamples() {
    List<Double> edges = hear(reference(), 0.02, lobes(new double[] {0.005}, new double[] {1}));
    assertThat(edges).hasSize(1);
    assertThat(edges.get(0)).isCloseTo(0.006, within(1e-9));
  }

  /** A third of the peak between the last two edges: MAX9924-MAX9927 data sheet, 19-4283 Rev 4. */
  @Test
  void armsAtAThirdOfTheLastPeak() {
    double[] times = {0.00, 0.01, 0.02, 0.03};
    assertThat(hear(reference(), 0.05, lobes(times, new double[] {3, 3, 1.05, 3}))).hasSize(4);
    assertThat(hear(reference(), 0.05, lobes(times, new double[] {3, 3, 0.95, 3}))).hasSize(3);
  }

  /** Before two edges are known the floor alone counts. */
  @Test
  void armsAtTheFloorBeforeThereIsAPeak() {
    double[] times = {0.00, 0.01};
    assertThat(hear(reference(), 0.05, lobes(times, new double[] {3, 0.031}))).hasSize(2);
    assertThat(hear(reference(), 0.05, lobes(times, new double[] {3, 0.029}))).hasSize(1);
  }

  /** The watchdog of 85 ms: MAX9924-MAX9927 data sheet, 19-4283 Rev 4. */
  @Test
  void fallsBackToTheFloorAfterEightyFiveMilliseconds() {
    double[] late = {0.00, 0.01, 0.0965};
    double[] early = {0.00, 0.01, 0.0935};
    double[] heights = {3, 3, 0.2};
    assertThat(hear(reference(), 0.12, lobes(late, heights))).hasSize(3);
    assertThat(hear(reference(), 0.12, lobes(early, heights))).hasSize(2);
  }

  /** After one large spike the store blanks the teeth until it decays: LM1815, SNOSBU8F. */
  @Test
  void aStoredPeakBlanksTeethAfterASpike() {
    double[] times = {0.00, 0.01, 0.02, 0.03, 0.04, 0.05, 0.06, 0.07, 0.08, 0.09};
    double[] heights = {1, 1, 1, 5, 1, 1, 1, 1, 1, 1};
    InputStage store = Conditioner.peakStore(0.8, 0.045, 0.03).newStage();
    // 5 V falls to 1.25 V, of which 80 % is 1 V, in 0.03 ln 4 = 42 ms.
    List<Double> edges = hear(store, 0.1, lobes(times, heights));
    assertThat(edges).hasSize(6);
    assertThat(edges.get(4)).isCloseTo(0.081, within(1e-6));
  }

  /** The floor of the adaptive mode, 45 mV typically: LM1815, SNOSBU8F. */
  @Test
  void aStoredPeakDoesNotArmBelowItsFloor() {
    double[] times = {0.00, 0.01};
    InputStage store = Conditioner.peakStore(0.8, 0.045, 0.03).newStage();
    assertThat(hear(store, 0.03, lobes(times, new double[] {0.04, 0.05}))).hasSize(1);
  }

  /** Hysteresis of 160 mV to each side, no adaptation: NCV1124 data sheet. */
  @Test
  void aComparatorWithHysteresisLosesSmallTeethAndIsLate() {
    double[] times = {0.00, 0.01};
    InputStage comparator = Conditioner.threshold(0, 0.16).newStage();
    List<Double> edges = hear(comparator, 0.03, lobes(times, new double[] {0.15, 1}));
    assertThat(edges).hasSize(1);
    double late = 2e-3 * Math.asin(0.16) / (2 * Math.PI);
    assertThat(edges.get(0)).isCloseTo(0.011 + late, within(1e-7));
  }

  @Test
  void hearsTwoLevelsWithHysteresisAndTimesTheMiddle() {
    InputStage stage = new TwoLevelInput(0, 5);
    // A slow fall from 5 V to 0 V in 1 ms, with a dent that stays between 40 and 60 %.
    DoubleUnaryOperator volts = t -> t < 0.002 ? 5 : t < 0.003 ? 5 - 5000 * (t - 0.002) : 0;
    List<Double> edges = hear(stage, 0.005, volts);
    assertThat(edges).hasSize(1);
    assertThat(edges.get(0)).isCloseTo(0.0025, within(1e-9));
    InputStage flicker = new TwoLevelInput(0, 5);
    assertThat(hear(flicker, 0.005, t -> t < 0.002 ? 5 : t < 0.003 ? 2.2 : 5)).isEmpty();
  }

  @Test
  void subtractsTheMeanAndTurnsTheVoltageForRisingEdges() {
    double[] v = new double[10_000];
    for (int i = 0; i < v.length; i++) {
      v[i] = 2 + Math.sin(2 * Math.PI * (i + 0.25) / 1000);
    }
    SampledSignal signal = SampledSignal.of(0, 1 / RATE, v);
    ChannelSurvey survey = ChannelSurvey.of(signal);
    ReceiverEdges falling =
        ReferenceReceiver.withDefaults().listen(signal, SensorKind.VARIABLE_RELUCTANCE, survey);
    ReceiverEdges rising =
        ReferenceReceiver.withDefaults()
            .withEdge(EdgeDirection.RISING)
            .listen(signal, SensorKind.VARIABLE_RELUCTANCE, survey);
    assertThat(falling.size()).isEqualTo(10);
    assertThat(falling.time(0)).isCloseTo(499.75 / RATE, within(1e-8));
    assertThat(rising.time(0)).isCloseTo(999.75 / RATE, within(1e-8));
  }

  @Test
  void takesListsAsTheyAre() {
    StepSignal steps = new StepSignal(new double[] {0, 1, 2, 3}, new double[] {1, 0, 1, 0}, 0.1, 4);
    ChannelSurvey survey = ChannelSurvey.of(steps);
    assertThat(ReferenceReceiver.withDefaults().listen(steps, SensorKind.HALL, survey).times())
        .containsExactly(1, 3);
    assertThat(
            ReferenceReceiver.withDefaults()
                .withEdge(EdgeDirection.RISING)
                .listen(steps, SensorKind.HALL, survey)
                .times())
        .containsExactly(2);
    EventSignal events = new EventSignal(new double[] {0, 1, 5}, 0);
    assertThat(
            ReferenceReceiver.withDefaults()
                .listen(events, SensorKind.EDGES_ONLY, ChannelSurvey.of(events))
                .times())
        .containsExactly(0, 1, 5);
  }

  @Test
  void replaysSeveralCircuitsInOnePass() {
    double[] teeth = new double[100];
    SampledSignal signal = sine(0.1, teeth);
    List<Conditioner> circuits = new ArrayList<>(List.of(Conditioner.reference()));
    circuits.add(Conditioner.threshold(0, 0.05));
    circuits.add(Conditioner.threshold(0, 0.16));
    ConditionerReplay replay =
        new ConditionerReplay(signal, ChannelSurvey.of(signal), EdgeDirection.FALLING);
    List<ConditionerReplay.Result> results = replay.play(circuits, FollowedWheel.plain(36), teeth);
    assertThat(results).extracting(ConditionerReplay.Result::teethLost).containsExactly(0, 0, 100);
    assertThat(results)
        .extracting(ConditionerReplay.Result::straysAdmitted)
        .containsExactly(0, 0, 0);
    assertThat(circuits.get(2).description()).isEqualTo("threshold 0.00\u202fV ± 0.16\u202fV");
  }

  /** A comparator hears a sine of height A if threshold and hysteresis stay within ± A. */
  @Test
  void sweepsFixedLevels() {
    double[] teeth = new double[100];
    SampledSignal signal = sine(0.1, teeth);
    LevelWindow window =
        new ConditionerReplay(signal, ChannelSurvey.of(signal), EdgeDirection.FALLING)
            .sweep(FollowedWheel.plain(36), teeth);
    for (int t = 0; t < window.thresholdsVolts().size(); t++) {
      for (int h = 0; h < window.hysteresesVolts().size(); h++) {
        double need = Math.abs(window.thresholdsVolts().get(t)) + window.hysteresesVolts().get(h);
        if (Math.abs(need - 0.1) > 0.002) {
          assertThat(window.cell(t, h).teethLost()).isEqualTo(need < 0.1 ? 0 : 100);
        }
      }
    }
  }

  /** Peaks of 0.1 V: over the floor of 0.03 V at first, then over a third of the peak before. */
  @Test
  void measuresHowFarEachToothArms() {
    double[] teeth = new double[100];
    SampledSignal signal = sine(0.1, teeth);
    double[] margins =
        new ConditionerReplay(signal, ChannelSurvey.of(signal), EdgeDirection.FALLING)
            .armingMargins(teeth);
    assertThat(margins[0]).isCloseTo(0.1 / 0.03, within(1e-3));
    assertThat(margins[50]).isCloseTo(3, within(1e-3));
  }

  private static SampledSignal sine(double height, double[] teeth) {
    double[] v = new double[100_000];
    for (int i = 0; i < v.length; i++) {
      v[i] = height * Math.sin(2 * Math.PI * i / 1000.0);
    }
    for (int i = 0; i < teeth.length; i++) {
      teeth[i] = (500 + 1000.0 * i) / RATE;
    }
    return SampledSignal.of(0, 1 / RATE, v);
  }
}
