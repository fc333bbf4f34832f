package toothmark.chart;

import java.awt.AlphaComposite;
import java.awt.Composite;
import java.awt.Graphics2D;
import java.awt.geom.Ellipse2D;
import java.awt.geom.Line2D;
import java.awt.geom.Point2D;
import java.awt.geom.Rectangle2D;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.jfree.chart.axis.ValueAxis;
import org.jfree.chart.plot.CombinedDomainXYPlot;
import org.jfree.chart.plot.Plot;
import org.jfree.chart.plot.PlotRenderingInfo;
import org.jfree.chart.plot.XYPlot;
import toothmark.findings.Finding;
import toothmark.units.Interval;

/** Marks in a chart that was drawn what is picked out, and tells what stands at a place of it. */
final class Links {

  /** As near as this a click means a thing. */
  static final double NEAR = 9;

  private static final double RING = 15;
  private static final double BAR = 4;
  private static final float SHADE = 0.13f;

  private Links() {}

  private record Drawn(Frame frame, List<Layer> layers) {

    boolean isTime() {
      return Axes.TIME.equals(frame.xAxis().getLabel());
    }
  }

  static void mark(Graphics2D g, Plot plot, PlotRenderingInfo info, Picked picked, Ink ink) {
    if (plot instanceof WheelPlot wheel) {
      wheel.mark(g, picked, ink);
    }
    for (Drawn part : parts(plot, info)) {
      if (part.isTime()) {
        time(g, part.frame(), picked, ink);
      }
      part.layers().forEach(l -> l.mark(g, part.frame(), picked, ink));
    }
  }

  private static void time(Graphics2D g, Frame frame, Picked picked, Ink ink) {
    Rectangle2D a = frame.area();
    if (picked.span().isPresent()) {
      Interval span = picked.span().get();
      double from = Math.max(a.getMinX(), frame.x(span.startInclusive()));
      double to = Math.min(a.getMaxX(), frame.x(span.endExclusive()));
      if (from < to && to - from < a.getWidth() - 1) {
        Composite before = g.getComposite();
        g.setComposite(AlphaComposite.SrcOver.derive(SHADE));
        g.setPaint(ink.text());
        g.fill(new Rectangle2D.Double(from, a.getY(), Math.max(2, to - from), a.getHeight()));
        g.setComposite(before);
      }
    }
    finding(g, frame, picked, ink);
    if (picked.instant().isPresent() && frame.showsX(picked.instant().getAsDouble())) {
      upright(g, frame, picked.instant().getAsDouble(), ink);
    }
  }

  /** A bar along the upper edge wherever a finding shows. */
  private static void finding(Graphics2D g, Frame frame, Picked picked, Ink ink) {
    Rectangle2D a = frame.area();
    g.setPaint(ink.trouble());
    for (Interval where : picked.finding().map(Finding::where).orElse(List.of())) {
      double from = Math.max(a.getMinX(), frame.x(where.startInclusive()));
      double to = Math.min(a.getMaxX(), frame.x(where.endExclusive()));
      if (from <= to) {
        g.fill(new Rectangle2D.Double(from, a.getMinY(), Math.max(2, to - from), BAR));
      }
    }
  }

  /** A dashed line over the whole plot. */
  static void upright(Graphics2D g, Frame frame, double x, Ink ink) {
    g.setPaint(ink.text());
    g.setStroke(Ink.dashed(1.2));
    Rectangle2D a = frame.area();
    g.draw(new Line2D.Double(frame.x(x), a.getMinY(), frame.x(x), a.getMaxY()));
  }

  /** A ring around a point. */
  static void ring(Graphics2D g, double x, double y, Ink ink) {
    g.setPaint(ink.text());
    g.setStroke(Ink.line(2));
    g.draw(new Ellipse2D.Double(x - RING / 2, y - RING / 2, RING, RING));
  }

  /** What stands at a place: the nearest thing that is meant, else the instant of a time axis. */
  static Optional<Picked> at(Point2D place, Plot plot, PlotRenderingInfo info, Picked picked) {
    if (plot instanceof WheelPlot wheel) {
      return wheel.at(place);
    }
    for (Drawn part : parts(plot, info)) {
      if (part.frame().area().contains(place)) {
        return part.layers().stream()
            .map(l -> l.at(place, part.frame(), picked))
            .flatMap(Optional::stream)
            .min((a, b) -> Double.compare(a.distance(), b.distance()))
            .map(Layer.Near::what)
            .or(() -> instant(place, part));
      }
    }
    return Optional.empty();
  }

  private static Optional<Picked> instant(Point2D place, Drawn part) {
    Frame f = part.frame();
    return part.isTime()
        ? Optional.of(
            Picked.instant(
                f.xAxis().java2DToValue(place.getX(), f.area(), f.plot().getDomainAxisEdge())))
        : Optional.empty();
  }

  private static List<Drawn> parts(Plot plot, PlotRenderingInfo info) {
    List<Drawn> parts = new ArrayList<>();
    if (plot instanceof CombinedDomainXYPlot stack) {
      for (int i = 0; i < Math.min(info.getSubplotCount(), stack.getSubplots().size()); i++) {
        parts.add(
            part(
                (XYPlot) ((List<?>) stack.getSubplots()).get(i),
                stack.getDomainAxis(),
                info.getSubplotInfo(i).getDataArea()));
      }
    } else if (plot instanceof XYPlot single && single.getDomainAxis() != null) {
      parts.add(part(single, single.getDomainAxis(), info.getDataArea()));
    }
    return parts;
  }

  private static Drawn part(XYPlot plot, ValueAxis across, Rectangle2D area) {
    List<Layer> layers = new ArrayList<>();
    for (int i = 0; i < plot.getRendererCount(); i++) {
      if (plot.getRenderer(i) instanceof LayerRenderer r) {
        layers.add(r.layer());
      }
    }
    return new Drawn(new Frame(area, across, plot.getRangeAxis(), plot), layers);
  }
}
