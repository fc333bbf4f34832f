package toothmark.chart;

import java.awt.Graphics2D;
import java.awt.geom.AffineTransform;
import java.awt.geom.NoninvertibleTransformException;
import java.awt.geom.Point2D;
import java.awt.geom.Rectangle2D;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.function.IntToDoubleFunction;
import org.jfree.chart.ChartRenderingInfo;
import org.jfree.chart.axis.NumberAxis;
import org.jfree.chart.plot.CombinedDomainXYPlot;
import org.jfree.chart.plot.Plot;
import org.jfree.chart.plot.PlotRenderingInfo;
import org.jfree.chart.plot.PlotState;
import org.jfree.chart.plot.XYPlot;
import org.jfree.chart.ui.RectangleEdge;
import toothmark.chart.LabelsLayer.Label;
import toothmark.chart.LabelsLayer.Place;
import toothmark.examination.Examination;
import toothmark.rotation.AngleTimeline;
import toothmark.rotation.DecodedCrank;
import toothmark.units.Say;
import toothmark.wheel.DecodedWheel;
import toothmark.wheel.ToothGeometry;

/** The wheel as it looks, and beside it place and signal tooth by tooth. */
final class WheelPlot extends Plot {

  /** So many odd teeth have their numbers beside them, clear of the line of the one picked out. */
  private static final int FEW = 3;

  private static final long serialVersionUID = 1L;

  private final transient WheelDrawing drawing;
  private final transient Plot byTooth;
  private final transient Optional<AngleTimeline> angle;
  private transient PlotRenderingInfo placed = new ChartRenderingInfo(null).getPlotInfo();
  private transient AffineTransform toWheel = new AffineTransform();
  private transient Rectangle2D square = new Rectangle2D.Double();

  /** A wheel alone. */
  WheelPlot(WheelDrawing drawing) {
    this.drawing = drawing;
    this.byTooth = null;
    this.angle = Optional.empty();
  }

  WheelPlot(Examination examination, DecodedWheel wheel, OddTeeth odd, Ink ink) {
    this.angle = examination.observations().crank().map(DecodedCrank::angle);
    this.drawing = WheelDrawing.of(examination, wheel, odd, ink);
    this.byTooth = wheel.geometry().turns() == 0 ? null : byTooth(wheel.geometry(), odd, ink);
  }

  /** Place and signal tooth by tooth. */
  Optional<Plot> byTooth() {
    return Optional.ofNullable(byTooth);
  }

  @Override
  public String getPlotType() {
    return "trigger wheel";
  }

  @Override
  public void draw(
      Graphics2D g, Rectangle2D area, Point2D anchor, PlotState state, PlotRenderingInfo info) {
    double side = Math.min(area.getHeight(), area.getWidth() * 0.55);
    double left = byTooth == null ? area.getCenterX() - side / 2 : area.getX();
    AffineTransform before = g.getTransform();
    g.translate(left, area.getCenterY() - side / 2);
    double scale = Math.min(1, WheelPicture.scale(side));
    g.scale(scale, scale);
    square = new Rectangle2D.Double(0, 0, side / scale, side / scale);
    toWheel = AffineTransform.getTranslateInstance(left, area.getCenterY() - side / 2);
    toWheel.scale(scale, scale);
    drawing.draw(g, square);
    g.setTransform(before);
    if (byTooth != null) {
      double x = area.getX() + side + 14;
      byTooth.draw(
          g,
          new Rectangle2D.Double(x, area.getY() + 8, area.getMaxX() - x, area.getHeight() - 12),
          null,
          null,
          fresh());
    }
  }

  private PlotRenderingInfo fresh() {
    placed = new ChartRenderingInfo(null).getPlotInfo();
    return placed;
  }

  /** Points at an instant on the wheel, rings a tooth, and marks the same beside it. */
  void mark(Graphics2D g, Picked picked, Ink ink) {
    AffineTransform before = g.getTransform();
    g.transform(toWheel);
    degreesAt(picked.instant()).ifPresent(d -> drawing.hand(g, d));
    picked.tooth().ifPresent(k -> drawing.ring(g, k));
    g.setTransform(before);
    if (picked.tooth().isPresent() && byTooth instanceof CombinedDomainXYPlot stack) {
      for (int i = 0; i < placed.getSubplotCount(); i++) {
        XYPlot part = (XYPlot) ((List<?>) stack.getSubplots()).get(i);
        Frame f =
            new Frame(
                placed.getSubplotInfo(i).getDataArea(),
                stack.getDomainAxis(),
                part.getRangeAxis(),
                part);
        Links.upright(g, f, picked.tooth().getAsInt(), ink);
      }
    }
  }

  private OptionalDouble degreesAt(OptionalDouble instant) {
    return instant.isPresent() && angle.filter(a -> a.covers(instant.getAsDouble())).isPresent()
        ? OptionalDouble.of(angle.get().degreesAt(instant.getAsDouble()))
        : OptionalDouble.empty();
  }

  /** The tooth at a place: on the wheel, or beside it. */
  Optional<Picked> at(Point2D place) {
    Point2D onWheel = new Point2D.Double();
    try {
      toWheel.inverseTransform(place, onWheel);
    } catch (NoninvertibleTransformException e) {
      return Optional.empty(); // too small to be seen
    }
    if (square.contains(onWheel)) {
      OptionalInt tooth = drawing.toothAt(drawing.degreesAt(onWheel));
      return tooth.isPresent() ? Optional.of(Picked.tooth(tooth.getAsInt())) : Optional.empty();
    }
    if (byTooth instanceof CombinedDomainXYPlot stack && placed.getDataArea().contains(place)) {
      double k =
          stack
              .getDomainAxis()
              .java2DToValue(place.getX(), placed.getDataArea(), RectangleEdge.BOTTOM);
      return drawing.has((int) Math.round(k))
          ? Optional.of(Picked.tooth((int) Math.round(k)))
          : Optional.empty();
    }
    return Optional.empty();
  }

  private static Plot byTooth(ToothGeometry g, OddTeeth odd, Ink ink) {
    return Plots.stack(
        Axes.linear(Wording.of("axis.tooth"), 1, ink),
        List.of(place(g, odd, ink), signal(g, odd, ink)),
        1,
        1);
  }

  private static XYPlot place(ToothGeometry g, OddTeeth odd, Ink ink) {
    Points lower = new Points();
    Points upper = new Points();
    List<Label> labels = new ArrayList<>();
    for (int k = 1; k <= g.teeth(); k++) {
      double half = Say.EXPAND * g.uncertaintyDegrees(k);
      lower.add(k, -half);
      upper.add(k, half);
    }
    for (int k : odd.teeth()) {
      double late = g.offsetDegrees(k);
      Place over = late > 0 ? Place.ABOVE : Place.BELOW;
      Place side = odd.teeth().size() > FEW ? over : 2 * k < g.teeth() ? Place.RIGHT : Place.LEFT;
      labels.add(new Label(k, late, Integer.toString(k), side, ink.trouble()));
    }
    NumberAxis axis = Axes.linear(Wording.of("axis.late"), 0.2, ink);
    axis.setLowerMargin(0.15);
    axis.setUpperMargin(0.15);
    List<Layer> layers = new ArrayList<>(List.of(new BandLayer(lower, upper, ink.grid())));
    layers.addAll(stems(g.teeth(), g::offsetDegrees, odd, ink));
    layers.add(new LabelsLayer(labels, Lettering.regular(11), ink.paper()));
    return Plots.plot(null, axis, layers, ink);
  }

  private static XYPlot signal(ToothGeometry g, OddTeeth odd, Ink ink) {
    return Plots.plot(
        null,
        Axes.linear(Wording.of("axis.height"), 1, ink),
        stems(g.teeth(), g::amplitude, odd, ink),
        ink);
  }

  /** One stem a tooth; the odd ones stand out. */
  private static List<Layer> stems(int teeth, IntToDoubleFunction value, OddTeeth odd, Ink ink) {
    Points usual = new Points();
    Points strange = new Points();
    for (int k = 1; k <= teeth; k++) {
      (odd.contains(k) ? strange : usual).add(k, value.applyAsDouble(k));
    }
    return List.of(
        new StemsLayer(usual, 0, 2, ink.crank()), new StemsLayer(strange, 0, 3, ink.trouble()));
  }
}
