package toothmark.chart;

import java.awt.Color;
import java.awt.Graphics2D;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.jfree.data.Range;

/** Marks at points; where many fall on one place of the paper one is drawn. */
record MarksLayer(Points points, Mark mark, double size, Style style) implements Layer {

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

  @Override
  public void tell(Range shown, Telling to) {
    to.series("points", points);
  }
}
