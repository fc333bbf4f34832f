package toothmark.accuracy.decode;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import toothmark.accuracy.CaseName;
import toothmark.accuracy.LineChart;
import toothmark.accuracy.Run;
import toothmark.accuracy.Section;
import toothmark.accuracy.Section.Worst;
import toothmark.accuracy.Study;
import toothmark.accuracy.Table;
import toothmark.simulator.SimulatedCapture;

/**
 * Label error of the analyser and of the two plain decoders over a list of settings.
 *
 * @param name of the study
 * @param about what is varied and how
 * @param settings in the order of the table
 * @param captures of each setting at full size
 * @param maker makes one
 */
record LabelStudy(
    String name,
    About about,
    List<String> settings,
    int captures,
    Function<CaseName, SimulatedCapture> maker)
    implements Study {

  /**
   * Words for the page.
   *
   * @param title heading
   * @param text paragraph
   * @param column head of the first column
   * @param axis of the chart; the settings are then wheel, underscore, number; empty for no chart
   */
  record About(String title, String text, String column, Optional<LineChart.Axis> axis) {}

  @Override
  public SimulatedCapture capture(CaseName name) {
    return maker.apply(name);
  }

  @Override
  public String explain(CaseName name) {
    SimulatedCapture capture = capture(name);
    return Explanation.of(capture, Decoding.of(capture));
  }

  private LabelOutcome measure(CaseName name) {
    SimulatedCapture capture = capture(name);
    return LabelOutcome.of(name, capture, Decoding.of(capture));
  }

  @Override
  public void run(Run run) {
    Section section = run.section();
    section.study(about.title, about.text);
    Table table =
        new Table(
            about.column,
            "captures",
            "wheel wrong",
            "label error",
            "told the wheel",
            "follower",
            "gap ratio");
    Optional<LineChart> chart = about.axis.map(this::chart);
    List<Worst> worst = new ArrayList<>();
    for (String setting : settings) {
      List<LabelOutcome> outcomes =
          run.measure(this, setting, run.captures(captures), this::measure);
      LabelOutcome all = outcomes.stream().reduce(LabelOutcome::plus).orElseThrow();
      row(table, setting, outcomes.size(), all);
      chart.ifPresent(c -> plot(c, setting, all));
      outcomes.forEach(o -> o.worst().ifPresent(worst::add));
    }
    section.table(table);
    chart.ifPresent(c -> section.chart(c, "accuracy-" + name));
    section.worst(worst);
  }

  private LineChart chart(LineChart.Axis x) {
    return new LineChart(
        about.title, x, new LineChart.Axis("label error", LineChart.Scale.LOGARITHMIC));
  }

  private static void row(Table table, String setting, int captures, LabelOutcome all) {
    table.row(
        setting.replace("_", ", "),
        Integer.toString(captures),
        Integer.toString(all.wheelWrong()),
        all.ours().share(),
        all.told().share(),
        all.follower().share(),
        all.gapRatio().share());
  }

  /** Only of the first wheel. */
  private void plot(LineChart chart, String setting, LabelOutcome all) {
    String wheel = settings.get(0).split("_")[0];
    if (setting.startsWith(wheel + "_")) {
      all.plot(chart, wheel, Double.parseDouble(setting.substring(wheel.length() + 1)));
    }
  }
}
