package toothmark.edges;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import toothmark.capture.EventSignal;
import toothmark.capture.SampledSignal;
import toothmark.capture.StepSignal;

/** Edges of two-level signals, sampled and listed. */
class SwitchingEdgesTest {

  private static final double RATE = 100_000;
  private static final double PERIOD = 1.8518e-3;

  /** High for {@code duty} of each period, with edges that take {@code rise} to pass. */
  private static SampledSignal square(double duty, double rise, double noise) {
    Random random = new Random(11);
    double[] v = new double[50_000];
    for (int i = 0; i < v.length; i++) {
      double phase = i / RATE % PERIOD;
      double up = phase / rise;
      double down = (phase - duty * PERIOD) / rise;
      double level = Math.min(1, up) - Math.max(0, Math.min(1, down));
      v[i] = 0.3 + 4.5 * level + noise * random.nextGaussian();
    }
    return SampledSignal.of(0, 1 / RATE, v);
  }

  @Test
  void takesTheLineBetweenSamplesWhereAnEdgeIsResolved() {
    double rise = 60e-6;
    CrankEdges e = EdgeDetector.withDefaults().detect(square(0.5, rise, 0));
    assertThat(e.kind()).isEqualTo(SensorKind.HALL);
    for (int i = 0; i < e.falling().size(); i++) {
      double expected = PERIOD * (i + 0.5) + rise / 2;
      assertThat(e.falling().time(i)).isCloseTo(expected, within(1e-7));
    }
    assertThat(e.rising().size()).isEqualTo(270);
  }

  /** 5 V behind a resistor and a long cable: the transistor pulls down at once, the cable lags. */
  @Test
  void anOpenCollectorBehindALongCableIsASwitch() {
    Random random = new Random(5);
    double lag = 0.07 * PERIOD;
    double[] v = new double[50_000];
    for (int i = 0; i < v.length; i++) {
      double phase = i / RATE % PERIOD;
      double level = phase < PERIOD / 2 ? 1 - Math.exp(-phase / lag) : 0;
      v[i] = 0.2 + 4.8 * level + 0.02 * random.nextGaussian();
    }
    CrankEdges e = EdgeDetector.withDefaults().detect(SampledSignal.of(0, 1 / RATE, v));
    assertThat(e.kind()).isEqualTo(SensorKind.HALL);
    assertThat(e.falling().size()).isEqualTo(270);
    for (int i = 0; i < e.falling().size(); i++) {
      assertThat(e.falling().time(i)).isCloseTo(PERIOD * (i + 0.5), within(1 / RATE));
    }
    for (int i = 0; i < e.rising().size(); i++) {
      double crossed = PERIOD * (i + (e.rising().time(0) > PERIOD / 2 ? 1 : 0)) + lag * Math.log(2);
      assertThat(e.rising().time(i)).isCloseTo(crossed, within(0.5 / RATE));
    }
  }

  /** A rectangle of one interval: GUM, JCGM 100:2008, 4.3.7. */
  @Test
  void takesTheMiddleOfTheIntervalThatAStepSpans() {
    CrankEdges e = EdgeDetector.withDefaults().detect(square(0.5, 1e-12, 0.01));
    double squares = 0;
    for (int i = 0; i < e.falling().size(); i++) {
      double off = e.falling().time(i) - PERIOD * (i + 0.5);
      assertThat(Math.abs(off)).isLessThanOrEqualTo(0.5 / RATE + 1e-12);
      assertThat(e.falling().uncertainty(i)).isCloseTo(1 / RATE / Math.sqrt(12), within(1e-12));
      squares += off * off;
    }
    double rms = Math.sqrt(squares / e.falling().size());
    assertThat(rms).isCloseTo(1 / RATE / Math.sqrt(12), within(0.15 / RATE));
  }

  /** One sample in ten catches a step of a tenth of the interval on its way. */
  @Test
  void aSampleOnTheWayOfAStepMakesItNoSurer() {
    CrankEdges e = EdgeDetector.withDefaults().detect(square(0.5, 1e-6, 0.01));
    for (int i = 0; i < e.falling().size(); i++) {
      double off = e.falling().time(i) - PERIOD * (i + 0.5) - 0.5e-6;
      assertThat(Math.abs(off)).isLessThanOrEqualTo(0.55 / RATE);
      assertThat(e.falling().uncertainty(i)).isCloseTo(1 / RATE / Math.sqrt(12), within(1e-12));
    }
  }

  @ParameterizedTest
  @ValueSource(doubles = {0.05, 0.2, 0.8, 0.95})
  void findsTheLevelsAtAnyDuty(double duty) {
    CrankEdges e = EdgeDetector.withDefaults().detect(square(duty, 5e-6, 0.05));
    assertThat(e.kind()).isEqualTo(SensorKind.HALL);
    assertThat(e.falling().size()).isEqualTo(270);
  }

  @Test
  void keepsFlickerAsWeakEdgesInBothTrains() {
    SampledSignal clean = square(0.5, 5e-6, 0.05);
    double[] v = new double[(int) clean.size()];
    clean.read(0, v, v.length);
    // 40 µs low in a high pulse, 40 µs high in a low one; pulses last 926 µs.
    for (int i = 0; i < 4; i++) {
      v[1895 + i] = 0.3;
      v[3100 + i] = 4.8;
    }
    CrankEdges e = EdgeDetector.withDefaults().detect(SampledSignal.of(0, 1 / RATE, v));
    for (EdgeTrain train : new EdgeTrain[] {e.falling(), e.rising()}) {
      int weak = 0;
      for (int i = 0; i < train.size(); i++) {
        boolean flicker = train.strength(i) < 0.15;
        weak += flicker ? 1 : 0;
        assertThat(flicker || train.strength(i) > 0.9).isTrue();
      }
      assertThat(weak).isEqualTo(2);
    }
  }

  @Test
  void placesAListedChangeHalfAResolutionBeforeItsEntry() {
    StepSignal steps =
        new StepSignal(
            new double[] {0, 1e-3, 2e-3, 3e-3, 4e-3}, new double[] {1, 0, 1, 0, 1}, 2e-6, 5e-3);
    CrankEdges e = EdgeDetector.withDefaults().detect(steps);
    assertThat(e.falling().times())
        .containsExactly(new double[] {0.999e-3, 2.999e-3}, within(1e-12));
    assertThat(e.rising().times())
        .containsExactly(new double[] {1.999e-3, 3.999e-3}, within(1e-12));
    assertThat(e.falling().uncertainty(0)).isCloseTo(2e-6 / Math.sqrt(12), within(1e-15));
  }

  @Test
  void takesAListOfInstantsAsItIs() {
    CrankEdges e =
        EdgeDetector.withDefaults().detect(new EventSignal(new double[] {0, 0.5, 0.75}, 1e-6));
    assertThat(e.kind()).isEqualTo(SensorKind.EDGES_ONLY);
    assertThat(e.falling().times()).containsExactly(0, 0.5, 0.75);
    assertThat(e.rising().size()).isZero();
  }

  @Test
  void findsAMarkThatIsHighForAThousandthOfTheTime() {
    double[] v = new double[200_000];
    Random random = new Random(3);
    for (int i = 0; i < v.length; i++) {
      v[i] = (i % 20_000 < 20 ? 5 : 0) + 0.02 * random.nextGaussian();
    }
    SampledSignal mark = SampledSignal.of(0, 1 / RATE, v);
    CrankEdges e = LogicEdges.detect(mark);
    assertThat(e.rising().size()).isEqualTo(9);
    ChannelSurvey survey = ChannelSurvey.of(mark);
    assertThat(survey.shape()).isEqualTo(SignalShape.PULSE_TRAIN);
    assertThat(survey.duty()).isCloseTo(0.001, within(1e-4));
    assertThat(survey.risingEdges()).isEqualTo(9);
    assertThat(survey.meanRateHz()).isCloseTo(4.5, within(1e-9));
  }

  /** Mains hum on the ground lead smears both levels so that neither holds a heap of samples. */
  @Test
  void findsTheLevelsThroughHum() {
    SampledSignal clean = square(0.4, 60e-6, 0.004);
    double[] v = new double[50_000];
    clean.read(0, v, v.length);
    for (int i = 0; i < v.length; i++) {
      v[i] += 1.1 * Math.sin(2 * Math.PI * 60 * i / RATE);
    }
    CrankEdges e =
        EdgeDetector.withDefaults()
            .withKind(SensorKind.HALL)
            .detect(SampledSignal.of(0, 1 / RATE, v));
    assertThat(e.falling().size()).isEqualTo(270);
  }

  @ParameterizedTest
  @ValueSource(doubles = {0, 0.004})
  void findsNothingInAChannelThatRests(double noise) {
    Random random = new Random(5);
    double[] v = new double[50_000];
    for (int i = 0; i < v.length; i++) {
      v[i] = 0.02 + noise * random.nextGaussian();
    }
    CrankEdges e = LogicEdges.detect(SampledSignal.of(0, 1 / RATE, v));
    assertThat(e.falling().size() + e.rising().size()).isZero();
  }

  @Test
  void doesNotTakeSpikesForALevel() {
    double[] v = new double[100_000];
    for (int i = 0; i < v.length; i++) {
      v[i] = i % 1000 < 300 ? 5 : 0;
    }
    for (int i = 77; i < v.length; i += 5000) {
      v[i] = 30;
    }
    CrankEdges e = LogicEdges.detect(SampledSignal.of(0, 1 / RATE, v));
    assertThat(e.rising().size()).isEqualTo(99);
  }
}
