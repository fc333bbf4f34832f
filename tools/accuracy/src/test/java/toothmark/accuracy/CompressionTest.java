package toothmark.accuracy;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import toothmark.findings.Finding;
import toothmark.simulator.Engine;
import toothmark.simulator.Recorder;
import toothmark.simulator.Scenario;
import toothmark.simulator.Simulation;
import toothmark.simulator.SpeedProfile;

/** A cylinder that leaks, in an engine whose starter fights the pressures of all. */
class CompressionTest {

  @ParameterizedTest
  @ValueSource(ints = {4, 6, 8})
  void aLeakIsFound(int cylinders) {
    assertThat(says(cylinders, 0.65)).isTrue();
  }

  @ParameterizedTest
  @ValueSource(ints = {4, 6, 8})
  void aSoundEngineIsNotAccused(int cylinders) {
    assertThat(says(cylinders, 1.0)).isFalse();
  }

  private static boolean says(int cylinders, double lastCompression) {
    Scenario cranking =
        Scenario.healthy("cranking", 7)
            .withEngine(Engine.ofCylinders(cylinders).withLastCompression(lastCompression))
            .withSpeed(SpeedProfile.cranking(200.0))
            .withRecorder(Recorder.oscilloscope(50e3, 4.5));
    return InMemory.examine(Simulation.of(cranking).run()).diagnosis().findings().stream()
        .map(Finding::id)
        .anyMatch("compression-uneven"::equals);
  }
}
