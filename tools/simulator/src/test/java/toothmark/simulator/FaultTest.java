package toothmark.simulator;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.stream.DoubleStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/** Each fault is there in what the machine does. */
class FaultTest {

  private static SimulatedCapture run(Fault fault, long seed) {
    return Simulation.of(Scenarios.faulty(fault, seed)).run();
  }

  private static DoubleStream gaps(SimulatedCapture capture) {
    return capture.truth().sparks().stream()
        .filter(Spark::fired)
        .mapToDouble(s -> s.angles().actualDegrees() - s.angles().commandedDegrees());
  }

  private static double peak(Trace.Analogue trace) {
    double peak = 0.0;
    for (int i = 0; i < trace.size(); i++) {
      peak = Math.max(peak, Math.abs(trace.volts(i)));
    }
    return peak;
  }

  @ParameterizedTest
  @EnumSource(Fault.class)
  void everyFaultCanBeDrawnAndNamesItself(Fault fault) {
    for (long seed = 1; seed <= 3; seed++) {
      SimulatedCapture capture = run(fault, seed);

      assertThat(capture.truth().faults()).containsExactly(fault.finding());
      assertThat(capture.crank()).isNotNull();
    }
  }

  @Test
  void weakSignalIsBelowAFifthOfAVoltOnTheStarter() {
    Scenario scenario =
        Scenarios.faulty(Fault.WEAK_SIGNAL, 2).withSpeed(SpeedProfile.cranking(200.0));

    assertThat(peak(Simulation.of(scenario).run().crankVolts())).isBetween(0.03, 0.45);
  }

  @Test
  void clippedSignalRestsAtBothEndsOfTheRange() {
    SimulatedCapture capture = run(Fault.SENSOR_CLIPPED, 4);
    Trace.Analogue trace = capture.crankVolts();
    double range = capture.scenario().recorder().front().rangeVolts();

    int atTop = 0;
    int atBottom = 0;
    for (int i = 0; i < trace.size(); i++) {
      atTop += trace.volts(i) >= range * 0.99 ? 1 : 0;
      atBottom += trace.volts(i) <= -range * 0.99 ? 1 : 0;
    }
    assertThat(atTop).isGreaterThan(20);
    assertThat(atBottom).isGreaterThan(20);
  }

  @Test
  void slipTakesTheSparksWithTheWheel() {
    SimulatedCapture capture = run(Fault.WHEEL_SLIP, 5);
    double slipped = capture.scenario().wheel().mount().slip().degrees();
    double[] gaps = gaps(capture).toArray();

    assertThat(gaps[0]).isCloseTo(0.0, within(0.3));
    assertThat(gaps[gaps.length - 1]).isCloseTo(-slipped, within(0.3));
  }

  @Test
  void silentSensorLosesEveryTooth() {
    assertThat(run(Fault.NO_CRANK_SIGNAL, 6).truth().teeth())
        .allMatch(t -> t.outcome() == ToothPassing.Outcome.LOST);
  }

  @Test
  void intermittentConnectionLosesTeethInItsWindowsAlone() {
    SimulatedCapture capture = run(Fault.INTERMITTENT_CONNECTION, 7);
    List<ToothPassing> teeth = capture.truth().teeth();

    long lost = teeth.stream().filter(t -> t.outcome() == ToothPassing.Outcome.LOST).count();
    assertThat(lost).isBetween(1L, teeth.size() / 2L);
  }

  @Test
  void shortCaptureHoldsHardlyMoreThanOneTurn() {
    List<ToothPassing> teeth = run(Fault.CAPTURE_TOO_SHORT, 8).truth().teeth();
    double turned = teeth.get(teeth.size() - 1).crankDegrees() - teeth.get(0).crankDegrees();

    assertThat(turned).isLessThan(1.6 * 360.0);
  }

  @Test
  void delayGrowsWithSpeedInAngle() {
    SimulatedCapture capture = run(Fault.TIMING_DELAY, 9);
    double delay = capture.scenario().controller().timing().delaySeconds();

    for (Spark spark : capture.truth().sparks()) {
      double gap = spark.angles().actualDegrees() - spark.angles().commandedDegrees();
      assertThat(gap).isCloseTo(-6.0 * spark.angles().rpm() * delay, within(0.3));
    }
  }

  @Test
  void wrongEdgeMovesTheAlignmentByTheWidthOfATooth() {
    SimulatedCapture capture = run(Fault.WRONG_TIMING_EDGE, 10);
    Sensor.Hall hall = (Sensor.Hall) capture.scenario().sensor();
    double width = hall.toothShare() * capture.scenario().wheel().pattern().pitchDegrees();

    assertThat(capture.truth().alignment().errorDegrees()).isCloseTo(width, within(1e-9));
    assertThat(gaps(capture).average().orElseThrow()).isCloseTo(width, within(0.1));
  }

  @Test
  void limitersHoldTheSpeedOrPullTheSparksBack() {
    SimulatedCapture cut = run(Fault.SPARK_CUT_LIMITER, 11);
    SimulatedCapture retard = run(Fault.TIMING_RETARD_LIMITER, 12);
    Limiter limiter = retard.scenario().controller().limiter();

    assertThat(cut.truth().sparks()).anyMatch(s -> s.outcome() == Spark.Outcome.CUT_BY_LIMITER);
    assertThat(cut.truth().speed().maxRpm())
        .isLessThan(cut.scenario().controller().limiter().rpm() * 1.05);
    assertThat(gaps(retard).min().orElseThrow()).isCloseTo(-limiter.retardDegrees(), within(0.3));
    assertThat(gaps(retard).max().orElseThrow()).isCloseTo(0.0, within(0.3));
  }

  /**
   * A spark predicted 60 degrees ahead is off by half of 6 a t^2, t the time for those degrees at a
   * rev/min/s, and by a little more as the speed is measured over the ten degrees before:
   * elementary kinematics. Here friction alone brakes a heavy crank at 5000 rev/min/s, so all
   * sparks are early.
   */
  @Test
  void predictionMissesByTheKinematicsOfTheBrakedCrank() {
    double brakingNm = 0.15 * 5000.0 * Math.PI / 30.0;
    SpeedProfile braking =
        new SpeedProfile(
            6500.0, List.of(new SpeedProfile.Phase(SpeedProfile.Drive.COASTING, 1.0, 0.0, 0.0)));
    Scenario scenario =
        Scenario.healthy("prediction", 13)
            .withEngine(new Engine(List.of(1, 3, 4, 2), 0.1, 9.0, 0.15, brakingNm))
            .withController(
                Controller.fixed(90.0, 10.0).withTiming(new Controller.Timing(0.0, 0.0, 0.0, 60.0)))
            .withSpeed(braking)
            .withRecorder(Recorder.oscilloscope(20e3, 0.55));

    List<Spark> sparks = Simulation.of(scenario).run().truth().sparks();

    assertThat(sparks).hasSizeGreaterThan(20);
    for (Spark spark : sparks) {
      double t = 60.0 / (6.0 * spark.angles().rpm());
      double early = 0.5 * 6.0 * 5000.0 * t * t * 70.0 / 60.0;
      assertThat(spark.angles().actualDegrees() - 10.0)
          .isCloseTo(early, within(0.02 + 0.1 * early));
    }
  }
}
