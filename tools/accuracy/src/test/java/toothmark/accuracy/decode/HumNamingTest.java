package toothmark.accuracy.decode;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import toothmark.simulator.Disturbance;
import toothmark.simulator.Recorder;
import toothmark.simulator.Scenario;
import toothmark.simulator.Simulation;
import toothmark.simulator.SpeedProfile;
import toothmark.simulator.Wheel;

/**
 * Wheels of few teeth on the starter, whose wave is as slow as the mains and weaker than what they
 * induce. The wheel is the simulator's.
 */
class HumNamingTest {

  @ParameterizedTest
  @CsvSource({
    "12-1, 200, 50, 0.4", "12-1, 200, 60, 0.2", "12-1, 200, 60, 1", "12-1, 200, 50, 2",
    "24-1, 200, 60, 0.4", "24-1, 200, 60, 1", "8-1, 250, 50, 0.2", "12-1, 250, 60, 0.2"
  })
  void namesTheWheelThroughHum(String wheel, double rpm, double hertz, double volts) {
    Scenario s =
        Scenario.healthy("hum", 3)
            .withWheel(Wheel.of(wheel, 90))
            .withSpeed(SpeedProfile.cranking(rpm))
            .withRecorder(Recorder.oscilloscope(20e3, 1.6))
            .withDisturbance(new Disturbance.Hum(hertz, volts, 0.2));
    assertThat(Naming.of(Simulation.of(s).run()).search().found().orElseThrow().pattern())
        .hasToString(wheel);
  }
}
