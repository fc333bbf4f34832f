package toothmark.chart;

import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.geom.Point2D;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.jfree.data.Range;

/** Marks at points; where many fall on one place of the paper one is drawn. */
record MarksLayer(Points points, Mark mark, double size, Style style) implements Layer {

  private static final double LIFT = 3;

  /** Colours of a mark: its own, and the ground that shows through a hollow one. */
  record Style(Color colour, Color paper) {}

  @Override
  public Optional<Range> across() {
    return points.across();
  }

  @Override
  public Optional<Range> up() {
    return points.up();
  }

  @Override
  public void paint(Graphics2D g, Frame frame) {
    List<double[]> places = new ArrayList<>();
    Set<Long> taken = new HashSet<>();
    double cell = Math.max(1, size / 3);
    for (int i = 0; i < points.size(); i++) {
      if (frame.showsX(points.x(i))) {
        double x = frame.x(points.x(i));
        double y = frame.y(points.y(i));
        if (taken.add(
            (long) Math.floor(x / cell) << 32 ^ (long) Math.floor(y / cell) & 0xFFFFFFFFL)) {
          places.add(new double[] {x, y});
        }
      }
    }
    if (!places.isEmpty()) {
      mark.draw(g, places, size, style.colour(), style.paper());
    }
  }

  /** Rings the one that is picked out, and lifts those of the part that is looked at. */
  @Override
  public void mark(Graphics2D g, Frame frame, Picked picked, Ink ink) {
    boolean timed = points.isTimed();
    List<double[]> looked = new ArrayList<>();
    Set<Long> taken = new HashSet<>();
    for (int i = 0; i < points.size(); i++) {
      double t = timed ? points.time(i) : points.x(i);
      if (frame.showsX(points.x(i)) && (timed || isTime(frame))) {
        double x = frame.x(points.x(i));
        double y = frame.y(points.y(i));
        if (timed && picked.isInSpan(t) && taken.add(((long) x << 32) ^ (long) y)) {
          looked.add(new double[] {x, y});
        }
        if (picked.isAt(t)) {
          Links.ring(g, x, y, ink);
        }
      }
    }
    if (!looked.isEmpty()) {
      Mark.DOT.draw(g, looked, size + LIFT, ink.text(), style.paper());
      mark.draw(g, looked, Math.max(size, LIFT), style.colour(), style.paper());
    }
  }

  @Override
  public Optional<Near> at(Point2D place, Frame frame, Picked picked) {
    boolean timed = points.isTimed();
    Optional<Near> nearest = Optional.empty();
    double least = Links.NEAR;
    for (int i = 0; (timed || isTime(frame)) && i < points.size(); i++) {
      double d =
          frame.showsX(points.x(i))
              ? place.distance(frame.x(points.x(i)), frame.y(points.y(i)))
              : Double.POSITIVE_INFINITY;
      if (d < least) {
        least = d;
        nearest = Optional.of(new Near(Picked.instant(timed ? points.time(i) : points.x(i)), d));
      }
    }
    return nearest;
  }

  private static boolean isTime(Frame frame) {
    return Axes.TIME.equals(frame.xAxis().getLabel());
  }

  @Override
  public void tell(Range shown, Telling to) {
    to.series("points", points);
  }
}
