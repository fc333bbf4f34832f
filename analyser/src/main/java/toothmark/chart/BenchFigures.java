package toothmark.chart;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.jfree.chart.axis.NumberAxis;
import org.jfree.chart.axis.SymbolAxis;
import toothmark.chart.LabelsLayer.Label;
import toothmark.chart.LabelsLayer.Place;
import toothmark.timing.FiringPlan;
import toothmark.timing.PistonStop;
import toothmark.timing.StrobeWorksheet;
import toothmark.units.CrankAngle;
import toothmark.units.Measured;
import toothmark.units.Say;
import toothmark.wheel.ToothGeometry;
import toothmark.wheel.WheelPattern;

/** Draws what sums at the bench came to. */
public final class BenchFigures {

  private static final int HEIGHT = 260;
  private static final int WHEEL_HEIGHT = 380;
  private static final int STEPS = 24;

  private final Ink ink;

  /**
   * Draws for a ground.
   *
   * @param ink light or dark
   */
  public BenchFigures(Ink ink) {
    this.ink = ink;
  }

  /**
   * Readings with a timing light: the gap over speed, and the line through it.
   *
   * @param sheet the readings
   * @return the figure
   */
  public Figure of(StrobeWorksheet sheet) {
    StrobeWorksheet.Result fit = sheet.fit();
    Points readings = new Points();
    Points lower = new Points();
    Points upper = new Points();
    Points line = new Points();
    sheet.readings().forEach(r -> readings.add(r.rpm(), r.gapDegrees()));
    double most = sheet.readings().stream().mapToDouble(r -> r.rpm()).max().orElseThrow();
    for (int i = 0; i <= STEPS; i++) {
      double rpm = most * i / STEPS;
      Measured gap = fit.gapAt(rpm);
      double half = Say.EXPAND * gap.standardUncertainty();
      line.add(rpm, gap.value());
      lower.add(rpm, gap.value() - half);
      upper.add(rpm, gap.value() + half);
    }
    List<Layer> layers =
        List.of(
            new BandLayer(lower, upper, ink.thin(ink.trouble(), 0.3)),
            new RulesLayer(new double[] {0}, RulesLayer.Way.LEVEL, ink.commanded(), Ink.dashed(2)),
            new CurveLayer(SeriesCurve.through(line), ink.trouble(), Ink.line(1.8)),
            new MarksLayer(readings, Mark.DOT, 7, new MarksLayer.Style(ink.text(), ink.paper())));
    return new Figure(
        Wording.of("strobe.question"),
        Wording.of("strobe.answer"),
        Plots.chart(
            Plots.plot(
                Axes.linear(Wording.of("axis.speed"), 50, ink),
                Axes.linear(Wording.of("axis.gap.seen"), 2, ink),
                layers,
                ink)),
        HEIGHT);
  }

  /**
   * Touches of a piston stop: each pair, and top dead centre midway.
   *
   * @param stops at least one pair
   * @return the figure
   */
  public Figure of(List<PistonStop> stops) {
    Points before = new Points();
    Points after = new Points();
    Points middles = new Points();
    Points ends = new Points();
    for (int i = 0; i < stops.size(); i++) {
      double lane = stops.size() - 1.0 - i;
      after.add(-stops.get(i).afterDegrees(), lane);
      before.add(stops.get(i).beforeDegrees(), lane);
      middles.add(stops.get(i).readingAtTopDegrees().value(), lane);
      ends.add(-stops.get(i).afterDegrees(), lane);
      ends.add(stops.get(i).beforeDegrees(), lane);
    }
    double top = PistonStop.readingAtTopDegrees(stops).value();
    boolean early = top >= 0;
    List<Layer> layers =
        List.of(
            new RulesLayer(new double[] {0}, RulesLayer.Way.UPRIGHT, ink.quiet(), Ink.line(1)),
            new RulesLayer(new double[] {top}, RulesLayer.Way.UPRIGHT, ink.tdc(), Ink.line(2)),
            new BarsLayer(after, before, 3, ink.thin(ink.text(), 0.35)),
            new MarksLayer(ends, Mark.DOT, 9, new MarksLayer.Style(ink.text(), ink.paper())),
            new MarksLayer(middles, Mark.DOT, 9, new MarksLayer.Style(ink.tdc(), ink.paper())),
            new LabelsLayer(
                List.of(
                    new Label(
                        top,
                        Double.NaN,
                        Wording.of("piston.true"),
                        early ? Place.LEFT : Place.RIGHT,
                        ink.tdc()),
                    new Label(
                        0,
                        Double.NaN,
                        Wording.of("piston.mark"),
                        early ? Place.RIGHT : Place.LEFT,
                        ink.text())),
                Lettering.strong(12),
                ink.paper()));
    NumberAxis across = Axes.linear(Wording.of("axis.pointer"), 10, ink);
    across.setInverted(true);
    SymbolAxis lanes =
        Axes.lanes(
            IntStream.rangeClosed(1, stops.size())
                .mapToObj(i -> Wording.of("piston.pair", Integer.toString(i)))
                .toList(),
            ink);
    return new Figure(
        Wording.of("piston.question"),
        Wording.of("piston.answer"),
        Plots.chart(Plots.plot(across, lanes, layers, ink)),
        HEIGHT);
  }

  /**
   * A plan of wheel and ignition: the crank from charge to spark of each cylinder at the most
   * advance, on the wheel without faults.
   *
   * @param plan what is asked of the wheel
   * @return the figure
   */
  public Figure of(FiringPlan plan) {
    WheelPattern wheel = plan.wheel();
    double[] none = new double[wheel.teeth()];
    double[] even = none.clone();
    Arrays.fill(even, 1);
    ToothGeometry geometry = new ToothGeometry(none, none, even, 0);
    WheelMarks marks =
        new WheelMarks(
            firings(plan),
            WheelMarks.Tdc.first(OptionalDouble.of(CrankAngle.wrap(plan.tooth1BtdcDegrees()))),
            Wording.of("firing.planned"));
    return new Figure(
        Wording.of("firing.question"),
        Wording.of("firing.answer"),
        Plots.chart(
            new WheelPlot(new WheelDrawing(wheel, geometry, OddTeeth.of(geometry), marks, ink))),
        WHEEL_HEIGHT);
  }

  /** Cylinders that fire at the same place of the wheel, a turn apart, share an arc. */
  private List<WheelMarks.Firing> firings(FiringPlan plan) {
    Map<Long, List<Integer>> places = new LinkedHashMap<>();
    for (int cylinder : plan.order().order()) {
      places.computeIfAbsent(place(plan, cylinder), p -> new ArrayList<>()).add(cylinder);
    }
    List<WheelMarks.Firing> firings = new ArrayList<>();
    for (List<Integer> cylinders : places.values()) {
      double spark = spark(plan, cylinders.get(0));
      firings.add(
          new WheelMarks.Firing(
              cylinders.stream().map(String::valueOf).collect(Collectors.joining(", ")),
              ink.coil(firings.size()),
              spark - plan.dwellDegrees(),
              spark,
              spark));
    }
    return firings;
  }

  private static long place(FiringPlan plan, int cylinder) {
    return Math.round(1e3 * spark(plan, cylinder)) % 360_000;
  }

  private static double spark(FiringPlan plan, int cylinder) {
    return CrankAngle.wrap(plan.teeth().afterTooth1(cylinder, plan.demand().mostAdvanceDegrees()));
  }
}
