package toothmark.simulator;

import java.util.ArrayList;
import java.util.List;
import toothmark.simulator.Disturbance.OpenCircuit;
import toothmark.simulator.Disturbance.Window;
import toothmark.simulator.Sensor.VariableReluctance;

/** What can be wrong with the sensor, its clearance and its wires. */
final class SensorFaults {
  private static final double CRANKING_RPM = 200.0;

  private SensorFaults() {}

  /** Height of the signal at the start of the capture, in volts. */
  static double signalVolts(Scenario scenario) {
    if (!(scenario.sensor() instanceof VariableReluctance coil)) {
      return 4.8;
    }
    double start = scenario.speed().startRpm();
    double wavelengthMm =
        Math.PI * scenario.wheel().mount().diameterMm() / scenario.wheel().pattern().slots();
    double extraMm = coil.gapMm() - VariableReluctance.REFERENCE_GAP_MM;
    double rpm = start > 0.0 ? start : CRANKING_RPM;
    double loss = StrictMath.exp(-2.0 * Math.PI * extraMm / wavelengthMm);
    return coil.peakVoltsPer1000Rpm() * rpm / 1000.0 * loss;
  }

  private static VariableReluctance coil(Scenario scenario) {
    return scenario.sensor() instanceof VariableReluctance coil ? coil : VariableReluctance.USUAL;
  }

  static Scenario reversed(Scenario scenario, Randomness random) {
    return scenario.withSensor(coil(scenario).reversed());
  }

  /** Leaves a peak of 50 to 180 mV, most of the loss by clearance. */
  static Scenario weak(Scenario scenario, Randomness random) {
    double gap = random.uniform(1.8, 3.0);
    Scenario wide = scenario.withSensor(coil(scenario).withGapMm(gap));
    double target = random.logUniform(0.05, 0.18);
    double factor = Math.min(1.0, target / signalVolts(wide));
    VariableReluctance coil = coil(wide);
    return wide.withSensor(coil.withPeakVoltsPer1000Rpm(coil.peakVoltsPer1000Rpm() * factor));
  }

  /** The range holds 30 to 65 % of the greatest voltage. */
  static Scenario clipped(Scenario scenario, Randomness random) {
    Scenario measured = scenario.withSensor(coil(scenario));
    double peak = new RecordedTraces(measured, new Machine(measured)).crankPeakVolts();
    double range = peak * random.uniform(0.3, 0.65);
    Recorder.Front old = measured.recorder().front();
    Recorder.Front front =
        new Recorder.Front(Math.max(8, old.bits()), range, old.noiseVolts(), 0.0, 0.0);
    return measured.withRecorder(measured.recorder().withFront(front));
  }

  static Scenario wrongEdge(Scenario scenario, Randomness random) {
    double share = random.uniform(0.35, 0.6);
    Sensor.Hall healthy =
        new Sensor.Hall(
            Sensor.Edge.FALLING, Sensor.Edge.FALLING, share, 0.01, random.uniform(0.12, 0.3));
    return scenario.withSensor(healthy.timedAtTheOtherEdge());
  }

  static Scenario ignitionInterference(Scenario scenario, Randomness random) {
    double peak = signalVolts(scenario) * random.uniform(1.2, 2.5);
    double ring = random.logUniform(8e3, 30e3);
    double decay = random.logUniform(30e-6, 80e-6);
    double delay = random.uniform(0.0, 20e-6);
    return scenario.withDisturbance(new Disturbance.SparkBursts(peak, ring, decay, delay));
  }

  static Scenario spikes(Scenario scenario, Randomness random) {
    double peak = signalVolts(scenario) * random.uniform(1.0, 2.5);
    double rate = random.logUniform(25.0, 150.0);
    double width = random.logUniform(20e-6, 60e-6);
    return scenario.withDisturbance(new Disturbance.Spikes(rate, peak, width));
  }

  static Scenario hum(Scenario scenario, Randomness random) {
    double peak = signalVolts(scenario) * random.uniform(0.25, 0.55);
    if (random.chance(0.3)) {
      double order = 36.0 * random.uniform(2.0, 3.0);
      return scenario.withDisturbance(new Disturbance.AlternatorRipple(order, peak));
    }
    double frequency = random.chance(0.6) ? 50.0 : 60.0;
    double third = random.uniform(0.0, 0.3);
    return scenario.withDisturbance(new Disturbance.Hum(frequency, peak, third));
  }

  /** Two to six openings of 4 to 60 ms, none in the first or last eighth of the capture. */
  static Scenario intermittent(Scenario scenario, Randomness random) {
    double duration = scenario.recorder().durationSeconds();
    int count = 2 + random.below(5);
    double room = 0.75 * duration / count;
    List<Window> windows = new ArrayList<>();
    for (int i = 0; i < count; i++) {
      double length = Math.min(0.6 * room, random.logUniform(0.004, 0.06));
      double from = 0.125 * duration + i * room + random.uniform(0.0, room - length);
      windows.add(new Window(from, from + length));
    }
    return scenario.withDisturbance(new OpenCircuit(windows));
  }

  static Scenario silent(Scenario scenario, Randomness random) {
    double duration = scenario.recorder().durationSeconds();
    return scenario.withDisturbance(new OpenCircuit(List.of(new Window(0.0, duration + 1.0))));
  }

  /** Until the engine has run away from the starter. */
  static Scenario starterNoise(Scenario scenario, Randomness random) {
    double until = random.uniform(0.05, 0.15);
    for (SpeedProfile.Phase phase : scenario.speed().phases()) {
      until += phase.drive() == SpeedProfile.Drive.STARTER ? phase.seconds() : 0.0;
    }
    double peak = signalVolts(scenario) * random.uniform(0.3, 0.8);
    return scenario.withDisturbance(new Disturbance.StarterNoise(until, 900.0, peak));
  }

  /** Half to once the height of the signal of an engine that idles. */
  static Scenario groundShift(Scenario scenario, Randomness random) {
    double idle = coil(scenario).peakVoltsPer1000Rpm();
    double volts = idle * random.uniform(0.15, 0.5) * (random.chance(0.7) ? 1.0 : -1.0);
    return scenario.withDisturbance(new Disturbance.GroundShift(volts, 3e-3));
  }

  static Scenario bracket(Scenario scenario, Randomness random) {
    double kick = random.uniform(0.25, 0.6);
    double mm = random.uniform(0.1, 0.4) * (random.chance(0.5) ? 1.0 : -1.0);
    return vibrating(scenario, random, kick, 0.4, mm);
  }

  static Scenario twist(Scenario scenario, Randomness random) {
    return vibrating(scenario, random, random.uniform(0.2, 0.5), 0.05, 0.0);
  }

  /** At a frequency that a harmonic of the firings crosses in the sweep. */
  private static Scenario vibrating(
      Scenario scenario, Randomness random, double kick, double irregularity, double mm) {
    double hertz = random.uniform(110.0, 240.0);
    double damping = random.uniform(0.015, 0.04);
    Vibration vibration = new Vibration(hertz, damping, kick, irregularity, mm);
    return scenario.withWheel(scenario.wheel().withVibration(vibration));
  }

  /** Seldom over the third of the peak at which an input stage arms, but for a slow turn. */
  static Scenario gapNoise(Scenario scenario, Randomness random) {
    double rms = signalVolts(scenario) * random.uniform(0.07, 0.1);
    return scenario.withDisturbance(new Disturbance.WhiteNoise(rms));
  }
}
