package toothmark.accuracy;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import toothmark.examination.Examination;
import toothmark.findings.Finding;
import toothmark.simulator.Coils;
import toothmark.simulator.Engine;
import toothmark.simulator.Recorder;
import toothmark.simulator.Scenario;
import toothmark.simulator.Simulation;
import toothmark.simulator.SpeedProfile;

/**
 * A cylinder that leaks, in an engine whose starter fights the pressures of all. Where cylinders
 * are odd in number or one is dead, a turn's course of speed is not that of the next.
 */
class CompressionTest {

  @ParameterizedTest
  @CsvSource({"2, 0.7", "3, 0.8", "4, 0.8", "4, 0", "5, 0", "5, 0.65", "6, 0.3", "8, 0.65"})
  void aLeakIsFoundInTheCylinderThatHasIt(int cylinders, double share) {
    Engine engine = Engine.ofCylinders(cylinders);
    int last = engine.firingOrder().get(cylinders - 1);
    Examination e = cranked(engine.withLastCompression(share));
    assertThat(e.diagnosis().findings())
        .filteredOn(f -> f.id().equals("compression-uneven"))
        .singleElement()
        .extracting(Finding::evidence)
        .satisfies(said -> assertThat(List.copyOf(said)).contains("It is cylinder " + last + "."));
  }

  @ParameterizedTest
  @CsvSource({"2", "3", "4", "5", "6", "8"})
  void aSoundEngineIsNotAccused(int cylinders) {
    Examination e = cranked(Engine.ofCylinders(cylinders));
    assertThat(e.diagnosis().findings())
        .extracting(Finding::id)
        .doesNotContain("compression-uneven");
  }

  private static Examination cranked(Engine engine) {
    Scenario cranking =
        Scenario.healthy("cranking", 7)
            .withEngine(engine)
            .withCoils(Coils.WASTED_SPARK.withLayout(Coils.Layout.ONE_PER_CYLINDER))
            .withSpeed(SpeedProfile.cranking(210.0))
            .withRecorder(Recorder.oscilloscope(50e3, 2.6));
    Examination e = InMemory.examine(Simulation.of(cranking).run());
    assertThat(e.observations().crank().orElseThrow().wheel().pattern()).hasToString("36-1");
    return e;
  }
}
