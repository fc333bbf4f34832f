package toothmark.accuracy.decode;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.function.ToDoubleFunction;
import toothmark.accuracy.CaseName;
import toothmark.accuracy.Dice;
import toothmark.accuracy.Run;
import toothmark.accuracy.Section;
import toothmark.accuracy.Section.Held;
import toothmark.accuracy.Section.Worst;
import toothmark.accuracy.Study;
import toothmark.accuracy.Table;
import toothmark.simulator.Pattern;
import toothmark.simulator.Recorder;
import toothmark.simulator.Scenario;
import toothmark.simulator.Sensor;
import toothmark.simulator.SimulatedCapture;
import toothmark.simulator.Simulation;
import toothmark.simulator.SpeedProfile;
import toothmark.simulator.ToothPassing;
import toothmark.simulator.Wheel;
import toothmark.wheel.Orientation;
import toothmark.wheel.WheelIdentification;

/** Which wheel is named, over all kinds of wheel and signal. */
final class WheelStudy implements Study {

  private static final List<String> KINDS = List.of("N-1", "N-2", "N-3", "gaps", "N+1", "N");
  private static final List<String> SIGNALS = List.of("edges", "wave", "reversed");
  private static final int CAPTURES = 120;

  /** On a rim of 150 mm the simulator's 8 mm teeth leave no room for an extra one beyond this. */
  private static final int MOST_WITH_EXTRA = 16;

  /** What can be said of a wheel, from right to wrong. */
  private enum Answer {
    RIGHT("right"),
    WRONG_POLARITY("right, polarity wrong"),
    MULTIPLE("multiple or part"),
    SAME_KIND("other count"),
    OTHER("other kind"),
    NONE("none");

    private final String words;

    Answer(String words) {
      this.words = words;
    }
  }

  /** From this confidence on no finding says that another wheel fits as well. */
  private static final double SURE = 0.9;

  private record Outcome(
      CaseName name, Answer answer, boolean sure, double turns, int slots, String said) {

    /** Wrong, and nothing says that it may be. */
    boolean misleads() {
      return answer == Answer.WRONG_POLARITY || sure && answer != Answer.RIGHT;
    }
  }

  @Override
  public String name() {
    return "wheels";
  }

  @Override
  public SimulatedCapture capture(CaseName name) {
    String[] parts = name.setting().split("_");
    Dice dice = Dice.of(name, "scenario");
    Wheel wheel =
        new Wheel(
            pattern(parts[0], dice),
            new Wheel.Mount(Wheel.Shaft.CRANK, 90.0, 150.0),
            new Wheel.Errors(dice.uniform(0.01, 0.05), dice.uniform(0.0, 0.04), 0.0),
            List.of(),
            Wheel.BoltHead.NONE);
    double turns = dice.logUniform(2.05, 20.0);
    Scenario scenario = Scenario.healthy(name.fileName(), name.seed()).withWheel(wheel);
    scenario = turning(scenario, turns, dice);
    if (parts[1].equals("edges")) {
      return EdgeCases.of(scenario, name, 0.0, 0.0).capture();
    }
    return Simulation.of(
            parts[1].equals("reversed")
                ? scenario.withSensor(Sensor.VariableReluctance.USUAL.reversed())
                : scenario)
        .run();
  }

  private static Pattern pattern(String kind, Dice dice) {
    return switch (kind) {
      case "N" -> Pattern.of(Integer.toString(slots(4, dice)));
      case "N+1" -> Pattern.of((int) Math.round(dice.logUniform(4, MOST_WITH_EXTRA)) + "+1");
      case "gaps" -> gaps(dice);
      default -> {
        int missing = kind.charAt(2) - '0';
        yield Pattern.of(slots(missing + 3, dice) + "-" + missing);
      }
    };
  }

  private static int slots(int fewest, Dice dice) {
    return (int) Math.round(dice.logUniform(fewest, 120));
  }

  /** Two or three runs of different lengths, so that one turn has but one beginning. */
  private static Pattern gaps(Dice dice) {
    int count = dice.between(2, 3);
    int missing = dice.between(1, 2);
    List<Integer> runs = new ArrayList<>();
    List<Integer> gaps = new ArrayList<>();
    Set<Integer> lengths = new HashSet<>();
    int longest = dice.between(8, 40);
    StringBuilder name = new StringBuilder();
    int slots = 0;
    for (int i = 0; i < count; i++) {
      int run = i == 0 ? longest : dice.between(2, longest - 1);
      while (!lengths.add(run)) {
        run = dice.between(2, longest - 1);
      }
      runs.add(run);
      gaps.add(missing);
      slots += run + missing;
      name.append('-').append(missing);
    }
    return Pattern.ofRuns(slots + name.toString(), runs, gaps);
  }

  /** A third on the starter, the rest running; as long as so many turns take. */
  private static Scenario turning(Scenario scenario, double turns, Dice dice) {
    int slots = scenario.wheel().pattern().slots();
    double rpm = dice.chance(0.33) ? dice.uniform(170, 280) : dice.logUniform(700, 6000);
    double seconds = turns * 60.0 / rpm;
    SpeedProfile speed =
        rpm < 300
            ? SpeedProfile.cranking(rpm)
            : dice.chance(0.6) ? SpeedProfile.steady(rpm) : sweep(rpm, dice, seconds);
    double rate = Math.max(20e3, 24.0 * slots * rpm / 60.0);
    return scenario.withSpeed(speed).withRecorder(Recorder.oscilloscope(rate, seconds));
  }

  private static SpeedProfile sweep(double rpm, Dice dice, double seconds) {
    double change = dice.uniform(-4000, 8000) * seconds;
    double low = Math.max(600, rpm - 0.5 * change);
    double high = Math.max(600, rpm + 0.5 * change);
    return SpeedProfile.sweep(low, high, seconds);
  }

  @Override
  public String explain(CaseName name) {
    SimulatedCapture capture = capture(name);
    return Explanation.of(capture, Decoding.of(capture));
  }

  private Outcome measure(CaseName name) {
    SimulatedCapture capture = capture(name);
    Naming naming = Naming.of(capture);
    List<ToothPassing> teeth = capture.truth().teeth();
    double degrees = teeth.get(teeth.size() - 1).crankDegrees() - teeth.get(0).crankDegrees();
    int slots = capture.scenario().wheel().pattern().slots();
    boolean sure = naming.search().found().filter(f -> f.confidence() >= SURE).isPresent();
    return new Outcome(name, answer(name, naming), sure, degrees / 360.0, slots, naming.words());
  }

  private static Answer answer(CaseName name, Naming naming) {
    if (naming.search().found().isEmpty()) {
      return Answer.NONE;
    }
    WheelIdentification found = naming.search().found().get();
    String truth = naming.capture().scenario().wheel().pattern().name();
    String said = found.pattern().toString();
    if (found.pattern().hasReference() == kind(truth).equals("N")) {
      return Answer.OTHER;
    }
    if (kind(truth).equals("N")) {
      return Answer.RIGHT;
    }
    if (naming.right()) {
      boolean reversed = found.orientation() == Orientation.REVERSED;
      boolean should = name.setting().endsWith("reversed");
      return reversed == should ? Answer.RIGHT : Answer.WRONG_POLARITY;
    }
    if (multiple(truth, said)) {
      return Answer.MULTIPLE;
    }
    return kind(said).equals(kind(truth)) ? Answer.SAME_KIND : Answer.OTHER;
  }

  private static String kind(String wheel) {
    String[] gaps = wheel.split("-");
    return wheel.contains("+") ? "N+1" : gaps.length > 2 ? "gaps" : gaps.length == 2 ? "N-" : "N";
  }

  private static boolean multiple(String truth, String said) {
    int a = Integer.parseInt(truth.split("[-+]")[0]);
    int b = Integer.parseInt(said.split("[-+]")[0]);
    return a != b && (a % b == 0 || b % a == 0);
  }

  @Override
  public void run(Run run) {
    Section section = run.section();
    section.study(
        "Naming the wheel",
        """
        Wheels of 4 to 120 slots (even chance for each ratio) with one to three teeth missing, with two or three gaps, with an extra tooth (4 to 16 slots), and plain; 2 to 20 turns; a third of them on the starter, the others held or sweeping; healthy, as lists of edges, as waves of a coil sensor, and as waves of one with its leads swapped. *Right* is the name, every gap in its place, and the polarity of the leads; *wrong and sure*, that it is not, and no finding says that another wheel fits as well (confidence of 0.9 and more). How many teeth a wheel without reference has cannot be seen in its edges, nor its polarity: any count is right that comes with no reference.
        """);
    Table table = new Table(heads());
    List<Worst> worst = new ArrayList<>();
    List<Outcome> all = new ArrayList<>();
    for (String kind : KINDS) {
      for (String signal : SIGNALS) {
        String setting = kind + "_" + signal;
        List<Outcome> outcomes = run.measure(this, setting, run.captures(CAPTURES), this::measure);
        table.row(cells(setting, outcomes));
        outcomes.stream().filter(o -> o.answer != Answer.RIGHT).forEach(o -> worst.add(worst(o)));
        all.addAll(outcomes);
      }
    }
    section.table(table);
    section.table(share(all, "turns in the capture", Outcome::turns, 2, 3, 5, 10, 40));
    section.table(share(all, "slots of the wheel", Outcome::slots, 4, 8, 16, 36, 200));
    aim(section, all);
    confusions(section, all);
    section.worst(worst);
  }

  private static Worst worst(Outcome o) {
    String sure = o.misleads() ? ", sure" : "";
    String what =
        String.format(java.util.Locale.ROOT, "%s over %.1f turns%s", o.said, o.turns, sure);
    return new Worst(o.name, o.turns + (o.misleads() ? 100 : 0), what);
  }

  private static String[] heads() {
    List<String> heads = new ArrayList<>(List.of("wheel, signal", "captures"));
    for (Answer a : Answer.values()) {
      heads.add(a.words);
    }
    heads.add("wrong and sure");
    return heads.toArray(String[]::new);
  }

  private static String[] cells(String setting, List<Outcome> outcomes) {
    List<String> cells =
        new ArrayList<>(List.of(setting.replace("_", ", "), Integer.toString(outcomes.size())));
    for (Answer a : Answer.values()) {
      cells.add(Long.toString(outcomes.stream().filter(o -> o.answer == a).count()));
    }
    cells.add(Long.toString(outcomes.stream().filter(Outcome::misleads).count()));
    return cells.toArray(String[]::new);
  }

  private static Table share(
      List<Outcome> all, String head, ToDoubleFunction<Outcome> what, double... limits) {
    Table table = new Table(head, "captures", "right", "share");
    for (int i = 1; i < limits.length; i++) {
      double from = limits[i - 1];
      double to = limits[i];
      List<Outcome> in =
          all.stream()
              .filter(o -> what.applyAsDouble(o) >= from && what.applyAsDouble(o) < to)
              .toList();
      long right = in.stream().filter(o -> o.answer == Answer.RIGHT).count();
      table.row(
          String.format(java.util.Locale.ROOT, "from %.0f, under %.0f", from, to),
          Integer.toString(in.size()),
          Long.toString(right),
          in.isEmpty() ? "–" : Table.number(right / (double) in.size(), 4));
    }
    return table;
  }

  private static void aim(Section section, List<Outcome> all) {
    List<Outcome> two = all.stream().filter(o -> o.turns >= 2).toList();
    long right = two.stream().filter(o -> o.answer == Answer.RIGHT).count();
    section.target(
        "wheel right, two turns or more",
        "> 0.995",
        Table.number(right / (double) two.size(), 4) + " of " + two.size(),
        Held.when(right > 0.995 * two.size()));
    long misled = two.stream().filter(Outcome::misleads).count();
    section.target(
        "wheel wrong and sure, two turns or more",
        "none of " + two.size(),
        Long.toString(misled),
        Held.when(misled == 0));
  }

  private static void confusions(Section section, List<Outcome> all) {
    Map<String, Integer> counts = new TreeMap<>();
    all.stream()
        .filter(o -> o.answer != Answer.RIGHT)
        .forEach(o -> counts.merge(o.said, 1, Integer::sum));
    List<String> several = new ArrayList<>();
    counts.forEach(
        (said, n) -> {
          if (n > 1) {
            several.add(said + " (" + n + " times)");
          }
        });
    if (!several.isEmpty()) {
      section.paragraph("Confused more than once: " + String.join("; ", several) + ".");
    }
  }
}
