package toothmark.chart;

import java.awt.Color;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.apache.commons.math3.distribution.NormalDistribution;
import org.jfree.chart.axis.NumberAxis;
import toothmark.chart.LabelsLayer.Label;
import toothmark.chart.LabelsLayer.Place;
import toothmark.chart.RunOutline.Turn;
import toothmark.examination.Examination;
import toothmark.units.CrankAngle;
import toothmark.units.Measured;
import toothmark.units.Say;

/**
 * Two captures laid over each other by crank angle: earlier hollow and dashed, later filled and
 * solid. Drawn from what was taken out of them once, so that the captures may be closed.
 */
public final class ComparisonFigures {

  private static final int HEIGHT = 240;

  private final RunOutline before;
  private final RunOutline after;
  private final Ink ink;

  private ComparisonFigures(RunOutline before, RunOutline after, Ink ink) {
    this.before = before;
    this.after = after;
    this.ink = ink;
  }

  /**
   * Takes out of two examinations what is drawn of them.
   *
   * @param before the earlier; its capture must be open
   * @param after the later; its capture must be open
   * @return the figures on light ground
   */
  public static ComparisonFigures of(Examination before, Examination after) {
    return of(RunOutline.of(before), RunOutline.of(after));
  }

  /**
   * Draws two outlines.
   *
   * @param before the earlier
   * @param after the later
   * @return the figures on light ground
   */
  public static ComparisonFigures of(RunOutline before, RunOutline after) {
    return new ComparisonFigures(before, after, Ink.LIGHT);
  }

  /**
   * The same for another ground.
   *
   * @param next light or dark
   * @return the figures
   */
  public ComparisonFigures in(Ink next) {
    return new ComparisonFigures(before, after, next);
  }

  /**
   * All that can be drawn of the two.
   *
   * @return turn, spacing, speed and gap, those that are there
   */
  public List<Figure> all() {
    return Stream.of(turn(), spacing(), speed(), gap()).flatMap(Optional::stream).toList();
  }

  /**
   * One turn of the crank signal of each.
   *
   * @return empty when neither has one
   */
  public Optional<Figure> turn() {
    Optional<Turn> b = before.besides(after);
    Optional<Turn> a = after.besides(before);
    if (b.isEmpty() && a.isEmpty()) {
      return Optional.empty();
    }
    List<Layer> layers =
        lines(
            b.map(Turn::signal).orElseGet(Points::new), a.map(Turn::signal).orElseGet(Points::new));
    NumberAxis across = Axes.linear(Wording.of("axis.angle"), 1, ink);
    across.setRange(0, CrankAngle.REVOLUTION);
    String unit = (a.isEmpty() ? before : after).unit();
    return Optional.of(
        figure(
            Wording.of("compare.turn"),
            told(b.flatMap(t -> swing(t, before.unit())), a.flatMap(t -> swing(t, after.unit()))),
            Plots.plot(
                across, Axes.linear(Wording.of("axis.signal", unit), 1e-9, ink), layers, ink)));
  }

  private static Optional<String> swing(Turn turn, String unit) {
    return turn.signal()
        .up()
        .map(
            r ->
                Wording.of(
                    "compare.turn.swing", Say.scaled(r.getLength(), unit), Say.rpm(turn.rpm())));
  }

  /**
   * Where each tooth stands in both.
   *
   * @return empty when the wheels differ or one was not measured
   */
  public Optional<Figure> spacing() {
    boolean same =
        before.wheel().isPresent()
            && before.wheel().equals(after.wheel())
            && !before.teeth().isEmpty()
            && before.teeth().size() == after.teeth().size();
    return same ? Optional.of(spacing(before.teeth(), after.teeth())) : Optional.empty();
  }

  private Figure spacing(List<Measured> b, List<Measured> a) {
    Points earlier = new Points();
    Points later = new Points();
    Points lower = new Points();
    Points upper = new Points();
    int worst = 1;
    for (int k = 1; k <= a.size(); k++) {
      double place = b.get(k - 1).value();
      earlier.add(k, place);
      later.add(k, a.get(k - 1).value());
      double half = expand(a.size()) * change(b, a, k).standardUncertainty();
      lower.add(k, place - half);
      upper.add(k, place + half);
      worst = change(b, a, k).value() > change(b, a, worst).value() ? k : worst;
    }
    List<Layer> layers = new ArrayList<>();
    layers.add(new BandLayer(lower, upper, ink.grid()));
    layers.addAll(points(earlier, later));
    Measured change = change(b, a, worst);
    boolean told = change.value() > expand(a.size()) * change.standardUncertainty();
    return figure(
        Wording.of("compare.teeth"),
        told
            ? Wording.of("compare.teeth.moved", Integer.toString(worst), Say.degrees(change))
            : Wording.of("compare.teeth.yes"),
        Plots.plot(
            Axes.linear(Wording.of("axis.tooth"), 1, ink),
            Axes.linear(Wording.of("axis.late"), 0.2, ink),
            layers,
            ink));
  }

  /** So that chance moves any of the teeth in one comparison of twenty (Bonferroni). */
  private static double expand(int teeth) {
    return new NormalDistribution().inverseCumulativeProbability(1 - 0.025 / teeth);
  }

  private static Measured change(List<Measured> before, List<Measured> after, int tooth) {
    Measured b = before.get(tooth - 1);
    Measured a = after.get(tooth - 1);
    return new Measured(
        Math.abs(a.value() - b.value()),
        Math.hypot(b.standardUncertainty(), a.standardUncertainty()));
  }

  /**
   * Speed of both over the turns of the crank.
   *
   * @return empty when neither turned
   */
  public Optional<Figure> speed() {
    if (before.speed().isEmpty() && after.speed().isEmpty()) {
      return Optional.empty();
    }
    return Optional.of(
        figure(
            Wording.of("compare.speed"),
            told(between(before), between(after)),
            Plots.plot(
                Axes.linear(Wording.of("axis.turns"), 1, ink),
                Axes.linear(Wording.of("axis.speed"), 50, ink),
                lines(before.speed(), after.speed()),
                ink)));
  }

  private static Optional<String> between(RunOutline o) {
    return o.speed()
        .up()
        .map(
            rpm ->
                Wording.of(
                    "compare.speed.range",
                    Say.number(rpm.getLowerBound(), 0),
                    Say.rpm(rpm.getUpperBound())));
  }

  /**
   * The gap between actual and commanded advance of both.
   *
   * @return empty when neither has one
   */
  public Optional<Figure> gap() {
    if (before.gap().isEmpty() && after.gap().isEmpty()) {
      return Optional.empty();
    }
    List<Layer> layers = new ArrayList<>();
    layers.add(
        new RulesLayer(new double[] {0}, RulesLayer.Way.LEVEL, ink.commanded(), Ink.dashed(2)));
    layers.addAll(points(before.gap(), after.gap()));
    return Optional.of(
        figure(
            Wording.of("compare.gap"),
            told(fit(before), fit(after)),
            Plots.plot(
                Axes.linear(Wording.of("axis.speed"), 50, ink),
                Axes.linear(Wording.of("axis.gap"), 2, ink),
                layers,
                ink)));
  }

  private static Optional<String> fit(RunOutline o) {
    return o.offsetDegrees().map(Say::degrees).map(offset -> fit(offset, o.delaySeconds()));
  }

  private static String fit(String offset, Optional<Measured> delaySeconds) {
    return delaySeconds
        .map(d -> Say.interval(d.times(1e6), Say.THIN + "µs"))
        .map(delay -> Wording.of("compare.gap.delay", offset, delay))
        .orElse(offset);
  }

  /** What both have to tell. */
  private static String told(Optional<String> before, Optional<String> after) {
    String earlier = before.orElse(Wording.of("compare.nothing"));
    String later = after.orElse(Wording.of("compare.nothing"));
    return Wording.of("compare.both", earlier, later);
  }

  private List<Layer> lines(Points earlier, Points later) {
    List<Layer> layers = new ArrayList<>();
    List<Label> labels = new ArrayList<>();
    line(earlier, earlier(), Ink.dashed(1.4), layers);
    line(later, ink.crank(), Ink.line(1.4), layers);
    name(earlier, Wording.of("compare.before"), earlier(), 0.3, labels);
    name(later, Wording.of("compare.after"), ink.crank(), 0.7, labels);
    layers.add(new LabelsLayer(labels, Lettering.strong(11), ink.paper()));
    return layers;
  }

  private static void line(
      Points points, Color colour, java.awt.Stroke stroke, List<Layer> layers) {
    if (!points.isEmpty()) {
      layers.add(new CurveLayer(SeriesCurve.through(points), colour, stroke));
    }
  }

  private List<Layer> points(Points earlier, Points later) {
    List<Label> labels = new ArrayList<>();
    name(earlier, Wording.of("compare.before"), earlier(), 0.25, labels);
    name(later, Wording.of("compare.after"), ink.crank(), 0.75, labels);
    return List.of(
        new MarksLayer(earlier, Mark.HOLLOW, 7, new MarksLayer.Style(earlier(), ink.paper())),
        new MarksLayer(later, Mark.DOT, 5, new MarksLayer.Style(ink.crank(), ink.paper())),
        new LabelsLayer(labels, Lettering.strong(11), ink.paper()));
  }

  private Color earlier() {
    return ink.quiet();
  }

  private static void name(
      Points points, String text, Color colour, double share, List<Label> labels) {
    if (!points.isEmpty()) {
      int i = (int) (share * (points.size() - 1));
      labels.add(new Label(points.x(i), points.y(i), text, Place.ABOVE, colour));
    }
  }

  private Figure figure(String question, String answer, org.jfree.chart.plot.Plot plot) {
    return new Figure(question, answer, Plots.chart(plot), HEIGHT);
  }
}
