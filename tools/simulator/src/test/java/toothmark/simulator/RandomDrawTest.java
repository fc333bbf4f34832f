package toothmark.simulator;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Random healthy engines: what the truth says is there to be seen, by a plain threshold. */
class RandomDrawTest {
  private static final double SLOWEST_RPM = 60.0;

  /** Times at which the crank's timed edge crosses the middle of its swing. */
  private static double[] edges(SimulatedCapture capture) {
    if (capture.crank() instanceof Trace.Edges list) {
      return list.edges().stream().mapToDouble(Double::doubleValue).toArray();
    }
    boolean rising =
        capture.scenario().sensor() instanceof Sensor.Hall hall
            && hall.timedEdge() == Sensor.Edge.RISING;
    if (capture.crank() instanceof Trace.Logic logic) {
      return ofLevels(logic.levels(), rising);
    }
    double middle = capture.scenario().sensor() instanceof Sensor.Hall ? 2.5 : 0.0;
    Trace.Analogue trace = capture.crankVolts();
    List<Double> times = new ArrayList<>();
    for (int i = 1; i < trace.size(); i++) {
      double a = (trace.volts(i - 1) - middle) * (rising ? -1 : 1);
      double b = (trace.volts(i) - middle) * (rising ? -1 : 1);
      if (a > 0 && b <= 0) {
        times.add(capture.startSeconds() + (i - 1 + a / (a - b)) / capture.sampleRateHz());
      }
    }
    return times.stream().mapToDouble(Double::doubleValue).toArray();
  }

  private static double[] ofLevels(LevelChanges levels, boolean rising) {
    LevelChanges.Level wanted = rising ? LevelChanges.Level.HIGH : LevelChanges.Level.LOW;
    List<Double> times = new ArrayList<>();
    for (int i = 0; i < levels.count(); i++) {
      if (levels.after(i) == wanted) {
        times.add(levels.seconds(i));
      }
    }
    return times.stream().mapToDouble(Double::doubleValue).toArray();
  }

  private static double nearest(double[] times, double to) {
    int at = Arrays.binarySearch(times, to);
    int next = at < 0 ? -at - 1 : at;
    double best = Double.POSITIVE_INFINITY;
    for (int i = Math.max(0, next - 1); i <= Math.min(times.length - 1, next); i++) {
      best = Math.abs(times[i] - to) < Math.abs(best - to) ? times[i] : best;
    }
    return best;
  }

  @ParameterizedTest
  @ValueSource(longs = {1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12, 13, 14, 15, 16, 17, 18, 19, 20})
  void everyToothHasItsEdge(long seed) {
    SimulatedCapture capture = Simulation.of(Scenarios.healthy(seed)).run();
    double[] edges = edges(capture);
    List<ToothPassing> teeth = capture.truth().teeth();
    double pitch = 360.0 / capture.scenario().wheel().pattern().slots();

    assertThat(teeth).hasSizeGreaterThan(30);
    for (int i = 1; i < teeth.size() - 1; i++) {
      ToothPassing tooth = teeth.get(i);
      double turned = teeth.get(i + 1).crankDegrees() - teeth.get(i - 1).crankDegrees();
      double degreesPerSecond = turned / (teeth.get(i + 1).seconds() - teeth.get(i - 1).seconds());
      if (degreesPerSecond > 6.0 * SLOWEST_RPM) {
        double off = (nearest(edges, tooth.seconds()) - tooth.seconds()) * degreesPerSecond;
        assertThat(Math.abs(off))
            .as("tooth %s of %s", tooth, capture.scenario().name())
            .isLessThan(0.1 * pitch);
      }
    }
  }

  @ParameterizedTest
  @ValueSource(longs = {21, 22, 23, 24, 25, 26, 27, 28, 29, 30})
  void healthyEnginesKeepToWhatIsCommanded(long seed) {
    SimulatedCapture capture = Simulation.of(Scenarios.healthy(seed)).run();

    assertThat(capture.truth().faults()).isEmpty();
    assertThat(capture.truth().alignment().errorDegrees()).isZero();
    for (Spark spark : capture.truth().sparks()) {
      assertThat(spark.fired()).isTrue();
      double gap = spark.angles().actualDegrees() - spark.angles().commandedDegrees();
      assertThat(Math.abs(gap)).isLessThan(0.35);
    }
  }

  @Test
  void drawsCoverWheelsSensorsEnginesAndRecorders() {
    List<Scenario> drawn = new ArrayList<>();
    for (long seed = 0; seed < 300; seed++) {
      drawn.add(Scenarios.healthy(seed));
    }

    assertThat(drawn.stream().map(s -> s.wheel().pattern().name()).distinct().count())
        .isGreaterThan(10);
    assertThat(drawn.stream().map(s -> s.engine().cylinders()).distinct().count()).isEqualTo(3);
    assertThat(drawn.stream().map(s -> s.recorder().kind()).distinct().count()).isEqualTo(3);
    assertThat(drawn.stream().map(s -> s.recorder().sampleRateHz()).distinct().count())
        .isGreaterThan(6);
    assertThat(drawn.stream().filter(s -> s.sensor() instanceof Sensor.Hall).count())
        .isBetween(60L, 150L);
  }
}
