package toothmark.accuracy.decode;

import java.util.ArrayList;
import java.util.List;
import toothmark.accuracy.CaseName;
import toothmark.accuracy.Run;
import toothmark.accuracy.Section;
import toothmark.accuracy.Section.Held;
import toothmark.accuracy.Section.Worst;
import toothmark.accuracy.Study;
import toothmark.accuracy.Table;
import toothmark.simulator.Recorder;
import toothmark.simulator.Scenario;
import toothmark.simulator.Scenarios;
import toothmark.simulator.Sensor;
import toothmark.simulator.SimulatedCapture;
import toothmark.simulator.Simulation;
import toothmark.wheel.Orientation;
import toothmark.wheel.WheelIdentification;

/** How often a healthy coil sensor is called reversed, and a reversed one healthy. */
final class PolarityStudy implements Study {

  private static final int CAPTURES = 10_000;

  private record Outcome(CaseName name, Orientation orientation, boolean wheelRight, String said) {}

  @Override
  public String name() {
    return "polarity";
  }

  @Override
  public SimulatedCapture capture(CaseName name) {
    long seed = name.seed();
    Scenario scenario = Scenarios.healthy(seed);
    while (scenario.recorder().kind() != Recorder.Kind.OSCILLOSCOPE
        || !(scenario.sensor() instanceof Sensor.VariableReluctance)) {
      scenario = Scenarios.healthy(++seed);
    }
    Sensor.VariableReluctance coil = (Sensor.VariableReluctance) scenario.sensor();
    boolean swapped = name.setting().equals("reversed");
    return Simulation.of(swapped ? scenario.withSensor(coil.reversed()) : scenario).run();
  }

  @Override
  public String explain(CaseName name) {
    SimulatedCapture capture = capture(name);
    return Explanation.of(capture, Decoding.of(capture));
  }

  private Outcome measure(CaseName name) {
    Naming naming = Naming.of(capture(name));
    Orientation orientation =
        naming.search().found().map(WheelIdentification::orientation).orElse(Orientation.UNKNOWN);
    return new Outcome(name, orientation, naming.right(), naming.words());
  }

  @Override
  public void run(Run run) {
    Section section = run.section();
    section.study(
        "Polarity",
        """
        Healthy engines with a coil sensor on an oscilloscope, as the simulator draws them (wheel, speed, sensor, sampling at random), and the same with the sensor's leads swapped. The wheel isn't told.
        """);
    Table table =
        new Table(
            "leads", "captures", "called normal", "called reversed", "unknown", "wheel wrong");
    List<Worst> worst = new ArrayList<>();
    for (String setting : List.of("healthy", "reversed")) {
      int captures = run.captures(setting.equals("healthy") ? CAPTURES : CAPTURES / 4);
      List<Outcome> outcomes = run.measure(this, setting, captures, this::measure);
      long reversed = count(outcomes, Orientation.REVERSED);
      table.row(
          setting,
          Integer.toString(captures),
          Long.toString(count(outcomes, Orientation.NORMAL)),
          Long.toString(reversed),
          Long.toString(count(outcomes, Orientation.UNKNOWN)),
          Long.toString(outcomes.stream().filter(o -> !o.wheelRight).count()));
      if (setting.equals("healthy")) {
        section.target(
            "healthy captures called reversed",
            "none of " + captures,
            Long.toString(reversed),
            Held.when(reversed == 0));
      }
      outcomes.forEach(o -> judge(o, setting, worst));
    }
    section.table(table);
    section.worst(worst);
  }

  private static long count(List<Outcome> outcomes, Orientation orientation) {
    return outcomes.stream().filter(o -> o.orientation == orientation).count();
  }

  private static void judge(Outcome o, String setting, List<Worst> worst) {
    Orientation right = setting.equals("healthy") ? Orientation.NORMAL : Orientation.REVERSED;
    boolean turned = o.orientation != right;
    if (turned || !o.wheelRight) {
      worst.add(new Worst(o.name, turned ? 2 : 1, o.said + ", called " + o.orientation.label()));
    }
  }
}
