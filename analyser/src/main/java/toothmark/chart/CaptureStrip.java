package toothmark.chart;

import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.geom.Path2D;
import java.awt.geom.Rectangle2D;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.IntPredicate;
import java.util.stream.IntStream;
import toothmark.examination.Examination;
import toothmark.ignition.AbsentSpark;
import toothmark.receiver.SyncLoss;
import toothmark.units.Interval;
import toothmark.wheel.ToothEvents;
import toothmark.wheel.ToothKind;

/** The whole capture on one narrow strip, every event marked. */
public final class CaptureStrip {

  private static final double LANES = 0.34;
  private static final double SIZE = 7;
  private static final double APART = 2;

  private final Interval span;
  private final Optional<Curve> curve;
  private final Ink ink;
  private final List<Lane> lanes = new ArrayList<>();
  private List<Interval> undecided = List.of();
  private Optional<TriedInput> tried = Optional.empty();

  private record Lane(Mark mark, double height, Instants events) {}

  /**
   * Collects the events.
   *
   * @param span of the whole capture
   * @param curve of the crank channel; empty for bare instants: then the speed is drawn
   * @param examination what was found; empty while it is not known
   * @param ink for which ground
   */
  public CaptureStrip(
      Interval span, Optional<Curve> curve, Optional<Examination> examination, Ink ink) {
    this.span = span;
    this.curve = curve.or(() -> examination.flatMap(CaptureStrip::speed));
    this.ink = ink;
    examination.ifPresent(this::collect);
  }

  private static Optional<Curve> speed(Examination e) {
    Points turns = Timeline.turnSpeeds(e);
    return turns.size() < 2 ? Optional.empty() : Optional.of(SeriesCurve.through(turns));
  }

  private void collect(Examination e) {
    undecided = e.observations().crank().map(c -> c.wheel().undecided()).orElse(List.of());
    e.teeth()
        .ifPresent(
            t -> {
              lanes.add(new Lane(Mark.HOLLOW, 0.7, times(t, i -> t.kind(i) == ToothKind.MISSING)));
              lanes.add(new Lane(Mark.CROSS, 0.7, times(t, i -> t.kind(i) == ToothKind.STRAY)));
            });
    lanes.add(
        new Lane(
            Mark.TRIANGLE,
            0.7,
            Instants.of(
                e.observations().coils().stream()
                    .flatMap(c -> c.absent().stream())
                    .mapToDouble(AbsentSpark::timeSeconds)
                    .sorted()
                    .toArray())));
    lanes.add(
        new Lane(
            Mark.FLAG,
            0.95,
            Instants.of(
                e.observations().receiver().losses().stream()
                    .mapToDouble(SyncLoss::timeSeconds)
                    .toArray())));
  }

  /**
   * Shows along the lower edge what another input circuit would have made of the crank signal.
   *
   * @param next its losses and strays; empty for none
   */
  public void setTried(Optional<TriedInput> next) {
    tried = next;
  }

  private static Instants times(ToothEvents teeth, IntPredicate which) {
    return Instants.of(
        IntStream.range(0, teeth.size()).filter(which).mapToDouble(teeth::time).toArray());
  }

  /**
   * Draws the strip.
   *
   * @param g where
   * @param whole where on it
   */
  public void draw(Graphics2D g, Rectangle2D whole) {
    double below = tried.isPresent() ? TriedInput.LANE : 0;
    Rectangle2D area =
        new Rectangle2D.Double(
            whole.getX(), whole.getY(), whole.getWidth(), whole.getHeight() - below);
    Rectangle2D foot =
        new Rectangle2D.Double(whole.getX(), area.getMaxY(), whole.getWidth(), below);
    tried.ifPresent(t -> t.paint(g, foot, span.startInclusive(), span.endExclusive(), ink));
    double top = area.getHeight() * LANES;
    Color pale = ink.thin(ink.trouble(), 0.2);
    g.setPaint(pale);
    for (Interval u : undecided) {
      double x = x(u.startInclusive(), area);
      g.fill(
          new Rectangle2D.Double(
              x, area.getY(), Math.max(1, x(u.endExclusive(), area) - x), area.getHeight()));
    }
    curve.ifPresent(
        c ->
            signal(
                g,
                c,
                new Rectangle2D.Double(
                    area.getX(), area.getY() + top, area.getWidth(), area.getHeight() - top)));
    for (Lane lane : lanes) {
      marks(g, lane, area, area.getY() + top * lane.height());
    }
  }

  private void signal(Graphics2D g, Curve c, Rectangle2D area) {
    var up = c.up(span.startInclusive(), span.endExclusive());
    double scale = (area.getHeight() - 4) / Math.max(1e-12, up.getLength());
    Path2D path = new Path2D.Double();
    int columns = (int) Math.max(1, area.getWidth());
    c.trace(
        span.startInclusive(),
        span.endExclusive(),
        columns,
        new Curve.Line() {
          @Override
          public void moveTo(double t, double v) {
            path.moveTo(x(t, area), y(v));
          }

          @Override
          public void lineTo(double t, double v) {
            path.lineTo(x(t, area), y(v));
          }

          private double y(double v) {
            return area.getMaxY() - 2 - (v - up.getLowerBound()) * scale;
          }
        });
    g.setPaint(ink.thin(ink.crank(), 0.55));
    g.setStroke(Ink.line(1));
    g.draw(path);
  }

  private void marks(Graphics2D g, Lane lane, Rectangle2D area, double y) {
    List<double[]> places =
        lane.events().places(span.startInclusive(), span.endExclusive(), t -> x(t, area), y, APART);
    if (!places.isEmpty()) {
      lane.mark().draw(g, places, SIZE, ink.trouble(), ink.paper());
    }
  }

  private double x(double time, Rectangle2D area) {
    return area.getX() + area.getWidth() * (time - span.startInclusive()) / span.seconds();
  }
}
