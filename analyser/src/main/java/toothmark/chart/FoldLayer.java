package toothmark.chart;

import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.RenderingHints;
import java.awt.Shape;
import java.awt.geom.AffineTransform;
import java.awt.geom.Path2D;
import java.awt.geom.Point2D;
import java.awt.geom.Rectangle2D;
import java.awt.image.BufferedImage;
import java.awt.image.DataBufferInt;
import java.util.Arrays;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.concurrent.CancellationException;
import java.util.function.BooleanSupplier;
import java.util.stream.IntStream;
import org.jfree.chart.ui.RectangleEdge;
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

  private final CrankTurns turns;
  private final Range up;
  private final Range across;
  private final int columns;
  private final Color colour;
  private final Ink ink;

  /** How dark each cell is, column by column from the lowest row up; 0 where no turn passes. */
  private final byte[] shades;

  private FoldLayer(CrankTurns turns, Fold fold, Color colour, Ink ink) {
    this.turns = turns;
    this.up = turns.up();
    this.across = new Range(0, fold.degrees());
    this.columns = (int) (fold.degrees() * PER_DEGREE);
    this.colour = colour;
    this.ink = ink;
    this.shades = new byte[columns * ROWS];
  }

  /**
   * Lays all turns over each other; reads their signal once.
   *
   * @param cancelled asked before each turn; true to stop
   * @throws CancellationException if asked to stop
   */
  static FoldLayer of(
      CrankTurns turns, Fold fold, Color colour, Ink ink, BooleanSupplier cancelled) {
    FoldLayer layer = new FoldLayer(turns, fold, colour, ink);
    Lap lap = layer.new Lap();
    for (int i = 0; i < turns.size(); i++) {
      if (cancelled.getAsBoolean()) {
        throw new CancellationException("the turns were not all laid over each other");
      }
      turns.trace(i, layer.columns, lap);
      lap.end();
    }
    lap.shade();
    return layer;
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
    // a pen that knows of smoothing sets pixels, for which one image is many times as quick
    if (g.getRenderingHint(RenderingHints.KEY_ANTIALIASING) == null) {
      outlines(g, frame);
    } else {
      image(g, frame);
    }
  }

  private void image(Graphics2D g, Frame frame) {
    double sx = g.getTransform().getScaleX();
    double sy = g.getTransform().getScaleY();
    Rectangle2D area = frame.area();
    int width = (int) Math.ceil(area.getWidth() * sx);
    int height = (int) Math.ceil(area.getHeight() * sy);
    BufferedImage image = new BufferedImage(width, height, BufferedImage.TYPE_INT_ARGB);
    int[] colours = IntStream.rangeClosed(0, SHADES).map(i -> colour(i).getRGB()).toArray();
    int[] tops = IntStream.rangeClosed(0, ROWS).map(row -> top(frame, row, sy)).toArray();
    double perPixel = (frame.toX() - frame.fromX()) / width;
    int[] pixels = ((DataBufferInt) image.getRaster().getDataBuffer()).getData();
    for (int x = 0; x < width; x++) {
      double from = frame.fromX() + x * perPixel;
      int first = column(from);
      int last = Math.max(first, column(from + perPixel) - 1);
      if (last >= 0 && first < columns) {
        byte[] strip = strip(Math.max(0, first), Math.min(columns - 1, last));
        for (int row = 0; row < ROWS; row++) {
          if (strip[row] > 0) {
            int lower = Math.min(height - 1, Math.max(tops[row + 1], tops[row] - 1));
            for (int y = Math.max(0, tops[row + 1]); y <= lower; y++) {
              pixels[y * width + x] = colours[strip[row]];
            }
          }
        }
      }
    }
    AffineTransform place = AffineTransform.getTranslateInstance(area.getX(), area.getY());
    place.scale(1 / sx, 1 / sy);
    g.drawImage(image, place, null);
  }

  private int top(Frame frame, int row, double scale) {
    return (int) Math.floor((frame.y(value(row)) - frame.area().getY()) * scale);
  }

  /** The darkest of several columns, row by row. */
  private byte[] strip(int first, int last) {
    byte[] strip = new byte[ROWS];
    System.arraycopy(shades, first * ROWS, strip, 0, ROWS);
    for (int c = first + 1; c <= last; c++) {
      for (int row = 0; row < ROWS; row++) {
        strip[row] = (byte) Math.max(strip[row], shades[c * ROWS + row]);
      }
    }
    return strip;
  }

  private void outlines(Graphics2D g, Frame frame) {
    Path2D[] paths = new Path2D[SHADES + 1];
    Arrays.setAll(paths, i -> new Path2D.Double());
    double to = Math.min(across.getUpperBound(), frame.toX());
    double step = Math.max(1.0 / PER_DEGREE, (frame.toX() - frame.fromX()) / frame.columns());
    for (double x = Math.max(0, frame.fromX()); x < to; x += step) {
      outlines(paths, frame, x, Math.min(to, x + step));
    }
    for (int i = 1; i <= SHADES; i++) {
      g.setPaint(colour(i));
      g.fill(paths[i]);
    }
  }

  /** One column of the picture, its equal cells drawn as one. */
  private void outlines(Path2D[] paths, Frame frame, double from, double to) {
    int first = Math.min(columns - 1, column(from));
    byte[] strip = strip(first, Math.min(columns - 1, Math.max(first, column(to) - 1)));
    int start = 0;
    for (int row = 1; row <= ROWS; row++) {
      if (row == ROWS || strip[row] != strip[start]) {
        double x = frame.x(from);
        double top = frame.y(value(row));
        paths[strip[start]].append(
            new Rectangle2D.Double(x, top, frame.x(to) - x, frame.y(value(start)) - top), false);
        start = row;
      }
    }
  }

  private Color colour(int shade) {
    return ink.thin(colour, shade == 0 ? 0 : PALEST + (1 - PALEST) * (shade - 1) / (SHADES - 1));
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

  /** Draws the turn of the instant that is picked out over all others, and where in it that is. */
  @Override
  public void mark(Graphics2D g, Frame frame, Picked picked, Ink ink) {
    OptionalInt turn =
        picked.instant().isPresent()
            ? turns.at(picked.instant().getAsDouble())
            : OptionalInt.empty();
    if (turn.isEmpty()) {
      return;
    }
    Path2D path = new Path2D.Double();
    turns.trace(turn.getAsInt(), frame.columns(), frame.onto(path));
    Shape clip = g.getClip();
    g.clip(frame.area());
    g.setPaint(ink.text());
    g.setStroke(Ink.line(1));
    g.draw(path);
    turns
        .degreesAt(turn.getAsInt(), picked.instant().getAsDouble())
        .ifPresent(d -> Links.upright(g, frame, d, ink));
    g.setClip(clip);
  }

  /** The instant at which a turn passes a place; of several turns that of the one picked out. */
  @Override
  public Optional<Near> at(Point2D place, Frame frame, Picked picked) {
    double x = frame.xAxis().java2DToValue(place.getX(), frame.area(), RectangleEdge.BOTTOM);
    double half = (frame.toX() - frame.fromX()) / frame.area().getWidth();
    if (x < half || x > across.getUpperBound() - half) {
      return Optional.empty();
    }
    int now = picked.instant().isPresent() ? turns.at(picked.instant().getAsDouble()).orElse(0) : 0;
    int best = now;
    double least = Double.POSITIVE_INFINITY;
    for (int i = 0; i < turns.size(); i++) {
      Range r = turns.up(i, x - half, x + half);
      double above = place.getY() - frame.y(r.getLowerBound());
      double below = frame.y(r.getUpperBound()) - place.getY();
      double d = Math.max(0, Math.max(above, below));
      if (d < least || d == least && i == now) {
        least = d;
        best = i;
      }
    }
    return Optional.of(new Near(Picked.instant(turns.timeAt(best, x)), least));
  }

  /** The lowest and the highest that any turn was at each quarter of a degree. */
  @Override
  public void tell(Range shown, Telling to) {
    Points lowest = new Points();
    Points highest = new Points();
    for (int c = 0; c < columns; c++) {
      double x = (c + 0.5) / PER_DEGREE;
      int from = c * ROWS;
      int[] passed = IntStream.range(0, ROWS).filter(row -> shades[from + row] > 0).toArray();
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

    /** By how many more turns each cell is passed than the one below it. */
    private final int[] more = new int[columns * ROWS];

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
          more[c * ROWS + row(low[c])]++;
          int above = row(high[c]) + 1;
          if (above < ROWS) {
            more[c * ROWS + above]--;
          }
        }
      }
      clear();
    }

    /** Shades each cell by how many turns passed it, in equal ratios. */
    void shade() {
      int most = 1;
      for (int i = 0; i < more.length; i++) {
        more[i] += i % ROWS == 0 ? 0 : more[i - 1];
        most = Math.max(most, more[i]);
      }
      double perRatio = most == 1 ? 0 : (SHADES - 1) / Math.log(most);
      for (int i = 0; i < more.length; i++) {
        shades[i] = (byte) (more[i] == 0 ? 0 : 1 + Math.round(perRatio * Math.log(more[i])));
      }
    }
  }
}
