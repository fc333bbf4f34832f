package toothmark.chart;

import java.awt.Graphics2D;
import java.awt.geom.Rectangle2D;
import org.jfree.chart.axis.ValueAxis;
import org.jfree.chart.plot.CrosshairState;
import org.jfree.chart.plot.PlotRenderingInfo;
import org.jfree.chart.plot.XYPlot;
import org.jfree.chart.renderer.xy.AbstractXYItemRenderer;
import org.jfree.chart.renderer.xy.XYItemRendererState;
import org.jfree.data.Range;
import org.jfree.data.xy.AbstractXYDataset;
import org.jfree.data.xy.XYDataset;

/** Lets a {@link Layer} take part in a plot: as a data set of one item, drawn in one call. */
final class LayerRenderer extends AbstractXYItemRenderer {

  private static final long serialVersionUID = 1L;

  private final transient Layer layer;

  private LayerRenderer(Layer layer) {
    this.layer = layer;
  }

  /** Puts layers on a plot, the first at the bottom. */
  static void put(XYPlot plot, Iterable<Layer> layers) {
    int i = 0;
    for (Layer layer : layers) {
      plot.setDataset(i, new OneItem());
      plot.setRenderer(i, new LayerRenderer(layer));
      i++;
    }
  }

  Layer layer() {
    return layer;
  }

  @Override
  public Range findDomainBounds(XYDataset dataset) {
    return layer.across().orElse(null);
  }

  @Override
  public Range findRangeBounds(XYDataset dataset) {
    return layer.up().orElse(null);
  }

  @Override
  public void drawItem(
      Graphics2D g,
      XYItemRendererState state,
      Rectangle2D area,
      PlotRenderingInfo info,
      XYPlot plot,
      ValueAxis xAxis,
      ValueAxis yAxis,
      XYDataset dataset,
      int series,
      int item,
      CrosshairState crosshair,
      int pass) {
    layer.paint(g, new Frame(area, xAxis, yAxis, plot));
  }

  /** A data set that holds nothing but the occasion to draw. */
  private static final class OneItem extends AbstractXYDataset {

    private static final long serialVersionUID = 1L;

    @Override
    public int getSeriesCount() {
      return 1;
    }

    @Override
    public Comparable<?> getSeriesKey(int series) {
      return 0;
    }

    @Override
    public int getItemCount(int series) {
      return 1;
    }

    @Override
    public Number getX(int series, int item) {
      return 0;
    }

    @Override
    public Number getY(int series, int item) {
      return 0;
    }
  }
}
