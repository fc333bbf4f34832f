package toothmark.chart;

import java.util.List;
import org.jfree.chart.JFreeChart;
import org.jfree.chart.axis.ValueAxis;
import org.jfree.chart.plot.CombinedDomainXYPlot;
import org.jfree.chart.plot.DatasetRenderingOrder;
import org.jfree.chart.plot.Plot;
import org.jfree.chart.plot.XYPlot;
import org.jfree.chart.ui.RectangleInsets;

/** Plots in one hand: a light grid, no frame, the data darker than everything else. */
final class Plots {

  private Plots() {}

  /** Layers over a pair of axes, the first at the bottom. */
  static XYPlot plot(ValueAxis across, ValueAxis up, List<Layer> layers, Ink ink) {
    XYPlot plot = new XYPlot(null, across, up, null);
    LayerRenderer.put(plot, layers);
    plot.setDatasetRenderingOrder(DatasetRenderingOrder.FORWARD);
    plot.setBackgroundPaint(null);
    plot.setOutlineVisible(false);
    plot.setDomainGridlinePaint(ink.grid());
    plot.setRangeGridlinePaint(ink.grid());
    plot.setDomainGridlineStroke(Ink.line(0.8));
    plot.setRangeGridlineStroke(Ink.line(0.8));
    plot.setDomainZeroBaselineVisible(false);
    plot.setAxisOffset(new RectangleInsets(3, 3, 3, 3));
    plot.setInsets(new RectangleInsets(6, 2, 2, 10));
    return plot;
  }

  /** Plots above each other on one axis across; weights give their heights. */
  static Plot stack(ValueAxis across, List<XYPlot> plots, int... weights) {
    CombinedDomainXYPlot stack = new CombinedDomainXYPlot(across);
    stack.setGap(16);
    stack.setInsets(new RectangleInsets(6, 2, 2, 10));
    for (int i = 0; i < weights.length; i++) {
      plots.get(i).setInsets(RectangleInsets.ZERO_INSETS);
      plots.get(i).setAxisOffset(RectangleInsets.ZERO_INSETS);
      stack.add(plots.get(i), weights[i]);
    }
    return stack;
  }

  /** A chart without heading and legend: the page or window sets the words beside it. */
  static JFreeChart chart(Plot plot) {
    JFreeChart chart = new JFreeChart(null, null, plot, false);
    chart.setBackgroundPaint(null);
    chart.setPadding(RectangleInsets.ZERO_INSETS);
    chart.setTextAntiAlias(true);
    return chart;
  }
}
