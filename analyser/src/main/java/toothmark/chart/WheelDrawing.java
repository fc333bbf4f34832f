package toothmark.chart;

import java.awt.Color;
import java.awt.Font;
import java.awt.FontMetrics;
import java.awt.Graphics2D;
import java.awt.geom.Arc2D;
import java.awt.geom.Ellipse2D;
import java.awt.geom.Path2D;
import java.awt.geom.Rectangle2D;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.DoubleStream;
import toothmark.examination.Examination;
import toothmark.ignition.CoilTrack;
import toothmark.timing.Alignment;
import toothmark.units.CrankAngle;
import toothmark.units.Measured;
import toothmark.units.Say;
import toothmark.wheel.DecodedWheel;
import toothmark.wheel.ToothGeometry;
import toothmark.wheel.WheelPattern;

/**
 * A trigger wheel as its signal shows it. Tooth 1 is at the top and teeth count up clockwise, so
 * the wheel is seen from the side on which it turns anticlockwise past a sensor at the top. Each
 * tooth is as high as its signal is strong and stands off its outline by its error, enlarged.
 */
final class WheelDrawing {

  private static final double RIM = 0.74;
  private static final double TOOTH = 0.16;
  private static final double WORDS_DEGREES = 24;
  private static final double ODD_ROOM = 0.45;
  private static final double EVEN_ROOM = 0.15;
  private static final double[] FACTORS = {1, 2, 5, 10, 20, 50, 100};

  private final WheelPattern pattern;
  private final ToothGeometry geometry;
  private final OddTeeth odd;
  private final Marks marks;
  private final Ink ink;
  private final double factor;

  private double cx;
  private double cy;
  private double radius;

  /**
   * What stands on the wheel beside its teeth.
   *
   * @param firings where coils fire, outermost first
   * @param tdcDegrees where TDC of cylinder 1 is, degrees after tooth 1; empty when not known
   * @param origin where the teeth come from, such as {@code 36 turns}
   */
  record Marks(List<Firing> firings, OptionalDouble tdcDegrees, String origin) {}

  /**
   * An arc with a dot at one place of it, degrees after tooth 1, unrolled.
   *
   * @param name what fires
   * @param colour of the arc
   */
  record Firing(
      String name, Color colour, double fromDegrees, double dotDegrees, double toDegrees) {}

  WheelDrawing(WheelPattern pattern, ToothGeometry geometry, OddTeeth odd, Marks marks, Ink ink) {
    this.pattern = pattern;
    this.geometry = geometry;
    this.odd = odd;
    this.marks = marks;
    this.ink = ink;
    this.factor = enlargement();
  }

  /** The wheel of an examination, with the arcs over nine tenths of each coil's sparks. */
  static WheelDrawing of(Examination examination, DecodedWheel wheel, OddTeeth odd, Ink ink) {
    List<CoilTrack> coils = examination.observations().coils();
    List<Firing> firings = new ArrayList<>();
    for (int i = 0; i < coils.size(); i++) {
      String name = coils.get(i).coil().name();
      Color colour = ink.coil(i);
      spread(coils.get(i)).ifPresent(s -> firings.add(new Firing(name, colour, s[0], s[1], s[2])));
    }
    return new WheelDrawing(
        wheel.pattern(),
        wheel.geometry(),
        odd,
        new Marks(firings, tdc(examination), origin(wheel.geometry())),
        ink);
  }

  private static String origin(ToothGeometry geometry) {
    return geometry.turns() == 0
        ? Wording.of("wheel.unmeasured")
        : Wording.of("wheel.turns", Integer.toString(geometry.turns()));
  }

  /**
   * The largest round factor that keeps every tooth nearer its own place than the next one's; where
   * none is odd, near enough to look as even as it is.
   */
  private double enlargement() {
    double room = (odd.teeth().isEmpty() ? EVEN_ROOM : ODD_ROOM) * pattern.pitchDegrees();
    double largest = 0;
    for (int k = 1; k <= geometry.teeth(); k++) {
      largest = Math.max(largest, Math.abs(geometry.offsetDegrees(k)));
    }
    double best = 1;
    for (double f : FACTORS) {
      best = f * largest <= room ? f : best;
    }
    return best;
  }

  void draw(Graphics2D g, Rectangle2D square) {
    cx = square.getCenterX();
    cy = square.getCenterY();
    radius = square.getWidth() / 2 - 26;
    rim(g);
    teeth(g);
    firing(g);
    tdc(g);
    words(g);
  }

  private void rim(Graphics2D g) {
    Path2D outlines = new Path2D.Double();
    for (int k = 1; k <= pattern.teeth(); k++) {
      tooth(outlines, pattern.degreesAfterTooth1(k), 1);
    }
    g.setPaint(ink.grid());
    g.setStroke(Ink.line(1));
    g.draw(outlines);
    double r = RIM * radius;
    g.setPaint(ink.thin(ink.crank(), 0.12));
    g.fill(new Ellipse2D.Double(cx - r, cy - r, 2 * r, 2 * r));
    double hub = 0.32 * radius;
    g.setPaint(ink.paper());
    g.fill(new Ellipse2D.Double(cx - hub, cy - hub, 2 * hub, 2 * hub));
  }

  private void teeth(Graphics2D g) {
    Path2D even = new Path2D.Double();
    Path2D standingOut = new Path2D.Double();
    for (int k = 1; k <= pattern.teeth(); k++) {
      boolean isOdd = odd.contains(k);
      double at = pattern.degreesAfterTooth1(k) + factor * geometry.offsetDegrees(k);
      tooth(isOdd ? standingOut : even, at, geometry.amplitude(k));
    }
    g.setPaint(ink.crank());
    g.fill(even);
    g.setPaint(ink.trouble());
    g.fill(standingOut);
  }

  private void tooth(Path2D path, double degrees, double height) {
    double half = pattern.pitchDegrees() * 0.22;
    double foot = RIM * radius;
    double top = foot + TOOTH * radius * Math.max(0.05, Math.min(1.6, height));
    path.moveTo(x(degrees - half, foot), y(degrees - half, foot));
    path.lineTo(x(degrees - half * 0.75, top), y(degrees - half * 0.75, top));
    path.lineTo(x(degrees + half * 0.75, top), y(degrees + half * 0.75, top));
    path.lineTo(x(degrees + half, foot), y(degrees + half, foot));
    path.closePath();
  }

  private void firing(Graphics2D g) {
    int lanes = Math.max(1, marks.firings.size());
    double step = Math.min(0.075, 0.34 / lanes);
    for (int i = 0; i < marks.firings.size(); i++) {
      Firing f = marks.firings.get(i);
      double r = radius * (RIM - 0.07 - step * i);
      double extent = f.toDegrees - f.fromDegrees;
      g.setPaint(f.colour);
      g.setStroke(Ink.line(4));
      g.draw(
          new Arc2D.Double(
              cx - r, cy - r, 2 * r, 2 * r, 90 - f.fromDegrees - extent, extent, Arc2D.OPEN));
      double at = f.dotDegrees;
      Mark.DOT.draw(g, List.of(new double[] {x(at, r), y(at, r)}), 8, ink.text(), ink.paper());
      double inner = r - 12;
      double side = CrankAngle.wrap(at) < 180 ? -14 : 14;
      double clear = at + clearOfTdc(at);
      text(g, f.name, Lettering.regular(11), ink.text(), x(clear, inner) + side, y(clear, inner));
    }
  }

  /** How far words at an angle are turned off the line at TDC. */
  private double clearOfTdc(double degrees) {
    double off =
        marks.tdcDegrees.isPresent()
            ? CrankAngle.wrapDifference(degrees - marks.tdcDegrees.getAsDouble())
            : 180;
    return Math.abs(off) < WORDS_DEGREES ? Math.copySign(WORDS_DEGREES, off) - off : 0;
  }

  /** Fifth, fiftieth and ninety-fifth percentile of a coil's angles, unrolled. */
  private static Optional<double[]> spread(CoilTrack coil) {
    double[] angles =
        coil.sparks().stream()
            .flatMap(s -> s.crank().stream())
            .mapToDouble(c -> c.degreesAfterTooth1())
            .toArray();
    if (angles.length == 0) {
      return Optional.empty();
    }
    double middle = angles[angles.length / 2];
    double[] sorted =
        DoubleStream.of(angles).map(a -> CrankAngle.wrapDifference(a - middle)).sorted().toArray();
    int n = sorted.length - 1;
    double centre = CrankAngle.wrap(middle);
    return Optional.of(
        new double[] {
          centre + sorted[(int) Math.round(0.05 * n)],
          centre + sorted[(int) Math.round(0.5 * n)],
          centre + sorted[(int) Math.round(0.95 * n)]
        });
  }

  private void tdc(Graphics2D g) {
    OptionalDouble at = marks.tdcDegrees;
    if (at.isPresent()) {
      double a = at.getAsDouble();
      g.setPaint(ink.tdc());
      g.setStroke(Ink.line(2));
      Path2D line = new Path2D.Double();
      line.moveTo(x(a, 0.34 * radius), y(a, 0.34 * radius));
      line.lineTo(x(a, radius * 0.98), y(a, radius * 0.98));
      g.draw(line);
      text(
          g,
          Wording.of("mark.tdc"),
          Lettering.strong(11),
          ink.tdc(),
          x(a, radius * 1.07),
          y(a, radius * 1.07));
    }
  }

  private static OptionalDouble tdc(Examination examination) {
    return examination
        .observations()
        .timing()
        .alignment()
        .flatMap(Alignment::tooth1BtdcDegrees)
        .map(Measured::value)
        .map(OptionalDouble::of)
        .orElse(examination.sheet().wheel().tooth1BtdcDegrees());
  }

  private void words(Graphics2D g) {
    text(g, pattern.toString(), Lettering.strong(22), ink.text(), cx, cy - 8);
    text(g, marks.origin, Lettering.regular(11), ink.quiet(), cx, cy + 12);
    if (factor > 1 && geometry.turns() > 0) {
      text(
          g,
          Wording.of("wheel.errors", Say.number(factor, 0)),
          Lettering.regular(11),
          ink.quiet(),
          cx,
          cy + 26);
    }
    int every = pattern.teeth() <= 12 ? 1 : pattern.teeth() <= 40 ? 5 : 10;
    for (int k = 1; k <= pattern.teeth(); k++) {
      boolean isOdd = odd.contains(k);
      if (isOdd || k == 1 || k % every == 0 && !besideOdd(k) && !besideTdc(k)) {
        number(g, k, isOdd);
      }
    }
  }

  private boolean besideTdc(int k) {
    OptionalDouble tdc = marks.tdcDegrees;
    return tdc.isPresent()
        && Math.abs(CrankAngle.wrapDifference(tdc.getAsDouble() - pattern.degreesAfterTooth1(k)))
            < 9;
  }

  private boolean besideOdd(int k) {
    return odd.teeth().stream().anyMatch(o -> Math.abs(o - k) == 1);
  }

  private void number(Graphics2D g, int k, boolean isOdd) {
    double a = pattern.degreesAfterTooth1(k);
    double r = radius * 1.0;
    text(
        g,
        Integer.toString(k),
        isOdd ? Lettering.strong(13) : Lettering.regular(11),
        isOdd ? ink.trouble() : ink.quiet(),
        x(a, r),
        y(a, r));
  }

  private static void text(Graphics2D g, String text, Font font, Color colour, double x, double y) {
    g.setFont(font);
    g.setPaint(colour);
    FontMetrics m = g.getFontMetrics();
    g.drawString(text, (float) (x - m.stringWidth(text) / 2.0), (float) (y + m.getAscent() * 0.36));
  }

  private double x(double degrees, double r) {
    return cx + r * Math.sin(Math.toRadians(degrees));
  }

  private double y(double degrees, double r) {
    return cy - r * Math.cos(Math.toRadians(degrees));
  }
}
