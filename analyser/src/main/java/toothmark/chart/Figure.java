package toothmark.chart;

import java.awt.Graphics2D;
import java.awt.geom.Point2D;
import java.util.Optional;
import org.jfree.chart.JFreeChart;
import org.jfree.chart.axis.ValueAxis;
import org.jfree.chart.plot.PlotRenderingInfo;
import org.jfree.chart.plot.XYPlot;

/**
 * A chart with the question that it answers.
 *
 * @param question the heading, such as {@code Is any tooth out of place or weak?}
 * @param answer what the chart shows, one or two sentences
 * @param chart the chart, without a heading of its own
 * @param height how high it wants to be where it is {@link #WIDTH} wide
 */
public record Figure(String question, String answer, JFreeChart chart, int height) {

  /** How wide a figure is laid out, in units of its own type (12 high). */
  public static final int WIDTH = 760;

  /**
   * The axis across where it is the time of the capture, so that figures can be read side by side.
   *
   * @return empty when something else runs across
   */
  public Optional<ValueAxis> timeAxis() {
    return chart.getPlot() instanceof XYPlot plot
            && plot.getDomainAxis() != null
            && Axes.TIME.equals(plot.getDomainAxis().getLabel())
        ? Optional.of(plot.getDomainAxis())
        : Optional.empty();
  }

  /**
   * Marks what is picked out, over the chart as it was drawn last.
   *
   * @param g where it was drawn
   * @param info filled by that drawing
   * @param picked what is picked out; in a capture that is open
   * @param ink for which ground
   */
  public void mark(Graphics2D g, PlotRenderingInfo info, Picked picked, Ink ink) {
    Links.mark(g, chart.getPlot(), info, picked, ink);
  }

  /**
   * What stands at a place of the chart as it was drawn last.
   *
   * @param place on the paper
   * @param info filled by that drawing
   * @param picked what is picked out now; in a capture that is open
   * @return a tooth or an instant; empty beside the curves and where nothing that can be picked out
   *     is near
   */
  public Optional<Picked> at(Point2D place, PlotRenderingInfo info, Picked picked) {
    return Links.at(place, chart.getPlot(), info, picked);
  }

  /**
   * Tells every point that the chart is drawn from.
   *
   * @param to takes them, series after series
   */
  public void tell(Data to) {
    FigureData.tell(chart.getPlot(), to);
  }

  /**
   * Names of a pair of axes, with their units.
   *
   * @param across name of the axis across
   * @param up name of the axis upwards
   */
  public record Names(String across, String up) {}

  /** Takes points. */
  @FunctionalInterface
  public interface Data {

    /**
     * One point.
     *
     * @param axes what its values are
     * @param series what it belongs to, such as {@code line 2}
     * @param x across
     * @param y upwards
     */
    void point(Names axes, String series, double x, double y);
  }
}
