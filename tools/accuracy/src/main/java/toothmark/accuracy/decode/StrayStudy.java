package toothmark.accuracy.decode;

import java.util.ArrayList;
import java.util.List;
import toothmark.accuracy.CaseName;
import toothmark.accuracy.Dice;
import toothmark.accuracy.LineChart;
import toothmark.accuracy.Run;
import toothmark.accuracy.Section;
import toothmark.accuracy.Section.Held;
import toothmark.accuracy.Section.Worst;
import toothmark.accuracy.Speeds;
import toothmark.accuracy.Study;
import toothmark.accuracy.Table;
import toothmark.accuracy.decode.EdgeCases.EdgeCase;
import toothmark.simulator.Recorder;
import toothmark.simulator.Scenario;
import toothmark.simulator.SimulatedCapture;
import toothmark.simulator.Wheel;

/** Labels against the share of strays and of teeth lost, in lists of edges. */
final class StrayStudy implements Study {

  private static final List<String> WHEELS = List.of("36-1", "60-2");
  private static final List<int[]> RATES =
      List.of(
          new int[] {0, 0},
          new int[] {1, 0},
          new int[] {0, 1},
          new int[] {1, 1},
          new int[] {5, 1},
          new int[] {10, 2},
          new int[] {20, 5},
          new int[] {30, 5});
  private static final double SECONDS = 2.0;
  private static final int CAPTURES = 100;

  private record Outcome(LabelOutcome labels, EdgeLabels edges, Reliability reliability) {

    Outcome plus(Outcome o) {
      return new Outcome(
          labels.plus(o.labels), edges.plus(o.edges), reliability.plus(o.reliability));
    }
  }

  @Override
  public String name() {
    return "strays";
  }

  private static EdgeCase edgeCase(CaseName name) {
    String[] parts = name.setting().split("[_+]");
    Dice dice = Dice.of(name, "scenario");
    Speeds speeds = Speeds.values()[name.number() % Speeds.values().length];
    Scenario scenario =
        Scenario.healthy(name.fileName(), name.seed())
            .withWheel(Wheel.of(parts[0], 90.0))
            .withSpeed(speeds.draw(dice, SECONDS))
            .withRecorder(Recorder.oscilloscope(1000, SECONDS));
    double strays = Integer.parseInt(parts[1]) / 100.0;
    double lost = Integer.parseInt(parts[2]) / 100.0;
    return EdgeCases.of(scenario, name, strays, lost);
  }

  @Override
  public SimulatedCapture capture(CaseName name) {
    return edgeCase(name).capture();
  }

  @Override
  public String explain(CaseName name) {
    EdgeCase edgeCase = edgeCase(name);
    Decoding decoding = Decoding.of(edgeCase.capture());
    EdgeLabels edges = EdgeLabels.of(edgeCase, decoding);
    return Explanation.of(edgeCase.capture(), decoding) + "edge by edge: " + edges + "\n";
  }

  private Outcome measure(CaseName name) {
    EdgeCase edgeCase = edgeCase(name);
    Decoding decoding = Decoding.of(edgeCase.capture());
    return new Outcome(
        LabelOutcome.of(name, edgeCase.capture(), decoding),
        EdgeLabels.of(edgeCase, decoding),
        Reliability.of(edgeCase, decoding));
  }

  @Override
  public void run(Run run) {
    Section section = run.section();
    section.study(
        "Strays and lost teeth",
        """
        Lists of edges: every tooth's passing with 0.02° and 0.5 µs of scatter, some taken out and strays put in at random times, all edges alike, so that only times can tell them apart. Captures of 2 s, in turn idling, held at up to 6000 rev/min, sweeping, cranking, and starting from rest. The analyser finds the wheel itself, and in the column *told the wheel* has it from the job sheet; the other two are told it. *Label error*: share of the teeth that gave an edge whose place has no label or a wrong one (within half a pitch). *Each edge*: share of all edges, strays too, that are called the wrong thing; *unavoidable*: the part of it where a stray lies nearer to the tooth's true place than its own edge.
        """);
    Table table =
        new Table(
            "wheel, strays + lost",
            "captures",
            "wheel wrong",
            "label error",
            "told the wheel",
            "each edge",
            "unavoidable",
            "follower",
            "gap ratio");
    LineChart chart =
        new LineChart(
            "Label error against the share of strays",
            new LineChart.Axis("strays, % of teeth", LineChart.Scale.LINEAR),
            new LineChart.Axis("label error", LineChart.Scale.LOGARITHMIC));
    List<Worst> worst = new ArrayList<>();
    Reliability reliability = Reliability.NOTHING;
    for (String wheel : WHEELS) {
      for (int[] rate : RATES) {
        String setting = wheel + "_" + rate[0] + "+" + rate[1];
        List<Outcome> outcomes = run.measure(this, setting, run.captures(CAPTURES), this::measure);
        Outcome all = outcomes.stream().reduce(Outcome::plus).orElseThrow();
        row(table, setting, outcomes.size(), all);
        reliability = reliability.plus(all.reliability);
        if (wheel.equals(WHEELS.get(0))) {
          all.labels.plot(chart, wheel, rate[0]);
        }
        aim(section, setting, all);
        outcomes.forEach(o -> o.labels.worst().ifPresent(worst::add));
      }
    }
    section.table(table);
    section.chart(chart, "accuracy-strays");
    section.paragraph(
        "Labels of all these captures by the confidence that the analyser states, and how many of"
            + " them are wrong (strays taken for a tooth whose own edge lies further off among them).");
    section.table(reliability.table());
    section.worst(worst);
  }

  private static void row(Table table, String setting, int captures, Outcome all) {
    table.row(
        setting.replace("_", ", ").replace("+", " % + ") + " %",
        Integer.toString(captures),
        Integer.toString(all.labels.wheelWrong()),
        all.labels.ours().share(),
        all.labels.told().share(),
        Table.share(all.edges.wrong(), all.edges.edges()),
        Table.share(all.edges.unavoidable(), all.edges.edges()),
        all.labels.follower().share(),
        all.labels.gapRatio().share());
  }

  private static void aim(Section section, String setting, Outcome all) {
    LabelScore score = all.labels.ours();
    double bound = setting.endsWith("_1+1") ? 1e-4 : setting.endsWith("_20+5") ? 1e-2 : 0;
    if (bound > 0) {
      section.target(
          "label error, " + setting.replace("_", ", ").replace("+", " % strays + ") + " % lost",
          "< " + bound,
          all.labels.ours().share(),
          Held.when(score.wrong() < bound * score.teeth()));
    }
  }
}
