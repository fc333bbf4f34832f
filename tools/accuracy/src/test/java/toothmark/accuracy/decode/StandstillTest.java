package toothmark.accuracy.decode;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import toothmark.accuracy.InMemory;
import toothmark.examination.Examination;
import toothmark.findings.Finding;
import toothmark.findings.Severity;
import toothmark.simulator.Engine;
import toothmark.simulator.Recorder;
import toothmark.simulator.Scenario;
import toothmark.simulator.Sensor;
import toothmark.simulator.SimulatedCapture;
import toothmark.simulator.Simulation;
import toothmark.simulator.SpeedProfile;
import toothmark.simulator.SpeedProfile.Drive;
import toothmark.simulator.SpeedProfile.Phase;
import toothmark.simulator.ToothPassing;
import toothmark.simulator.Wheel;

/**
 * Healthy engines that stand still within the record, where they rock to rest and are cranked
 * again. What each tooth is comes from the simulator's truth.
 */
class StandstillTest {

  @ParameterizedTest
  @CsvSource({
    "36-1, VR, 4",
    "36-1, HALL, 8",
    "60-2, VR, 6",
    "60-2, HALL, 4",
    "24-1, VR, 4",
    "36-2-2-2, HALL, 4"
  })
  void countsAnewWhenAStalledEngineIsCrankedAgain(String wheel, String sensor, int cylinders) {
    List<Phase> phases = new ArrayList<>();
    phases.add(new Phase(Drive.FIRING, 0.6, 900, 0.4));
    phases.add(new Phase(Drive.COASTING, 1.8, 0, 0.7));
    crank(phases, 1.4);
    examine(wheel, sensor, cylinders, new SpeedProfile(900, phases));
  }

  @ParameterizedTest
  @CsvSource({
    "36-1, VR, 4",
    "36-1, HALL, 4",
    "60-2, HALL, 8",
    "24-1, VR, 4",
    "24-1, HALL, 8",
    "12-1, VR, 6",
    "12-1, HALL, 8",
    "36-2-2-2, VR, 8",
    "12+1, HALL, 6"
  })
  void countsAnewInASecondAttemptToStart(String wheel, String sensor, int cylinders) {
    List<Phase> phases = new ArrayList<>();
    crank(phases, 0.9);
    phases.add(new Phase(Drive.COASTING, 1.2, 0, 0.9));
    crank(phases, 1.4);
    examine(wheel, sensor, cylinders, new SpeedProfile(0, phases));
  }

  private static void crank(List<Phase> phases, double seconds) {
    phases.add(new Phase(Drive.STARTER, 0.02, 220, 1));
    phases.add(new Phase(Drive.STARTER, seconds, 220, 1));
  }

  private static void examine(String wheel, String sensor, int cylinders, SpeedProfile speed) {
    double seconds = speed.phases().stream().mapToDouble(Phase::seconds).sum();
    SimulatedCapture capture =
        Simulation.of(
                Scenario.healthy("standstill", 5)
                    .withEngine(Engine.ofCylinders(cylinders))
                    .withSpeed(speed)
                    .withWheel(Wheel.of(wheel, 90))
                    .withSensor(
                        sensor.equals("VR") ? Sensor.VariableReluctance.USUAL : Sensor.Hall.USUAL)
                    .withRecorder(Recorder.oscilloscope(25e3, seconds)))
            .run();
    Examination found = InMemory.examine(capture);
    assertThat(found.observations().crank().orElseThrow().wheel().pattern()).hasToString(wheel);
    assertThat(found.diagnosis().findings())
        .filteredOn(f -> f.severity() == Severity.FAULT)
        .extracting(Finding::id)
        .isEmpty();
    assertThat(found.diagnosis().findings()).extracting(Finding::id).contains("engine-stops");
    assertThat(wronglyNamed(capture, Labels.of(found.teeth().orElseThrow()))).isZero();
  }

  /** Teeth passing forward, between two others that do, under another name than theirs. */
  private static long wronglyNamed(SimulatedCapture capture, Labels labels) {
    List<ToothPassing> teeth = capture.truth().teeth();
    long wrong = 0;
    for (int i = 1; i + 1 < teeth.size(); i++) {
      ToothPassing tooth = teeth.get(i);
      double before = tooth.crankDegrees() - teeth.get(i - 1).crankDegrees();
      double after = teeth.get(i + 1).crankDegrees() - tooth.crankDegrees();
      double pitch =
          Math.min(
              tooth.seconds() - teeth.get(i - 1).seconds(),
              teeth.get(i + 1).seconds() - tooth.seconds());
      int name = labels.near(tooth.seconds(), 0.3 * pitch);
      wrong += before > 0 && after > 0 && name != 0 && name != tooth.tooth() ? 1 : 0;
    }
    return wrong;
  }
}
