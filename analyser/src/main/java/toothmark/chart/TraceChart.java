package toothmark.chart;

import java.awt.Graphics2D;
import java.awt.geom.Point2D;
import java.awt.geom.Rectangle2D;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import org.jfree.chart.ChartRenderingInfo;
import org.jfree.chart.JFreeChart;
import org.jfree.chart.axis.NumberAxis;
import org.jfree.chart.axis.ValueAxis;
import org.jfree.chart.plot.CombinedDomainXYPlot;
import org.jfree.chart.plot.XYPlot;
import org.jfree.data.Range;
import toothmark.capture.Channel;
import toothmark.examination.Examination;
import toothmark.units.Interval;

/**
 * All channels of a capture above each other on one time axis, with what was found in them.
 *
 * <p>Made once for a capture; {@link #show} moves the view. Not for more than one thread.
 */
public final class TraceChart {

  private static final int CRANK_HEIGHT = 26;
  private static final int OTHER_HEIGHT = 10;

  /** What stands along the axis across. */
  public enum Along {
    /** Seconds. */
    TIME,
    /** Turns and crank degrees after tooth 1; where they are not known, seconds. */
    ANGLE
  }

  /** Whether the height of a channel follows the view. */
  public enum Height {
    /** The whole capture fits. */
    WHOLE,
    /** What is in view fits. */
    VIEW
  }

  /**
   * A channel as it is drawn.
   *
   * @param channel what was recorded
   * @param curve its curve; empty for bare instants
   */
  public record Drawn(Channel channel, Optional<Curve> curve) {}

  private final List<Drawn> channels;
  private final List<XYPlot> plots = new ArrayList<>();
  private final List<Range> heights = new ArrayList<>();
  private final NumberAxis time;
  private final Optional<NumberAxis> angle;
  private final CombinedDomainXYPlot stack;
  private final JFreeChart chart;
  private final ChartRenderingInfo info = new ChartRenderingInfo(null);
  private final TraceLayers layers;
  private Height height = Height.WHOLE;

  /**
   * Lays a capture out.
   *
   * @param channels in the order to show
   * @param span of the whole capture
   * @param examination what was found; empty while it is not known
   * @param ink for which ground
   */
  public TraceChart(
      List<Drawn> channels, Interval span, Optional<Examination> examination, Ink ink) {
    this.channels = List.copyOf(channels);
    this.layers = new TraceLayers(examination, ink);
    this.time = Axes.time(new Range(span.startInclusive(), span.endExclusive()), ink);
    this.angle = layers.angleAxis(ink);
    angle.ifPresent(a -> a.setRange(time.getRange()));
    stack = new CombinedDomainXYPlot(time);
    stack.setGap(6);
    for (Drawn d : channels) {
      add(d, ink);
    }
    chart = Plots.chart(stack);
    chart.setNotify(false);
  }

  private void add(Drawn drawn, Ink ink) {
    Range whole =
        drawn
            .curve()
            .map(c -> roomy(c.up(c.across().getLowerBound(), c.across().getUpperBound())))
            .orElse(new Range(-1, 1.3));
    ValueAxis up =
        drawn.curve().isPresent()
            ? Axes.linear(null, 1e-9, ink)
            : Axes.lanes(List.of(Wording.of("axis.edges")), ink);
    up.setRange(whole);
    boolean crank = layers.isCrank(drawn.channel());
    XYPlot plot = Plots.plot(null, up, layers.of(drawn), ink);
    plot.setInsets(org.jfree.chart.ui.RectangleInsets.ZERO_INSETS);
    plots.add(plot);
    heights.add(whole);
    stack.add(plot, crank ? CRANK_HEIGHT : OTHER_HEIGHT);
  }

  private static Range roomy(Range r) {
    double room = Math.max(r.getLength(), 1e-9);
    return new Range(r.getLowerBound() - 0.14 * room, r.getUpperBound() + 0.2 * room);
  }

  /**
   * Moves the view.
   *
   * @param view what to show, s; longer than nothing
   */
  public void show(Interval view) {
    Range r = new Range(view.startInclusive(), view.endExclusive());
    time.setRange(r);
    angle.ifPresent(a -> a.setRange(r));
    if (height == Height.VIEW) {
      fit(r);
    }
  }

  private void fit(Range view) {
    for (int i = 0; i < plots.size(); i++) {
      Optional<Curve> curve = channels.get(i).curve();
      if (curve.isPresent()) {
        Range r = curve.get().up(view.getLowerBound(), view.getUpperBound());
        plots.get(i).getRangeAxis().setRange(r.getLength() > 0 ? roomy(r) : heights.get(i));
      }
    }
  }

  /**
   * Chooses what stands along the axis across.
   *
   * @param along time or angle
   */
  public void setAlong(Along along) {
    stack.setDomainAxis(along == Along.ANGLE ? angle.orElse(time) : time);
  }

  /**
   * Chooses whether the heights follow the view.
   *
   * @param height which
   */
  public void setHeight(Height height) {
    this.height = height;
    if (height == Height.WHOLE) {
      for (int i = 0; i < plots.size(); i++) {
        plots.get(i).getRangeAxis().setRange(heights.get(i));
      }
    } else {
      fit(time.getRange());
    }
  }

  /**
   * Marks every pass of a tooth.
   *
   * @param tooth its number; empty for none
   */
  public void setTooth(OptionalInt tooth) {
    layers.setTooth(tooth);
  }

  /**
   * Shows along the crank signal what another input circuit would have made of it.
   *
   * @param tried its losses and strays; empty for none
   */
  public void setTried(Optional<TriedInput> tried) {
    layers.setTried(tried);
  }

  /**
   * Draws the view.
   *
   * @param g where
   * @param area where on it
   */
  public void draw(Graphics2D g, Rectangle2D area) {
    chart.draw(g, area, null, info);
  }

  /**
   * Where the curves were drawn last, all channels together.
   *
   * @return empty area before the first drawing
   */
  public Rectangle2D curves() {
    return info.getPlotInfo().getDataArea();
  }

  /**
   * Where an instant was drawn last.
   *
   * @param timeSeconds s
   * @return place across
   */
  public double xOf(double timeSeconds) {
    Rectangle2D a = curves();
    return a.getX()
        + a.getWidth() * (timeSeconds - time.getLowerBound()) / time.getRange().getLength();
  }

  /**
   * Which instant was drawn at a place last.
   *
   * @param x place across
   * @return s
   */
  public double timeAt(double x) {
    Rectangle2D a = curves();
    return time.getLowerBound()
        + time.getRange().getLength() * (x - a.getX()) / Math.max(1, a.getWidth());
  }

  /**
   * Which channel was drawn at a place last.
   *
   * @param place on the paper
   * @return its index in the order given; empty beside the curves
   */
  public OptionalInt channelAt(Point2D place) {
    int i = info.getPlotInfo().getSubplotIndex(place);
    return i < 0 ? OptionalInt.empty() : OptionalInt.of(i);
  }
}
