package toothmark.simulator;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** The truth against what is in the signals, found by means too simple to be wrong. */
class TruthTest {
  private static final double MICRO = 1e-6;

  private static Scenario sweep(String pattern) {
    double first = pattern.startsWith("60") ? 114.0 : 90.0;
    return Scenario.healthy("sweep", 3)
        .withWheel(Wheel.of(pattern, first))
        .withController(Controller.fixed(first, 10.0))
        .withSpeed(SpeedProfile.sweep(900.0, 4500.0, 1.0))
        .withRecorder(Recorder.oscilloscope(200e3, 1.2).withFront(Recorder.Front.IDEAL));
  }

  /** Time of the falling zero crossing nearest to a time. */
  private static double crossing(Trace.Analogue trace, double rateHz, double near) {
    int centre = (int) Math.round(near * rateHz);
    for (int reach = 0; reach < 200; reach++) {
      for (int i : new int[] {centre - reach, centre + reach}) {
        if (i >= 0 && i + 1 < trace.size() && trace.volts(i) > 0 && trace.volts(i + 1) <= 0) {
          double share = trace.volts(i) / (trace.volts(i) - (double) trace.volts(i + 1));
          return (i + share) / rateHz;
        }
      }
    }
    throw new AssertionError("no falling zero crossing near " + near);
  }

  @ParameterizedTest
  @ValueSource(strings = {"36-1", "60-2", "24-1", "12+1", "36-2-2-2"})
  void everyToothCrossesZeroOneSensorLagAfterItPassed(String pattern) {
    SimulatedCapture capture = Simulation.of(sweep(pattern)).run();
    double lag = Sensor.VariableReluctance.USUAL.lagSeconds();
    List<ToothPassing> teeth = capture.truth().teeth();

    double pitchDegrees = capture.scenario().wheel().pattern().pitchDegrees();
    for (int i = 1; i < teeth.size() - 1; i++) {
      ToothPassing tooth = teeth.get(i);
      double found = crossing(capture.crankVolts(), capture.sampleRateHz(), tooth.seconds());
      double secondsPerDegree =
          (teeth.get(i + 1).seconds() - tooth.seconds())
              / (teeth.get(i + 1).crankDegrees() - tooth.crankDegrees());
      // Next to a gap the neighbours' fields no longer balance and pull the crossing a little.
      double pull = 0.02 * pitchDegrees * secondsPerDegree;
      assertThat(found - tooth.seconds()).isCloseTo(lag, within(3 * MICRO + pull));
    }
  }

  @Test
  void coilsFallAndTdcRisesWhereTheTruthSaysSo() {
    SimulatedCapture capture = Simulation.of(sweep("36-1")).run();
    Trace.Analogue first = (Trace.Analogue) capture.coils().get(0);
    double period = 1.0 / capture.sampleRateHz();

    for (Spark spark : capture.truth().sparks()) {
      if (spark.coil() == 0 && spark.seconds() > 2 * period) {
        int i = (int) Math.floor(spark.seconds() / period);
        assertThat(first.volts(i - 1)).isGreaterThan(4.9f);
        assertThat(first.volts(i + 2)).isLessThan(0.1f);
      }
    }
  }

  @Test
  void gapOfEachSparkIsAlignmentErrorLessDelay() {
    Scenario scenario =
        sweep("36-1")
            .withWheel(Wheel.of("36-1", 94.0))
            .withController(
                Controller.fixed(90.0, 12.0)
                    .withTiming(new Controller.Timing(120e-6, 0.0, 0.0, 0.0)));

    Truth truth = Simulation.of(scenario).run().truth();

    assertThat(truth.alignment().errorDegrees()).isCloseTo(4.0, within(1e-12));
    assertThat(truth.sparks()).hasSizeGreaterThan(80);
    for (Spark spark : truth.sparks()) {
      double gap = spark.angles().actualDegrees() - spark.angles().commandedDegrees();
      double expected = 4.0 - 6.0 * spark.angles().rpm() * 120e-6;
      assertThat(gap).isCloseTo(expected, within(0.01));
    }
  }

  @Test
  void coilOnTheWrongOutputFiresHalfATurnFromItsOwnTdc() {
    Scenario scenario = sweep("36-1").withCoils(Coils.WASTED_SPARK.withOutputs(List.of(1, 0)));

    Truth truth = Simulation.of(scenario).run().truth();

    for (Spark spark : truth.sparks()) {
      assertThat(spark.angles().actualDegrees()).isCloseTo(10.0 - 180.0, within(0.5));
    }
  }

  @Test
  void sameScenarioGivesTheSameCapture() {
    SimulatedCapture one = Simulation.of(Scenario.healthy("twice", 5)).run();
    SimulatedCapture two = Simulation.of(Scenario.healthy("twice", 5)).run();
    SimulatedCapture other = Simulation.of(Scenario.healthy("twice", 6)).run();

    assertThat(one.truth()).isEqualTo(two.truth());
    assertThat(one.crankVolts().toFloats()).isEqualTo(two.crankVolts().toFloats());
    assertThat(one.crankVolts().toFloats()).isNotEqualTo(other.crankVolts().toFloats());
  }

  @Test
  void stalledEngineRocksBackAndItsTeethPassBothWays() {
    Scenario scenario =
        Scenario.healthy("stall", 7)
            .withSpeed(SpeedProfile.stall(850.0, 0.4))
            .withRecorder(Recorder.oscilloscope(50e3, 2.5));

    Truth truth = Simulation.of(scenario).run().truth();

    assertThat(truth.speed().minRpm()).isLessThan(-10.0);
    List<ToothPassing> teeth = truth.teeth();
    boolean back = false;
    for (int i = 1; i < teeth.size(); i++) {
      back |= teeth.get(i).crankDegrees() < teeth.get(i - 1).crankDegrees();
    }
    assertThat(back).isTrue();
  }
}
