package toothmark.chart;

import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.RenderingHints;
import java.awt.geom.Path2D;
import java.awt.geom.Rectangle2D;
import java.util.Arrays;
import java.util.Optional;
import java.util.concurrent.CancellationException;
import java.util.function.BooleanSupplier;
import java.util.stream.IntStream;
import org.jfree.data.Range;

/**
 * All turns of a signal laid over each other: the more of them pass a place, the darker it is, and
 * a place that a single one passes still shows. Takes the same memory however many turns there are.
 */
final class FoldLayer implements Layer {

  private static final int PER_DEGREE = 4;
  private static final int ROWS = 300;

  /** What a single turn is drawn with of the full colour. */
  private static final double PALEST = 0.35;

  private static final int SHADES = 8;

  private final Range up;
  private final Range across;
  private final int columns;
  private final Ink ink;

  /** How many turns pass each cell, column by column from the lowest row up. */
  private final int[] passes;

  private int most;

  private FoldLayer(Range up, Fold fold, Ink ink) {
    this.up = up;
    this.across = new Range(0, fold.degrees());
    this.columns = (int) (fold.degrees() * PER_DEGREE);
    this.ink = ink;
    this.passes = new int[columns * ROWS];
  }

  /**
   * Lays all turns over each other; reads their signal once.
   *
   * @param cancelled asked before each turn; true to stop
   * @throws CancellationException if asked to stop
   */
  static FoldLayer of(CrankTurns turns, Fold fold, Ink ink, BooleanSupplier cancelled) {
    FoldLayer layer = new FoldLayer(turns.up(), fold, ink);
    Lap lap = layer.new Lap();
    for (int i = 0; i < turns.size(); i++) {
      if (cancelled.getAsBoolean()) {
        throw new CancellationException("the turns were not all laid over each other");
      }
      turns.trace(i, layer.columns, lap);
      lap.end();
    }
    layer.sum();
    return layer;
  }

  /** Until here a cell holds by how many more turns it is passed than the one below. */
  private void sum() {
    for (int i = 0; i < passes.length; i++) {
      passes[i] += i % ROWS == 0 ? 0 : passes[i - 1];
      most = Math.max(most, passes[i]);
    }
  }

  @Override
  public Optional<Range> across() {
    return Optional.of(across);
  }

  @Override
  public Optional<Range> up() {
    return Optional.of(up);
  }

  @Override
  public void paint(Graphics2D g, Frame frame) {
    Path2D[] shades = new Path2D[SHADES + 1];
    Arrays.setAll(shades, i -> new Path2D.Double());
    double from = Math.max(0, frame.fromX());
    double to = Math.min(across.getUpperBound(), frame.toX());
    double step = Math.max(1.0 / PER_DEGREE, (frame.toX() - frame.fromX()) / frame.columns());
    for (double x = Math.floor(from / step) * step; x < to; x += step) {
      strip(shades, frame, Math.max(from, x), Math.min(to, x + step));
    }
    Object before = g.getRenderingHint(RenderingHints.KEY_ANTIALIASING);
    g.setRenderingHint(RenderingHints.KEY_ANTIALIASING, RenderingHints.VALUE_ANTIALIAS_OFF);
    for (int i = 1; i <= SHADES; i++) {
      g.setPaint(colour(i));
      g.fill(shades[i]);
    }
    if (before != null) {
      g.setRenderingHint(RenderingHints.KEY_ANTIALIASING, before);
    }
  }

  private Color colour(int shade) {
    return ink.thin(ink.crank(), PALEST + (1 - PALEST) * (shade - 1) / (SHADES - 1));
  }

  /** One column of the picture, its equal cells drawn as one. */
  private void strip(Path2D[] shades, Frame frame, double from, double to) {
    int first = column(from);
    int last = Math.max(first, (int) Math.ceil(to * PER_DEGREE - 1e-9) - 1);
    int start = 0;
    int now = shade(first, last, 0);
    for (int row = 1; row <= ROWS; row++) {
      int next = row == ROWS ? -1 : shade(first, last, row);
      if (next != now) {
        double x = frame.x(from);
        double top = frame.y(value(row));
        Rectangle2D run =
            new Rectangle2D.Double(x, top, frame.x(to) - x, frame.y(value(start)) - top);
        if (now > 0) {
          shades[now].append(run, false);
        }
        start = row;
        now = next;
      }
    }
  }

  /** From 0 where no turn passes to {@link #SHADES}, by equal ratios. */
  private int shade(int first, int last, int row) {
    int count = 0;
    for (int c = first; c <= Math.min(last, columns - 1); c++) {
      count = Math.max(count, passes[c * ROWS + row]);
    }
    if (count == 0 || most == 1) {
      return count * SHADES;
    }
    return 1 + (int) Math.round((SHADES - 1) * Math.log(count) / Math.log(most));
  }

  private static int column(double degrees) {
    return (int) Math.floor(degrees * PER_DEGREE + 1e-9);
  }

  private int row(double value) {
    double share = (value - up.getLowerBound()) / Math.max(1e-12, up.getLength());
    return (int) Math.max(0, Math.min(ROWS - 1, Math.floor(share * ROWS)));
  }

  private double value(int row) {
    return up.getLowerBound() + Math.max(1e-12, up.getLength()) * row / ROWS;
  }

  /** The lowest and the highest that any turn was at each quarter of a degree. */
  @Override
  public void tell(Range shown, Telling to) {
    Points lowest = new Points();
    Points highest = new Points();
    for (int c = 0; c < columns; c++) {
      double x = (c + 0.5) / PER_DEGREE;
      int from = c * ROWS;
      int[] passed = IntStream.range(0, ROWS).filter(row -> passes[from + row] > 0).toArray();
      if (shown.contains(x) && passed.length > 0) {
        lowest.add(x, value(passed[0]));
        highest.add(x, value(passed[passed.length - 1] + 1));
      }
    }
    to.series("lowest", lowest);
    to.series("highest", highest);
  }

  /** Takes the line of one turn, and counts it once in each cell that it passes. */
  private final class Lap implements Curve.Line {

    private final double[] low = new double[columns];
    private final double[] high = new double[columns];
    private double lastX;
    private double lastY;

    Lap() {
      clear();
    }

    private void clear() {
      Arrays.fill(low, Double.POSITIVE_INFINITY);
      Arrays.fill(high, Double.NEGATIVE_INFINITY);
    }

    @Override
    public void moveTo(double x, double y) {
      lastX = x;
      lastY = y;
      if (column(x) >= 0 && column(x) < columns) {
        widen(column(x), y);
      }
    }

    @Override
    public void lineTo(double x, double y) {
      double fromX = lastX;
      double fromY = lastY;
      moveTo(x, y);
      for (int c = Math.max(0, column(fromX) + 1); c <= Math.min(columns, column(x)); c++) {
        double border = (double) c / PER_DEGREE;
        double there = fromY + (y - fromY) * (border - fromX) / (x - fromX);
        if (c > 0) {
          widen(c - 1, there);
        }
        if (c < columns) {
          widen(c, there);
        }
      }
    }

    private void widen(int column, double y) {
      low[column] = Math.min(low[column], y);
      high[column] = Math.max(high[column], y);
    }

    void end() {
      for (int c = 0; c < columns; c++) {
        if (low[c] <= high[c]) {
          passes[c * ROWS + row(low[c])]++;
          int above = row(high[c]) + 1;
          if (above < ROWS) {
            passes[c * ROWS + above]--;
          }
        }
      }
      clear();
    }
  }
}
