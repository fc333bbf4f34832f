package toothmark.accuracy.decode;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import toothmark.accuracy.CaseName;
import toothmark.simulator.Engine;
import toothmark.simulator.Recorder;
import toothmark.simulator.Scenario;
import toothmark.simulator.SimulatedCapture;
import toothmark.simulator.Simulation;
import toothmark.simulator.SpeedProfile;
import toothmark.simulator.Wheel;

/**
 * Wheels of few teeth on the starter, where a compression slows the crank by more than a gap is
 * wide. The engines have neither the middling inertia nor the compression that the method takes for
 * usual.
 */
class StarterNamingTest {

  private static final double SECONDS = 1.0;

  @ParameterizedTest
  @CsvSource({
    "6-3, 4, 0.22, 8, 210", "6-3, 4, 0.12, 11.5, 260", "7-3, 4, 0.11, 11, 230",
    "4-1, 4, 0.2, 8.5, 200", "8-1, 6, 0.15, 11, 220", "14-2, 4, 0.12, 10.5, 200"
  })
  void namesTheWheelOfAWave(
      String wheel, int cylinders, double inertia, double compression, double rpm) {
    Scenario s = cranked(wheel, cylinders, inertia, compression, rpm);
    Naming naming = Naming.of(Simulation.of(s).run());
    assertThat(naming.search().found().orElseThrow().pattern()).hasToString(wheel);
  }

  @ParameterizedTest
  @CsvSource({
    "7-3, 4, 0.2, 8.5, 230",
    "7-1, 4, 0.12, 10.5, 200",
    "4-1, 4, 0.2, 8, 200",
    "8-1, 6, 0.15, 11, 220"
  })
  void namesTheWheelOfAList(
      String wheel, int cylinders, double inertia, double compression, double rpm) {
    Scenario s = cranked(wheel, cylinders, inertia, compression, rpm);
    SimulatedCapture list =
        EdgeCases.of(s, new CaseName("wheels", "starter_edges", 1), 0.0, 0.0).capture();
    assertThat(Naming.of(list).search().found().orElseThrow().pattern()).hasToString(wheel);
  }

  /** Half a turn of it, with one compression, repeats like a turn of 4-1. */
  @ParameterizedTest
  @CsvSource({"0.2, 8.5", "0.12, 11"})
  void seesNoGapInAPlainWheel(double inertia, double compression) {
    Naming naming = Naming.of(Simulation.of(cranked("6", 4, inertia, compression, 190)).run());
    assertThat(naming.search().found().orElseThrow().pattern().hasReference()).isFalse();
  }

  private static Scenario cranked(
      String wheel, int cylinders, double inertia, double compression, double rpm) {
    Engine usual = Engine.ofCylinders(cylinders);
    Engine engine =
        new Engine(
            usual.firingOrder(),
            usual.displacementLitres(),
            compression,
            inertia,
            usual.frictionNm());
    return Scenario.healthy("starter", 7)
        .withEngine(engine)
        .withWheel(Wheel.of(wheel, 90.0))
        .withSpeed(SpeedProfile.cranking(rpm))
        .withRecorder(Recorder.oscilloscope(20e3, SECONDS));
  }
}
