package toothmark.accuracy.decode;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import toothmark.accuracy.CaseName;
import toothmark.accuracy.Dice;
import toothmark.accuracy.LineChart;
import toothmark.accuracy.LineChart.Scale;
import toothmark.accuracy.Speeds;
import toothmark.accuracy.decode.LabelStudy.About;
import toothmark.simulator.Engine;
import toothmark.simulator.Recorder;
import toothmark.simulator.Scenario;
import toothmark.simulator.SimulatedCapture;
import toothmark.simulator.Simulation;
import toothmark.simulator.SpeedProfile;
import toothmark.simulator.Wheel;

/** Label error against noise, sampling, cranking ripple, and over many wheels. */
final class LabelStudies {

  private static final List<String> WHEELS =
      List.of(
          "4-1",
          "6-1",
          "8-1",
          "12-1",
          "12-2",
          "18-1",
          "24-1",
          "24-2",
          "30-1",
          "32-2",
          "36-1",
          "36-2",
          "36-2-2-2",
          "48-1",
          "60-1",
          "60-2",
          "60-3",
          "90-2",
          "120-2",
          "8+1",
          "12+1");

  private LabelStudies() {}

  private static List<String> grid(List<String> wheels, String... numbers) {
    List<String> settings = new ArrayList<>();
    for (String wheel : wheels) {
      for (String number : numbers) {
        settings.add(wheel + "_" + number);
      }
    }
    return settings;
  }

  private static String wheel(CaseName name) {
    return name.setting().split("_")[0];
  }

  private static double number(CaseName name) {
    return Double.parseDouble(name.setting().split("_")[1]);
  }

  private static Scenario healthy(CaseName name) {
    return Scenario.healthy(name.fileName(), name.seed()).withWheel(Wheel.of(wheel(name), 90.0));
  }

  /** Samples a second for so many samples from tooth to tooth at a speed. */
  private static double rateHz(String wheel, double rpm, double samplesPerTooth) {
    double slots = Integer.parseInt(wheel.split("[-+]")[0]);
    return samplesPerTooth * rpm / 60.0 * slots;
  }

  static LabelStudy noise() {
    return new LabelStudy(
        "noise",
        new About(
            "Noise",
            """
            Waves of a coil sensor at one speed between 700 and 6000 rev/min, thirty samples from tooth to tooth, with white noise on every sample: root mean square of the signal over that of the noise, in dB.
            """,
            "wheel, dB",
            Optional.of(new LineChart.Axis("signal over noise of a sample, dB", Scale.LINEAR))),
        grid(List.of("36-1", "60-2"), "40", "20", "10", "6", "3", "0", "-3"),
        40,
        LabelStudies::noisy);
  }

  private static SimulatedCapture noisy(CaseName name) {
    double rpm = Dice.of(name, "scenario").logUniform(700, 6000);
    double rate = rateHz(wheel(name), rpm, 30);
    return withNoise(
        healthy(name)
            .withSpeed(SpeedProfile.steady(rpm))
            .withRecorder(Recorder.oscilloscope(rate, 30 * 60.0 / rpm)),
        number(name));
  }

  /** The same with white noise of so many decibels below the signal, and no other. */
  static SimulatedCapture withNoise(Scenario scenario, double decibels) {
    Scenario ideal = scenario.withRecorder(scenario.recorder().withFront(Recorder.Front.IDEAL));
    double squares = 0;
    double[] volts = Simulation.of(ideal).run().crankVolts().toDoubles();
    for (double v : volts) {
      squares += v * v;
    }
    double noise = StrictMath.sqrt(squares / volts.length) * StrictMath.pow(10.0, -decibels / 20.0);
    Recorder.Front front = new Recorder.Front(0, 0.0, noise, 0.0, 0.0);
    return Simulation.of(scenario.withRecorder(scenario.recorder().withFront(front))).run();
  }

  static LabelStudy sampling() {
    return new LabelStudy(
        "sampling",
        new About(
            "Samples from tooth to tooth",
            """
            Waves of a coil sensor, 10 mV of noise and twelve bits, at one speed between 1500 and 6000 rev/min.
            """,
            "wheel, samples a tooth",
            Optional.of(new LineChart.Axis("samples from tooth to tooth", Scale.LOGARITHMIC))),
        grid(List.of("36-1", "60-2"), "2.2", "2.5", "3", "4", "6", "10", "20", "50"),
        40,
        name -> {
          double rpm = Dice.of(name, "scenario").logUniform(1500, 6000);
          double rate = rateHz(wheel(name), rpm, number(name));
          Recorder recorder = Recorder.oscilloscope(rate, 40 * 60.0 / rpm);
          Scenario scenario = healthy(name).withSpeed(SpeedProfile.steady(rpm));
          return Simulation.of(scenario.withRecorder(recorder)).run();
        });
  }

  static LabelStudy ripple() {
    return new LabelStudy(
        "ripple",
        new About(
            "Ripple of cranking",
            """
            Lists of edges, no strays, nothing lost: a four-cylinder engine turned by the starter at 150 to 250 rev/min for 4 s, with less and less inertia (the engaged starter doubles it), so that every compression slows the crank more. 0.15 is usual; at 0.07 the speed swings by its own mean.
            """,
            "wheel, inertia in kg m²",
            Optional.empty()),
        grid(List.of("60-2", "36-1", "24-1", "12-1", "8-1", "4-1"), "0.2", "0.15", "0.1", "0.07"),
        40,
        LabelStudies::cranking);
  }

  private static SimulatedCapture cranking(CaseName name) {
    Dice dice = Dice.of(name, "scenario");
    Engine usual = Engine.ofCylinders(4);
    Engine light =
        new Engine(
            usual.firingOrder(),
            usual.displacementLitres(),
            usual.compressionRatio(),
            number(name),
            usual.frictionNm());
    Scenario scenario =
        healthy(name)
            .withEngine(light)
            .withSpeed(SpeedProfile.cranking(dice.uniform(150, 250)))
            .withRecorder(Recorder.oscilloscope(1000, 4.0));
    return EdgeCases.of(scenario, name, 0.0, 0.0).capture();
  }

  static LabelStudy starts() {
    return new LabelStudy(
        "starts",
        new About(
            "First fire",
            """
            Lists of edges, nothing lost: a four-cylinder engine on the starter for a second, then its first fire, which takes it from 200 to 1400 rev/min within a turn, and its idle. Strays at random for each pitch.
            """,
            "wheel, strays a pitch",
            Optional.empty()),
        grid(List.of("60-2", "36-1", "24-1", "12-1", "8-1", "6-1", "4-1"), "0", "0.02", "0.1"),
        40,
        LabelStudies::starting);
  }

  private static SimulatedCapture starting(CaseName name) {
    Dice dice = Dice.of(name, "scenario");
    Scenario scenario =
        healthy(name)
            .withSpeed(Speeds.START.draw(dice, 2.5))
            .withRecorder(Recorder.oscilloscope(1000, 2.5));
    return EdgeCases.of(scenario, name, number(name), 0.0).capture();
  }

  static LabelStudy wheels() {
    return new LabelStudy(
        "rims",
        new About(
            "Wheels",
            """
            Waves of a healthy coil sensor, fourteen samples a tooth or more at the greatest speed, in turn idling, held, sweeping, cranking and starting.
            """,
            "wheel",
            Optional.empty()),
        WHEELS,
        25,
        name -> {
          double seconds = 2.0;
          Speeds speeds = Speeds.values()[name.number() % Speeds.values().length];
          Scenario scenario =
              healthy(name)
                  .withSpeed(speeds.draw(Dice.of(name, "scenario"), seconds))
                  .withRecorder(Recorder.oscilloscope(rateHz(wheel(name), 6500, 14), seconds));
          return Simulation.of(scenario).run();
        });
  }
}
