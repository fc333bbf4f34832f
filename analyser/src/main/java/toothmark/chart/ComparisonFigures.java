package toothmark.chart;

import java.awt.Color;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.Stream;
import org.jfree.chart.axis.NumberAxis;
import org.jfree.data.Range;
import toothmark.chart.LabelsLayer.Label;
import toothmark.chart.LabelsLayer.Place;
import toothmark.examination.Examination;
import toothmark.timing.GapFit;
import toothmark.units.CrankAngle;
import toothmark.units.Measured;
import toothmark.units.Say;
import toothmark.wheel.ToothGeometry;

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
    double rpm = commonRpm(before, after);
    return new ComparisonFigures(RunOutline.of(before, rpm), RunOutline.of(after, rpm), Ink.LIGHT);
  }

  /** The middle of the speeds that both have, else of all: signals grow with speed. */
  private static double commonRpm(Examination before, Examination after) {
    Optional<Range> b = Timeline.turnSpeeds(before).up();
    Optional<Range> a = Timeline.turnSpeeds(after).up();
    if (b.isEmpty() || a.isEmpty()) {
      return b.or(() -> a).map(Range::getCentralValue).orElse(0.0);
    }
    double low = Math.max(b.get().getLowerBound(), a.get().getLowerBound());
    double high = Math.min(b.get().getUpperBound(), a.get().getUpperBound());
    return (low + high) / 2;
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
    if (before.turn().isEmpty() && after.turn().isEmpty()) {
      return Optional.empty();
    }
    List<Layer> layers = lines(RunOutline::turn);
    NumberAxis across = Axes.linear(Wording.of("axis.angle"), 1, ink);
    across.setRange(0, CrankAngle.REVOLUTION);
    String unit = (after.turn().isEmpty() ? before : after).unit();
    return Optional.of(
        figure(
            Wording.of("compare.turn"),
            told(ComparisonFigures::swing),
            Plots.plot(
                across, Axes.linear(Wording.of("axis.signal", unit), 1e-9, ink), layers, ink)));
  }

  private static Optional<String> swing(RunOutline o) {
    return o.turn()
        .up()
        .map(
            r ->
                Wording.of(
                    "compare.turn.swing",
                    Say.scaled(r.getLength(), o.unit()),
                    Say.rpm(o.turnRpm())));
  }

  /**
   * Where each tooth stands in both.
   *
   * @return empty when the wheels differ or one was not measured
   */
  public Optional<Figure> spacing() {
    boolean same =
        before.wheel().isPresent()
            && after.wheel().isPresent()
            && before.wheel().get().pattern().equals(after.wheel().get().pattern())
            && before.wheel().get().geometry().turns() > 0
            && after.wheel().get().geometry().turns() > 0;
    return same
        ? Optional.of(spacing(before.wheel().get().geometry(), after.wheel().get().geometry()))
        : Optional.empty();
  }

  private Figure spacing(ToothGeometry b, ToothGeometry a) {
    Points earlier = new Points();
    Points later = new Points();
    Points lower = new Points();
    Points upper = new Points();
    int worst = 1;
    for (int k = 1; k <= a.teeth(); k++) {
      earlier.add(k, b.offsetDegrees(k));
      later.add(k, a.offsetDegrees(k));
      double half = Say.EXPAND * Math.hypot(b.uncertaintyDegrees(k), a.uncertaintyDegrees(k));
      lower.add(k, b.offsetDegrees(k) - half);
      upper.add(k, b.offsetDegrees(k) + half);
      worst = change(b, a, k).value() > change(b, a, worst).value() ? k : worst;
    }
    List<Layer> layers = new ArrayList<>();
    layers.add(new BandLayer(lower, upper, ink.grid()));
    layers.addAll(points(earlier, later));
    Measured change = change(b, a, worst);
    boolean told = change.value() > Say.EXPAND * change.standardUncertainty();
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

  private static Measured change(ToothGeometry b, ToothGeometry a, int tooth) {
    return new Measured(
        Math.abs(a.offsetDegrees(tooth) - b.offsetDegrees(tooth)),
        Math.hypot(b.uncertaintyDegrees(tooth), a.uncertaintyDegrees(tooth)));
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
            told(o -> o.speed().up().map(ComparisonFigures::between)),
            Plots.plot(
                Axes.linear(Wording.of("axis.turns"), 1, ink),
                Axes.linear(Wording.of("axis.speed"), 50, ink),
                lines(RunOutline::speed),
                ink)));
  }

  private static String between(Range rpm) {
    return Wording.of(
        "compare.speed.range", Say.number(rpm.getLowerBound(), 0), Say.rpm(rpm.getUpperBound()));
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
            told(o -> o.fit().map(ComparisonFigures::fit)),
            Plots.plot(
                Axes.linear(Wording.of("axis.speed"), 50, ink),
                Axes.linear(Wording.of("axis.gap"), 2, ink),
                layers,
                ink)));
  }

  private static String fit(GapFit fit) {
    String offset = Say.degrees(fit.offsetDegrees());
    return fit.delaySeconds()
        .map(d -> Say.interval(d.times(1e6), Say.THIN + "µs"))
        .map(delay -> Wording.of("compare.gap.delay", offset, delay))
        .orElse(offset);
  }

  /** The same words of both, for those that have something to tell. */
  private String told(Function<RunOutline, Optional<String>> words) {
    String earlier = words.apply(before).orElse(Wording.of("compare.nothing"));
    String later = words.apply(after).orElse(Wording.of("compare.nothing"));
    return Wording.of("compare.both", earlier, later);
  }

  private List<Layer> lines(Function<RunOutline, Points> of) {
    List<Layer> layers = new ArrayList<>();
    List<Label> labels = new ArrayList<>();
    line(of.apply(before), earlier(), Ink.dashed(1.4), layers);
    line(of.apply(after), ink.crank(), Ink.line(1.4), layers);
    name(of.apply(before), Wording.of("compare.before"), earlier(), 0.3, labels);
    name(of.apply(after), Wording.of("compare.after"), ink.crank(), 0.7, labels);
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
