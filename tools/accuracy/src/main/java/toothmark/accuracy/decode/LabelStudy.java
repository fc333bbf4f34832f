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

  private record Outcome(
      CaseName name, int wheelWrong, LabelScore ours, LabelScore follower, LabelScore gapRatio) {

    Outcome plus(Outcome o) {
      return new Outcome(
          name,
          wheelWrong + o.wheelWrong,
          ours.plus(o.ours),
          follower.plus(o.follower),
          gapRatio.plus(o.gapRatio));
    }
  }

  @Override
  public SimulatedCapture capture(CaseName name) {
    return maker.apply(name);
  }

  @Override
  public String explain(CaseName name) {
    SimulatedCapture capture = capture(name);
    return Explanation.of(capture, new Decoding(capture));
  }

  private Outcome measure(CaseName name) {
    SimulatedCapture capture = capture(name);
    Decoding decoding = new Decoding(capture);
    boolean oneGap = capture.scenario().wheel().pattern().name().matches("\\d+-\\d+");
    return new Outcome(
        name,
        decoding.wheelRight() ? 0 : 1,
        decoding.ours(),
        oneGap ? decoding.follower() : LabelScore.NOTHING,
        oneGap ? decoding.gapRatio() : LabelScore.NOTHING);
  }

  @Override
  public void run(Run run) {
    Section section = run.section();
    section.study(about.title, about.text);
    Table table =
        new Table(about.column, "captures", "wheel wrong", "label error", "follower", "gap ratio");
    Optional<LineChart> chart = about.axis.map(this::chart);
    List<Worst> worst = new ArrayList<>();
    for (String setting : settings) {
      List<Outcome> outcomes = run.measure(this, setting, run.captures(captures), this::measure);
      Outcome all = outcomes.stream().reduce(Outcome::plus).orElseThrow();
      row(table, setting, outcomes.size(), all);
      chart.ifPresent(c -> plot(c, setting, all));
      outcomes.forEach(o -> judge(o, worst));
    }
    section.table(table);
    chart.ifPresent(c -> section.chart(c, "accuracy-" + name));
    section.worst(worst);
  }

  private LineChart chart(LineChart.Axis x) {
    return new LineChart(
        about.title, x, new LineChart.Axis("label error", LineChart.Scale.LOGARITHMIC));
  }

  private static void row(Table table, String setting, int captures, Outcome all) {
    table.row(
        setting.replace("_", ", "),
        Integer.toString(captures),
        Integer.toString(all.wheelWrong),
        Table.share(all.ours.wrong(), all.ours.teeth()),
        Table.share(all.follower.wrong(), all.follower.teeth()),
        Table.share(all.gapRatio.wrong(), all.gapRatio.teeth()));
  }

  /** Only of the first wheel; no error is drawn as one in all. */
  private void plot(LineChart chart, String setting, Outcome all) {
    String wheel = settings.get(0).split("_")[0];
    if (setting.startsWith(wheel + "_")) {
      double x = Double.parseDouble(setting.substring(wheel.length() + 1));
      chart.point("analyser, " + wheel, x, floored(all.ours));
      chart.point("follower", x, floored(all.follower));
      chart.point("gap ratio", x, floored(all.gapRatio));
    }
  }

  private static double floored(LabelScore score) {
    return Math.max(1.0, score.wrong()) / Math.max(1, score.teeth());
  }

  private static void judge(Outcome o, List<Worst> worst) {
    if (o.wheelWrong > 0 || o.ours.wrong() > 0) {
      String what =
          (o.wheelWrong > 0 ? "wheel wrong, " : "")
              + o.ours.wrong()
              + " of "
              + o.ours.teeth()
              + " labels wrong";
      worst.add(new Worst(o.name, o.ours.share() + o.wheelWrong, what));
    }
  }
}
