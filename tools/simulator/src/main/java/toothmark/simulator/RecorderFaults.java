package toothmark.simulator;

/** What can be wrong with the recording. */
final class RecorderFaults {
  private static final double DEGREES_A_SECOND_PER_RPM = 6.0;

  private RecorderFaults() {}

  /** Three to five samples a tooth at the greatest speed. */
  static Scenario tooSlow(Scenario scenario, Randomness random) {
    double most = scenario.speed().startRpm();
    for (SpeedProfile.Phase phase : scenario.speed().phases()) {
      most = Math.max(most, phase.targetRpm());
    }
    double teethPerSecond = most / 60.0 * scenario.wheel().pattern().slots();
    double rate = Math.rint(teethPerSecond * random.uniform(3.0, 5.0) / 100.0) * 100.0;
    Recorder old = scenario.recorder();
    return scenario.withRecorder(
        new Recorder(old.kind(), rate, old.durationSeconds(), old.startSeconds(), old.front()));
  }

  /** 0.6 to 1.3 turns. */
  static Scenario tooShort(Scenario scenario, Randomness random) {
    double turn = 360.0 / (DEGREES_A_SECOND_PER_RPM * scenario.speed().startRpm());
    Recorder old = scenario.recorder();
    return scenario.withRecorder(
        new Recorder(
            old.kind(),
            old.sampleRateHz(),
            turn * random.uniform(0.6, 1.3),
            old.startSeconds(),
            old.front()));
  }

  static Scenario acCoupled(Scenario scenario, Randomness random) {
    Recorder.Front old = scenario.recorder().front();
    double corner = random.logUniform(2.0, 20.0);
    Recorder.Front front =
        new Recorder.Front(old.bits(), 0.0, old.noiseVolts(), old.offsetVolts(), corner);
    return scenario.withRecorder(scenario.recorder().withFront(front));
  }

  /** Ten times too much or a tenth; the converter's range follows. */
  static Scenario probeFactor(Scenario scenario, Randomness random) {
    Sensor.VariableReluctance coil =
        scenario.sensor() instanceof Sensor.VariableReluctance own
            ? own
            : Sensor.VariableReluctance.USUAL;
    double factor = random.chance(0.5) ? 10.0 : 0.1;
    return scenario.withSensor(coil.withPeakVoltsPer1000Rpm(coil.peakVoltsPer1000Rpm() * factor));
  }
}
