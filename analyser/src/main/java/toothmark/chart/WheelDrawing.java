package toothmark.chart;

import java.awt.Color;
import java.awt.Font;
import java.awt.FontMetrics;
import java.awt.Graphics2D;
import java.awt.geom.Arc2D;
import java.awt.geom.Ellipse2D;
import java.awt.geom.Path2D;
import java.awt.geom.Rectangle2D;
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
  private static final double[] FACTORS = {1, 2, 5, 10, 20, 50, 100};

  private final Examination examination;
  private final WheelPattern pattern;
  private final ToothGeometry geometry;
  private final OddTeeth odd;
  private final Ink ink;
  private final double factor;

  private double cx;
  private double cy;
  private double radius;

  WheelDrawing(Examination examination, DecodedWheel wheel, OddTeeth odd, Ink ink) {
    this.examination = examination;
    this.pattern = wheel.pattern();
    this.geometry = wheel.geometry();
    this.odd = odd;
    this.ink = ink;
    this.factor = enlargement();
  }

  /** The largest round factor that keeps every tooth nearer its own place than the next one's. */
  private double enlargement() {
    double largest = 0;
    for (int k = 1; k <= geometry.teeth(); k++) {
      largest = Math.max(largest, Math.abs(geometry.offsetDegrees(k)));
    }
    double best = 1;
    for (double f : FACTORS) {
      best = f * largest <= 0.45 * pattern.pitchDegrees() ? f : best;
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

  /** Where each coil fires: an arc over nine tenths of its sparks, a dot at their middle. */
  private void firing(Graphics2D g) {
    List<CoilTrack> coils = examination.observations().coils();
    double step = Math.min(0.075, 0.34 / Math.max(1, coils.size()));
    for (int i = 0; i < coils.size(); i++) {
      double r = radius * (RIM - 0.07 - step * i);
      Optional<double[]> spread = spread(coils.get(i));
      if (spread.isPresent()) {
        double[] s = spread.get();
        g.setPaint(ink.coil(i));
        g.setStroke(Ink.line(4));
        double extent = s[2] - s[0];
        g.draw(
            new Arc2D.Double(cx - r, cy - r, 2 * r, 2 * r, 90 - s[0] - extent, extent, Arc2D.OPEN));
        Mark.DOT.draw(
            g, List.of(new double[] {x(s[1], r), y(s[1], r)}), 8, ink.text(), ink.paper());
        double inner = r - 12;
        text(
            g,
            coils.get(i).coil().name(),
            Lettering.regular(11),
            ink.text(),
            x(s[1], inner) + (s[1] % 360 < 180 ? -14 : 14),
            y(s[1], inner));
      }
    }
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
    OptionalDouble at = tdcDegrees();
    if (at.isPresent()) {
      double a = at.getAsDouble();
      g.setPaint(ink.tdc());
      g.setStroke(Ink.line(2));
      Path2D line = new Path2D.Double();
      line.moveTo(x(a, 0.34 * radius), y(a, 0.34 * radius));
      line.lineTo(x(a, radius * 0.98), y(a, radius * 0.98));
      g.draw(line);
      text(g, "TDC", Lettering.strong(11), ink.tdc(), x(a, radius * 1.07), y(a, radius * 1.07));
    }
  }

  private OptionalDouble tdcDegrees() {
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
    text(
        g,
        geometry.turns() == 0 ? "not measured" : geometry.turns() + " turns",
        Lettering.regular(11),
        ink.quiet(),
        cx,
        cy + 12);
    if (factor > 1 && geometry.turns() > 0) {
      text(
          g,
          "errors ×" + Say.THIN + Say.number(factor, 0),
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
    OptionalDouble tdc = tdcDegrees();
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
