package toothmark.wheel;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Arrays;
import java.util.Comparator;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import toothmark.edges.EdgeTrain;

/**
 * Wheels on the starter of a four-cylinder engine, whose energy swings twice a turn: the square of
 * the speed is its mean times 1 + depth cos 2(angle - phase), as that of a flywheel is on which a
 * torque of second order works.
 */
class TurnRhythmTest {

  private static final int TURNS = 6;

  @ParameterizedTest
  @CsvSource({
    "12-1, 0, 0.6", "12-1, 40, 0.6", "12-1, 80, 0.6", "12-1, 150, 0.9", "8-1, 20, 0.4",
    "8-1, 110, 0.4", "4-1, 0, 0.4", "4-1, 90, 0.4", "24-1, 70, 0.8", "12+1, 50, 0.5",
    "36-2-2-2, 10, 0.6", "60-2, 160, 0.7", "25-2-2, 60, 0.8", "19-2-2, 20, 0.7"
  })
  void namesTheWheelAndItsFirstToothFromWhatAllTurnsShare(String name, double phase, double depth) {
    WheelPattern wheel = WheelPattern.parse(name);
    int first = wheel.teeth() / 3;
    TurnRhythm rhythm =
        TurnRhythm.of(series(times(wheel, first, phase, depth, 200)), 0, TURNS * wheel.teeth() + 1)
            .orElseThrow();

    WheelPattern best =
        rhythm.candidates().stream()
            .max(
                Comparator.comparingDouble(w -> rhythm.pace().fit(w).nats() - PatternPrior.nats(w)))
            .orElseThrow();

    assertThat(best).isEqualTo(wheel);
    assertThat(rhythm.pace().fit(best).firstTooth()).isEqualTo(first);
    assertThat(rhythm.pace().fit(best).nats()).isGreaterThan(rhythm.pace().natsOfAny());
    Labelling labels = rhythm.label(best);
    assertThat(labels.count()).isEqualTo(TURNS * wheel.teeth() + 1);
    assertThat(labels.teeth[wheel.teeth() + 1]).isEqualTo((first + 1) % wheel.teeth());
  }

  /** Of these some would be another wheel by their intervals alone. */
  @ParameterizedTest
  @CsvSource({
    "10-1, 30, 0.7",
    "7-3, 0, 0.6",
    "7-3, 45, 0.6",
    "7-3, 90, 0.6",
    "7-3, 135, 0.6",
    "6-2, 20, 0.6",
    "5-2, 120, 0.4",
    "8-1, 60, 0.7"
  })
  void tellsASlowToothByItsWidth(String name, double phase, double depth) {
    WheelPattern wheel = WheelPattern.parse(name);
    double[] times = times(wheel, 0, phase, depth, 200);
    EdgeSeries series = series(times);
    for (int i = 0; i < times.length; i++) {
      double swing =
          Math.cos(2 * Math.toRadians(wheel.degreesAfterTooth1(i % wheel.teeth() + 1) - phase));
      series.widths[i] = 0.005 * (1 + 0.01 * (i % 3)) / Math.sqrt(1 + depth * swing);
    }
    TurnRhythm rhythm = TurnRhythm.of(series, 0, times.length).orElseThrow();

    TurnPace pace = rhythm.pace();
    double nats = pace.fit(wheel).nats();
    assertThat(nats).isGreaterThan(pace.natsOfAny());
    assertThat(rhythm.candidates())
        .allSatisfy(
            w -> assertThat(w.equals(wheel) ? 0 : nats - pace.fit(w).nats()).isNotNegative());
  }

  /** The row that repeats is half a turn, and its slow tooth looks like the gap of 6-1. */
  @ParameterizedTest
  @CsvSource({"10, 30, 0.6", "10, 100, 0.8", "30, 70, 0.8", "14, 0, 0.7"})
  void seesNoGapInAPlainWheel(String name, double phase, double depth) {
    double[] times = times(WheelPattern.parse(name), 0, phase, depth, 200);
    EdgeTrain train =
        new EdgeTrain(times, new double[times.length], ones(times.length), ones(times.length));
    WheelSearch search = WheelIdentifier.withDefaults().identify(WheelIdentifierTest.listed(train));
    assertThat(search.found())
        .hasValueSatisfying(w -> assertThat(w.pattern().hasReference()).isFalse());
  }

  @Test
  void theLongestIntervalIsNotTheGapThere() {
    WheelPattern wheel = WheelPattern.parse("12-1");
    double[] times = times(wheel, 0, 150, 0.9, 200);
    int longest = 0;
    for (int k = 1; k < wheel.teeth(); k++) {
      boolean longer = times[k + 1] - times[k] > times[longest + 1] - times[longest];
      longest = longer ? k : longest;
    }
    assertThat(longest).isNotEqualTo(wheel.teeth() - 1);
  }

  @Test
  void saysNothingAtARunningSpeedOrWhereTurnsDiffer() {
    WheelPattern wheel = WheelPattern.parse("12-1");
    int edges = TURNS * wheel.teeth() + 1;
    double[] lost = times(wheel, 0, 0, 0.5, 200);
    System.arraycopy(lost, 31, lost, 30, edges - 31);

    assertThat(TurnRhythm.of(series(times(wheel, 0, 0, 0.05, 900)), 0, edges)).isEmpty();
    assertThat(TurnRhythm.of(series(lost), 0, edges - 1)).isEmpty();
  }

  private static EdgeSeries series(double[] times) {
    int n = times.length;
    return EdgeSeries.of(new EdgeTrain(times, new double[n], ones(n), ones(n)));
  }

  private static double[] ones(int n) {
    double[] ones = new double[n];
    Arrays.fill(ones, 1);
    return ones;
  }

  /** When the teeth pass, by steps of a twentieth of a degree. */
  private static double[] times(
      WheelPattern wheel, int first, double phase, double depth, double rpm) {
    double[] times = new double[TURNS * wheel.teeth() + 1];
    double start = wheel.degreesAfterTooth1(first + 1);
    double time = 0;
    double degrees = start;
    for (int i = 0; i < times.length; i++) {
      int tooth = first + i;
      double at = wheel.degreesAfterTooth1(tooth % wheel.teeth() + 1);
      double end = at + 360.0 * (tooth / wheel.teeth());
      int steps = (int) Math.round((end - degrees) * 20);
      double step = steps == 0 ? 0 : (end - degrees) / steps;
      for (int k = 0; k < steps; k++) {
        double swing = Math.cos(2 * Math.toRadians(degrees + (k + 0.5) * step - phase));
        time += step / (6 * rpm * Math.sqrt(1 + depth * swing));
      }
      degrees = end;
      times[i] = time;
    }
    return times;
  }
}
