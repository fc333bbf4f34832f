package toothmark.chart;

import java.util.List;
import org.jfree.chart.axis.ValueAxis;
import org.jfree.chart.plot.CombinedDomainXYPlot;
import org.jfree.chart.plot.Plot;
import org.jfree.chart.plot.XYPlot;

/** Tells the points that a chart is drawn from. */
final class FigureData {

  private final Figure.Data to;
  private int series;

  private FigureData(Figure.Data to) {
    this.to = to;
  }

  static void tell(Plot plot, Figure.Data to) {
    new FigureData(to).tell(plot);
  }

  private void tell(Plot plot) {
    if (plot instanceof CombinedDomainXYPlot stack) {
      for (Object part : (List<?>) stack.getSubplots()) {
        tell((XYPlot) part, stack.getDomainAxis());
      }
    } else if (plot instanceof XYPlot single) {
      tell(single, single.getDomainAxis());
    } else if (plot instanceof WheelPlot wheel) {
      wheel.byTooth().ifPresent(this::tell);
    }
  }

  private void tell(XYPlot plot, ValueAxis across) {
    String up = plot.getRangeAxis().getLabel();
    for (int i = 0; i < plot.getRendererCount(); i++) {
      if (plot.getRenderer(i) instanceof LayerRenderer r) {
        r.layer()
            .tell(across.getRange(), (kind, points) -> tell(across.getLabel(), up, kind, points));
      }
    }
  }

  private void tell(String across, String up, String kind, Points points) {
    series++;
    String name = kind + " " + series;
    for (int i = 0; i < points.size(); i++) {
      to.point(new Figure.Names(across, up == null ? "lane" : up), name, points.x(i), points.y(i));
    }
  }
}
