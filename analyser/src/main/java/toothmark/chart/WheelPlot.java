package toothmark.chart;

import java.awt.Graphics2D;
import java.awt.geom.Point2D;
import java.awt.geom.Rectangle2D;
import java.util.ArrayList;
import java.util.List;
import org.jfree.chart.axis.NumberAxis;
import org.jfree.chart.plot.Plot;
import org.jfree.chart.plot.PlotRenderingInfo;
import org.jfree.chart.plot.PlotState;
import org.jfree.chart.plot.XYPlot;
import toothmark.chart.LabelsLayer.Label;
import toothmark.chart.LabelsLayer.Place;
import toothmark.examination.Examination;
import toothmark.units.Say;
import toothmark.wheel.DecodedWheel;
import toothmark.wheel.ToothGeometry;

/** The wheel as it looks, and beside it place and signal tooth by tooth. */
final class WheelPlot extends Plot {

  private static final long serialVersionUID = 1L;

  private final transient WheelDrawing drawing;
  private final transient Plot byTooth;

  WheelPlot(Examination examination, DecodedWheel wheel, OddTeeth odd, Ink ink) {
    this.drawing = new WheelDrawing(examination, wheel, odd, ink);
    this.byTooth = wheel.geometry().turns() == 0 ? null : byTooth(wheel.geometry(), odd, ink);
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
    drawing.draw(g, new Rectangle2D.Double(left, area.getCenterY() - side / 2, side, side));
    if (byTooth != null) {
      double x = area.getX() + side + 14;
      byTooth.draw(
          g,
          new Rectangle2D.Double(x, area.getY() + 8, area.getMaxX() - x, area.getHeight() - 12),
          null,
          null,
          null);
    }
  }

  private static Plot byTooth(ToothGeometry g, OddTeeth odd, Ink ink) {
    Points lower = new Points();
    Points upper = new Points();
    Points place = new Points();
    Points signal = new Points();
    Points oddPlace = new Points();
    Points oddSignal = new Points();
    List<Label> labels = new ArrayList<>();
    for (int k = 1; k <= g.teeth(); k++) {
      double half = Say.EXPAND * g.uncertaintyDegrees(k);
      lower.add(k, -half);
      upper.add(k, half);
      (odd.contains(k) ? oddPlace : place).add(k, g.offsetDegrees(k));
      (odd.contains(k) ? oddSignal : signal).add(k, g.amplitude(k));
    }
    for (int k : odd.teeth()) {
      labels.add(
          new Label(
              k,
              g.offsetDegrees(k),
              Integer.toString(k),
              g.offsetDegrees(k) > 0 ? Place.ABOVE : Place.BELOW,
              ink.trouble()));
    }
    NumberAxis places = Axes.linear("late (°)", 0.2, ink);
    places.setLowerMargin(0.15);
    places.setUpperMargin(0.15);
    NumberAxis signals = Axes.linear("signal (1 = median)", 1, ink);
    XYPlot top =
        Plots.plot(
            null,
            places,
            List.of(
                new BandLayer(lower, upper, ink.grid()),
                new StemsLayer(place, 0, 2, ink.crank()),
                new StemsLayer(oddPlace, 0, 3, ink.trouble()),
                new LabelsLayer(labels, Lettering.regular(11), ink.paper())),
            ink);
    XYPlot bottom =
        Plots.plot(
            null,
            signals,
            List.of(
                new StemsLayer(signal, 0, 2, ink.crank()),
                new StemsLayer(oddSignal, 0, 3, ink.trouble())),
            ink);
    return Plots.stack(Axes.linear("tooth", 1, ink), List.of(top, bottom), 1, 1);
  }
}
