package toothmark.chart;

import java.awt.Font;
import java.awt.Graphics2D;
import java.awt.geom.Rectangle2D;
import java.text.DecimalFormat;
import java.text.DecimalFormatSymbols;
import java.text.FieldPosition;
import java.text.NumberFormat;
import java.text.ParsePosition;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.jfree.chart.axis.AxisState;
import org.jfree.chart.axis.LogAxis;
import org.jfree.chart.axis.NumberAxis;
import org.jfree.chart.axis.NumberTick;
import org.jfree.chart.axis.NumberTickUnitSource;
import org.jfree.chart.axis.SymbolAxis;
import org.jfree.chart.axis.ValueAxis;
import org.jfree.chart.ui.RectangleEdge;
import org.jfree.chart.ui.RectangleInsets;
import org.jfree.chart.ui.TextAnchor;
import org.jfree.data.Range;
import toothmark.units.Say;

/** Axes in one hand: name and unit beside them, figures that stay the same in every country. */
final class Axes {

  /** Name of the axis of a whole capture. */
  static final String TIME = Wording.of("axis.time");

  private static final double NAME_SIZE = 12;
  private static final double FIGURE_SIZE = 11;

  /** Smallest share of its size at which the name of an axis can still be read. */
  private static final double LEAST = 0.6;

  /** By how much a name may be longer than its axis without touching the next one's. */
  private static final double GAP = 8;

  /** An axis higher than this has air between its figures, of so many times their height. */
  private static final double TALL = 200;

  private static final double AIR = 1.4;

  /** Leaves air between the figures along an axis. */
  private static final RectangleInsets SPARSE = new RectangleInsets(2, 12, 2, 12);

  private Axes() {}

  /**
   * An axis of even steps that need not show zero, but always a least span, so that noise does not
   * look like news.
   */
  static NumberAxis linear(String nameAndUnit, double leastSpan, Ink ink) {
    NumberAxis axis = new Linear(nameAndUnit);
    axis.setAutoRangeIncludesZero(false);
    axis.setAutoRangeMinimumSize(leastSpan);
    axis.setStandardTickUnits(new NumberTickUnitSource(false, figures()));
    return style(axis, ink);
  }

  /** An axis of time that spans a whole capture. */
  static NumberAxis time(Range span, Ink ink) {
    NumberAxis axis = linear(TIME, 1e-9, ink);
    axis.setTickLabelInsets(SPARSE);
    axis.setRange(wide(span));
    return axis;
  }

  /** An axis of time for an excerpt, in milliseconds after an instant. */
  static NumberAxis excerpt(Range span, double zeroSeconds, Ink ink) {
    NumberAxis axis =
        linear(
            Wording.of("axis.excerpt", figures().format(zeroSeconds) + Say.THIN + "s"), 1e-9, ink);
    axis.setStandardTickUnits(
        new NumberTickUnitSource(false, new Shifted(zeroSeconds, 1e3, figures())));
    axis.setTickLabelInsets(SPARSE);
    axis.setRange(wide(span));
    return axis;
  }

  /** An axis of even ratios, from at least half a decade, with figures at 1, 2 and 5. */
  static ValueAxis ratios(String nameAndUnit, Range span, Ink ink) {
    LogAxis axis = new OneTwoFive(nameAndUnit);
    axis.setRange(span.getLowerBound() / 1.25, span.getUpperBound() * 1.25);
    return style(axis, ink);
  }

  /** Named lanes, the first at the top. */
  static SymbolAxis lanes(List<String> names, Ink ink) {
    List<String> upwards = new ArrayList<>(names);
    java.util.Collections.reverse(upwards);
    SymbolAxis axis = new SymbolAxis(null, upwards.toArray(new String[0]));
    axis.setGridBandsVisible(false);
    axis.setRange(-0.6, names.size() - 0.4);
    style(axis, ink);
    axis.setTickLabelFont(Lettering.regular(NAME_SIZE));
    axis.setTickLabelPaint(ink.text());
    return axis;
  }

  static <A extends ValueAxis> A style(A axis, Ink ink) {
    axis.setLabelFont(Lettering.regular(NAME_SIZE));
    axis.setTickLabelFont(Lettering.regular(FIGURE_SIZE));
    axis.setLabelPaint(ink.text());
    axis.setTickLabelPaint(ink.quiet());
    axis.setAxisLinePaint(ink.quiet());
    axis.setTickMarkPaint(ink.quiet());
    axis.setTickLabelInsets(new RectangleInsets(4, 4, 4, 4));
    return axis;
  }

  private static Range wide(Range span) {
    return span.getLength() > 0 ? span : new Range(span.getLowerBound(), span.getLowerBound() + 1);
  }

  static NumberFormat figures() {
    DecimalFormatSymbols symbols = DecimalFormatSymbols.getInstance(Locale.ROOT);
    symbols.setMinusSign('\u2212');
    DecimalFormat format = new DecimalFormat("0.#######", symbols);
    format.setNegativePrefix("\u2212");
    return format;
  }

  /** An axis whose name is written smaller where it would be longer than the axis. */
  private static final class Linear extends NumberAxis {

    private static final long serialVersionUID = 1L;

    private double share = 1;
    private boolean tall;

    Linear(String name) {
      super(name);
    }

    @Override
    protected void selectVerticalAutoTickUnit(Graphics2D g, Rectangle2D data, RectangleEdge edge) {
      tall = data.getHeight() > TALL;
      super.selectVerticalAutoTickUnit(g, data, edge);
    }

    @Override
    protected double estimateMaximumTickLabelHeight(Graphics2D g) {
      return (tall ? AIR : 1) * super.estimateMaximumTickLabelHeight(g);
    }

    @Override
    protected AxisState drawLabel(
        String name,
        Graphics2D g,
        Rectangle2D area,
        Rectangle2D data,
        RectangleEdge edge,
        AxisState state) {
      double room = RectangleEdge.isLeftOrRight(edge) ? data.getHeight() + GAP : data.getWidth();
      double length = name == null ? 0 : g.getFontMetrics(super.getLabelFont()).stringWidth(name);
      share = length <= room ? 1 : Math.max(LEAST, room / length);
      return super.drawLabel(name, g, area, data, edge, state);
    }

    @Override
    public Font getLabelFont() {
      Font usual = super.getLabelFont();
      return share == 1 ? usual : usual.deriveFont((float) (usual.getSize2D() * share));
    }
  }

  /** Writes values as their distance from a zero, in another unit. */
  private static final class Shifted extends NumberFormat {

    private static final long serialVersionUID = 1L;

    private final double zero;
    private final double factor;
    private final NumberFormat figures;

    Shifted(double zero, double factor, NumberFormat figures) {
      this.zero = zero;
      this.factor = factor;
      this.figures = figures;
    }

    @Override
    public StringBuffer format(double value, StringBuffer into, FieldPosition position) {
      double shifted = Math.rint((value - zero) * factor * 1e6) / 1e6;
      return figures.format(shifted + 0.0, into, position);
    }

    @Override
    public StringBuffer format(long value, StringBuffer into, FieldPosition position) {
      return format((double) value, into, position);
    }

    @Override
    public Number parse(String source, ParsePosition position) {
      throw new UnsupportedOperationException("an axis reads no figures");
    }
  }

  /** An axis of even ratios with figures at 1, 2 and 5 of each decade. */
  private static final class OneTwoFive extends LogAxis {

    private static final long serialVersionUID = 1L;

    OneTwoFive(String name) {
      super(name);
    }

    @Override
    protected List<NumberTick> refreshTicksVertical(
        Graphics2D g, Rectangle2D area, RectangleEdge edge) {
      return ticks(TextAnchor.CENTER_RIGHT);
    }

    @Override
    protected List<NumberTick> refreshTicksHorizontal(
        Graphics2D g, Rectangle2D area, RectangleEdge edge) {
      return ticks(TextAnchor.TOP_CENTER);
    }

    private List<NumberTick> ticks(TextAnchor anchor) {
      List<NumberTick> ticks = new ArrayList<>();
      int decade = (int) Math.floor(Math.log10(getLowerBound()));
      double last = Math.min(getUpperBound(), Double.MAX_VALUE);
      for (double ten = Math.pow(10, decade); ten <= last; ten *= 10) {
        for (int step : new int[] {1, 2, 5}) {
          double value = step * ten;
          if (value >= getLowerBound() && value <= getUpperBound()) {
            ticks.add(new NumberTick(value, figures().format(value), anchor, anchor, 0));
          }
        }
      }
      return ticks;
    }
  }
}
