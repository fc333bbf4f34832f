package toothmark.chart;

import java.awt.Color;
import java.awt.Font;
import java.awt.FontMetrics;
import java.awt.Graphics2D;
import java.awt.geom.Arc2D;
import java.awt.geom.Ellipse2D;
import java.awt.geom.Line2D;
import java.awt.geom.Path2D;
import java.awt.geom.Point2D;
import java.awt.geom.Rectangle2D;
import java.util.Comparator;
import java.util.List;
import java.util.OptionalInt;
import toothmark.examination.Examination;
import toothmark.units.CrankAngle;
import toothmark.units.Say;
import toothmark.wheel.DecodedWheel;
import toothmark.wheel.ToothGeometry;
import toothmark.wheel.WheelPattern;

/**
 * A trigger wheel as its signal shows it. The sensor is at the top, and teeth count up clockwise,
 * so the wheel is seen from the side on which it turns anticlockwise past it; unless it was turned,
 * tooth 1 is there. Each tooth is as high as its signal is strong and stands off its outline by its
 * error, enlarged; teeth that a gap leaves out are dashed.
 */
final class WheelDrawing {

  private static final double RIM = 0.74;
  private static final double TOOTH = 0.16;
  private static final double HUB = 0.32;
  private static final double WORDS_DEGREES = 24;

  /** Words that would stand nearer to the sensor are turned off it, degrees. */
  private static final double SENSOR_WORDS = 14;

  /** Kept free of numbers beside the sensor and beside TDC, degrees. */
  private static final double BESIDE = 10;

  /** Size of the sensor. */
  private static final double SENSOR = 9;

  /** Drawn in less, only the wheel's name, TDC and what is odd are written. */
  private static final double ROOM_FOR_WORDS = 300;

  /** Kept free around the wheel for numbers and words. */
  private static final double MARGIN = 26;

  /** Above and below a wheel with few words only the sensor needs room. */
  private static final double SENSOR_MARGIN = 18;

  private final WheelPattern pattern;
  private final ToothGeometry geometry;
  private final OddTeeth odd;
  private final WheelMarks marks;
  private final Ink ink;
  private final double factor;

  private double cx;
  private double cy;
  private double radius;
  private double turned;
  private boolean sparse;

  WheelDrawing(
      WheelPattern pattern, ToothGeometry geometry, OddTeeth odd, WheelMarks marks, Ink ink) {
    this.pattern = pattern;
    this.geometry = geometry;
    this.odd = odd;
    this.marks = marks;
    this.ink = ink;
    this.factor = odd.enlargement(pattern.pitchDegrees(), geometry);
  }

  /** The wheel of an examination. */
  static WheelDrawing of(Examination examination, DecodedWheel wheel, OddTeeth odd, Ink ink) {
    return new WheelDrawing(
        wheel.pattern(),
        wheel.geometry(),
        odd,
        WheelMarks.of(examination, origin(wheel.geometry()), ink),
        ink);
  }

  private static String origin(ToothGeometry geometry) {
    return geometry.turns() == 0
        ? Wording.of("wheel.unmeasured")
        : Wording.of("wheel.turns", Integer.toString(geometry.turns()));
  }

  /** Draws the wheel with tooth 1 at the sensor. */
  void draw(Graphics2D g, Rectangle2D area) {
    draw(g, area, 0);
  }

  /** Draws the wheel turned until an angle after tooth 1 is at the sensor. */
  void draw(Graphics2D g, Rectangle2D area, double atSensorDegrees) {
    cx = area.getCenterX();
    cy = area.getCenterY();
    turned = atSensorDegrees;
    sparse = Math.min(area.getWidth(), area.getHeight()) < ROOM_FOR_WORDS;
    radius =
        Math.min(
            area.getWidth() / 2 - MARGIN, area.getHeight() / 2 - (sparse ? SENSOR_MARGIN : MARGIN));
    rim(g);
    teeth(g);
    firing(g);
    marks.tdcs().forEach(t -> tdc(g, t));
    words(g);
    sensor(g);
  }

  /** Rings a tooth of the wheel as it was drawn last. */
  void ring(Graphics2D g, int tooth) {
    if (has(tooth)) {
      double a = pattern.degreesAfterTooth1(tooth);
      double r = 0.86 * radius;
      double size = Math.max(6, Math.toRadians(pattern.pitchDegrees()) * r * 0.55);
      g.setPaint(ink.text());
      g.setStroke(Ink.line(2));
      g.draw(new Ellipse2D.Double(x(a, r) - size, y(a, r) - size, 2 * size, 2 * size));
    }
  }

  /** Points from the hub at an angle after tooth 1 of the wheel as it was drawn last. */
  void hand(Graphics2D g, double degrees) {
    g.setPaint(ink.text());
    g.setStroke(Ink.dashed(1.2));
    double hub = 0.34 * radius;
    g.draw(
        new Line2D.Double(
            x(degrees, hub), y(degrees, hub), x(degrees, radius), y(degrees, radius)));
  }

  /** Whether the wheel has a tooth of a number. */
  boolean has(int tooth) {
    return tooth >= 1 && tooth <= pattern.teeth();
  }

  /** The angle after tooth 1, in [0, 360), at a place of the wheel as it was drawn last. */
  double degreesAt(Point2D place) {
    return CrankAngle.wrap(
        turned + Math.toDegrees(Math.atan2(place.getX() - cx, cy - place.getY())));
  }

  /** The tooth nearest to an angle after tooth 1; empty in a gap. */
  OptionalInt toothAt(double degrees) {
    int best = 0;
    double nearest = 0.6 * pattern.pitchDegrees();
    for (int k = 1; k <= pattern.teeth(); k++) {
      double d = Math.abs(CrankAngle.wrapDifference(degrees - pattern.degreesAfterTooth1(k)));
      if (d < nearest) {
        nearest = d;
        best = k;
      }
    }
    return best == 0 ? OptionalInt.empty() : OptionalInt.of(best);
  }

  private void sensor(Graphics2D g) {
    double tip = cy - 0.97 * radius;
    Path2D wedge = new Path2D.Double();
    wedge.moveTo(cx, tip);
    wedge.lineTo(cx - SENSOR * 0.7, tip - SENSOR * 1.5);
    wedge.lineTo(cx + SENSOR * 0.7, tip - SENSOR * 1.5);
    wedge.closePath();
    g.setPaint(ink.text());
    g.fill(wedge);
    if (sparse) {
      return;
    }
    text(
        g,
        Wording.of("wheel.sensor"),
        Lettering.regular(10),
        ink.quiet(),
        cx,
        tip - SENSOR * 1.5 - 6);
  }

  private void rim(Graphics2D g) {
    Path2D outlines = new Path2D.Double();
    for (int k = 1; k <= pattern.teeth(); k++) {
      tooth(outlines, pattern.degreesAfterTooth1(k), 1);
    }
    g.setPaint(ink.grid());
    g.setStroke(Ink.line(1));
    g.draw(outlines);
    g.setPaint(ink.quiet());
    g.setStroke(Ink.dotted(1));
    g.draw(gaps());
    double r = RIM * radius;
    g.setPaint(ink.thin(ink.crank(), 0.12));
    g.fill(new Ellipse2D.Double(cx - r, cy - r, 2 * r, 2 * r));
    double hub = HUB * radius;
    g.setPaint(ink.paper());
    g.fill(new Ellipse2D.Double(cx - hub, cy - hub, 2 * hub, 2 * hub));
  }

  /** Outlines of the teeth that the gaps leave out. */
  private Path2D gaps() {
    Path2D gaps = new Path2D.Double();
    for (int k = 1; k <= pattern.teeth(); k++) {
      int slots = (int) Math.round(pattern.degreesToNext(k) / pattern.pitchDegrees());
      for (int i = 1; i < slots; i++) {
        tooth(gaps, pattern.degreesAfterTooth1(k) + i * pattern.pitchDegrees(), 1);
      }
    }
    return gaps;
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
    int lanes = Math.max(1, marks.firings().size());
    double step = Math.min(0.075, 0.34 / lanes);
    for (int i = 0; i < marks.firings().size(); i++) {
      WheelMarks.Firing f = marks.firings().get(i);
      double r = radius * (RIM - 0.07 - step * i);
      double extent = f.toDegrees() - f.fromDegrees();
      g.setPaint(f.colour());
      g.setStroke(Ink.line(4));
      g.draw(
          new Arc2D.Double(
              cx - r,
              cy - r,
              2 * r,
              2 * r,
              90 - (f.fromDegrees() - turned) - extent,
              extent,
              Arc2D.OPEN));
      double at = f.dotDegrees();
      Mark.coil(i).draw(g, List.of(new double[] {x(at, r), y(at, r)}), 9, ink.text(), ink.paper());
      if (!sparse) {
        double inner = r - 12;
        double side = CrankAngle.wrap(at - turned) < 180 ? -14 : 14;
        double clear = at + clearOfTdc(at);
        text(
            g,
            f.name(),
            Lettering.regular(11),
            ink.text(),
            x(clear, inner) + side,
            y(clear, inner));
      }
    }
  }

  /** How far words at an angle are turned off the nearest line at TDC. */
  private double clearOfTdc(double degrees) {
    double off =
        marks.tdcs().stream()
            .map(t -> CrankAngle.wrapDifference(degrees - t.degrees()))
            .min(Comparator.comparingDouble(Math::abs))
            .orElse(180.0);
    return Math.abs(off) < WORDS_DEGREES ? Math.copySign(WORDS_DEGREES, off) - off : 0;
  }

  /** A line from the hub for cylinder 1, a short one for the others. */
  private void tdc(Graphics2D g, WheelMarks.Tdc tdc) {
    boolean first = tdc == marks.tdcs().get(0);
    double a = tdc.degrees();
    g.setPaint(ink.tdc());
    g.setStroke(Ink.line(2));
    double from = first ? 0.34 : RIM - 0.06;
    g.draw(
        new Line2D.Double(
            x(a, from * radius), y(a, from * radius), x(a, radius * 0.98), y(a, radius * 0.98)));
    double words = besideSensor(a);
    Font font = Lettering.strong(11);
    double at = sparse ? radius + clear(g, font, words - turned) : radius * 1.07;
    if (tdc.cylinders().isEmpty()) {
      text(g, Wording.of("mark.tdc"), font, ink.tdc(), x(words, at), y(words, at));
    } else {
      text(g, Wording.of("mark.tdc"), font, ink.tdc(), x(words, at), y(words, at) - 6);
      text(g, tdc.cylinders(), font, ink.tdc(), x(words, at), y(words, at) + 6);
    }
  }

  /** An angle for words that would stand on the sensor. */
  private double besideSensor(double degrees) {
    double beside = CrankAngle.wrapDifference(degrees - turned);
    return Math.abs(beside) < SENSOR_WORDS
        ? degrees - beside + Math.copySign(SENSOR_WORDS, beside)
        : degrees;
  }

  /** How far off a small wheel the middle of words stands, so that they do not touch it. */
  private static double clear(Graphics2D g, Font font, double degrees) {
    double half = g.getFontMetrics(font).stringWidth(Wording.of("mark.tdc")) / 2.0;
    return 2 + half * Math.abs(Math.sin(Math.toRadians(degrees)));
  }

  private void words(Graphics2D g) {
    text(g, pattern.toString(), name(g), ink.text(), cx, sparse ? cy : cy - 8);
    if (!sparse) {
      text(g, marks.origin(), Lettering.regular(11), ink.quiet(), cx, cy + 12);
    }
    if (!sparse && factor > 1 && geometry.turns() > 0) {
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
      boolean counts = (k == 1 || k % every == 0) && !besideOdd(k) && !isBeside(k);
      if (isOdd || counts && !sparse) {
        number(g, k, isOdd);
      }
    }
  }

  /** As large as the hub has room for. */
  private Font name(Graphics2D g) {
    Font largest = Lettering.strong(22);
    double share = 1.9 * HUB * radius / g.getFontMetrics(largest).stringWidth(pattern.toString());
    return share >= 1 ? largest : largest.deriveFont((float) (22 * share));
  }

  private boolean isBeside(int k) {
    double at = pattern.degreesAfterTooth1(k);
    return Math.abs(CrankAngle.wrapDifference(at - turned)) < BESIDE
        || marks.tdcs().stream()
            .anyMatch(t -> Math.abs(CrankAngle.wrapDifference(t.degrees() - at)) < BESIDE);
  }

  private boolean besideOdd(int k) {
    return odd.teeth().stream().anyMatch(o -> Math.abs(o - k) == 1);
  }

  private void number(Graphics2D g, int k, boolean isOdd) {
    double a = isOdd ? besideSensor(pattern.degreesAfterTooth1(k)) : pattern.degreesAfterTooth1(k);
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
    return cx + r * Math.sin(Math.toRadians(degrees - turned));
  }

  private double y(double degrees, double r) {
    return cy - r * Math.cos(Math.toRadians(degrees - turned));
  }
}
