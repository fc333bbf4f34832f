package toothmark.accuracy.diagnosis;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;
import toothmark.accuracy.CaseName;
import toothmark.accuracy.InMemory;
import toothmark.accuracy.Run;
import toothmark.accuracy.Section;
import toothmark.accuracy.Section.Held;
import toothmark.accuracy.Section.Worst;
import toothmark.accuracy.Study;
import toothmark.accuracy.Table;
import toothmark.findings.Finding;
import toothmark.simulator.Fault;
import toothmark.simulator.Scenario;
import toothmark.simulator.Scenarios;
import toothmark.simulator.SimulatedCapture;
import toothmark.simulator.Simulation;

/** Faults put into random engines one by one and in pairs, and healthy engines. */
final class FaultStudy implements Study {

  private static final int EACH = 14;
  private static final int PAIRS = 100;
  private static final int HEALTHY = 150;
  private static final double TOP_RIGHT = 0.95;
  private static final double ALL_FOUND = 0.90;
  private static final double FALSE_ALARMS = 0.01;

  @Override
  public String name() {
    return "faults";
  }

  private static String words(Fault fault) {
    return fault.name().toLowerCase(Locale.ROOT).replace('_', '-');
  }

  @Override
  public SimulatedCapture capture(CaseName name) {
    return Simulation.of(scenario(name)).run();
  }

  private static Scenario scenario(CaseName name) {
    long seed = name.seed();
    if (name.setting().equals("healthy")) {
      return Scenarios.healthy(seed);
    }
    if (name.setting().equals("pair")) {
      Scenario scenario = Scenarios.faulty(seed);
      while (scenario.faults().size() < 2) {
        scenario = Scenarios.faulty(++seed);
      }
      return scenario;
    }
    for (Fault fault : Fault.values()) {
      if (words(fault).equals(name.setting())) {
        return Scenarios.faulty(fault, seed);
      }
    }
    throw new IllegalArgumentException("no fault '" + name.setting() + "'");
  }

  @Override
  public String explain(CaseName name) {
    SimulatedCapture capture = capture(name);
    Scenario s = capture.scenario();
    StringBuilder out = new StringBuilder();
    out.append("case ").append(s.name()).append(", seed ").append(s.seed()).append('\n');
    out.append("wheel ").append(s.wheel()).append("\n").append(s.sensor()).append('\n');
    out.append(s.recorder()).append('\n').append(s.speed()).append('\n');
    out.append(s.controller()).append('\n').append(s.coils()).append('\n');
    out.append("disturbances ").append(s.disturbances()).append('\n');
    out.append("fair to say ").append(s.fairFindings()).append('\n');
    for (Finding f : InMemory.examine(capture).diagnosis().findings()) {
      out.append(f.severity()).append(' ').append(f.id()).append(": ").append(f.title());
      out.append("\n  ").append(String.join("\n  ", f.evidence())).append('\n');
    }
    return out + Diagnosed.of(name, capture).summary();
  }

  private List<Diagnosed> diagnose(Run run, String setting, int full) {
    return run.measure(this, setting, run.captures(full), n -> Diagnosed.of(n, capture(n)));
  }

  @Override
  public void run(Run run) {
    Section section = run.section();
    section.study(
        "Faults and healthy engines",
        """
        Engines, wheels, sensors, speeds and recorders as the simulator draws them. *Top right*: the first finding is one that is true. *Found*: all that is true was said. *False faults*: captures in which something was called a fault that is neither true nor a fair consequence.
        """);
    Table table = table();
    Confusion grid = new Confusion();
    List<Diagnosed> faulty = new ArrayList<>();
    for (Fault fault : Fault.values()) {
      if (fault.drawn()) {
        faulty.addAll(one(run, fault, table, grid));
      }
    }
    List<Diagnosed> pairs = diagnose(run, "pair", PAIRS);
    row(table, "two of these", pairs);
    faulty.addAll(pairs);
    List<Diagnosed> healthy = diagnose(run, "healthy", HEALTHY);
    row(table, "nothing", healthy);
    healthy.forEach(d -> grid.add(Diagnosed.NOTHING, d.top()));
    Table beside = table();
    List<Diagnosed> others = new ArrayList<>(healthy);
    for (Fault fault : Fault.values()) {
      if (!fault.drawn()) {
        others.addAll(one(run, fault, beside, grid));
      }
    }
    aims(section, faulty, healthy);
    section.table(table);
    section.paragraph(
        "Beside these, and not counted in the aims: causes that are smaller, seldom met, or of the"
            + " recording. AC coupling shows with a switching sensor only.");
    section.table(beside);
    section.paragraph(
        "What was put first, a row for each single cause, a column under the number of each finding"
            + " that was put first anywhere; – is nothing. Right is what stands under its row's own"
            + " number. Columns that are no rows: "
            + (grid.others().isEmpty() ? "none" : grid.others())
            + ".");
    section.table(grid.table());
    others.addAll(faulty);
    section.worst(worst(others));
  }

  private static Table table() {
    return new Table(
        "what is wrong",
        "captures",
        "top right",
        "all found",
        "false faults",
        "else put first",
        "false");
  }

  private List<Diagnosed> one(Run run, Fault fault, Table table, Confusion grid) {
    List<Diagnosed> some = diagnose(run, words(fault), EACH);
    String finding = fault.finding();
    row(table, finding.equals(words(fault)) ? finding : words(fault) + ": " + finding, some);
    some.forEach(d -> grid.add(finding, d.top()));
    return some;
  }

  private static void row(Table table, String what, List<Diagnosed> some) {
    boolean named = !some.get(0).wanted().isEmpty();
    Map<String, Integer> first = new TreeMap<>();
    Map<String, Integer> falsely = new TreeMap<>();
    for (Diagnosed d : some) {
      if (named && !d.topRight()) {
        first.merge(d.top(), 1, Integer::sum);
      }
      d.falseFaults().forEach(id -> falsely.merge(id, 1, Integer::sum));
    }
    table.row(
        what,
        Integer.toString(some.size()),
        named ? Long.toString(some.stream().filter(Diagnosed::topRight).count()) : "–",
        named ? Long.toString(some.stream().filter(d -> d.missed().isEmpty()).count()) : "–",
        Long.toString(some.stream().filter(d -> !d.falseFaults().isEmpty()).count()),
        list(first),
        list(falsely));
  }

  private static String list(Map<String, Integer> counts) {
    List<String> parts = new ArrayList<>();
    counts.forEach((id, n) -> parts.add(id + " " + n));
    return parts.isEmpty() ? "" : String.join(", ", parts);
  }

  private static void aims(Section section, List<Diagnosed> faulty, List<Diagnosed> healthy) {
    share(
        section,
        "top cause right",
        TOP_RIGHT,
        faulty,
        faulty.stream().filter(Diagnosed::topRight).count());
    share(
        section,
        "all causes found",
        ALL_FOUND,
        faulty,
        faulty.stream().filter(d -> d.missed().isEmpty()).count());
    long alarms = healthy.stream().filter(d -> !d.falseFaults().isEmpty()).count();
    section.target(
        "healthy captures with a fault",
        "≤ " + Table.number(100 * FALSE_ALARMS, 0) + " %",
        alarms + " of " + healthy.size(),
        Held.when(alarms <= FALSE_ALARMS * healthy.size()));
  }

  private static void share(
      Section section, String what, double bound, List<Diagnosed> all, long good) {
    section.target(
        what,
        "≥ " + Table.number(100 * bound, 0) + " %",
        Table.number(100.0 * good / all.size(), 1) + " % of " + all.size(),
        Held.when(good >= bound * all.size()));
  }

  private static List<Worst> worst(List<Diagnosed> all) {
    List<Worst> worst = new ArrayList<>();
    for (Diagnosed d : all) {
      double bad = 2.0 * d.falseFaults().size() + d.missed().size();
      bad += d.wanted().isEmpty() || d.topRight() ? 0 : 1;
      if (bad > 0) {
        worst.add(new Worst(d.name(), bad, d.summary()));
      }
    }
    return worst;
  }
}
