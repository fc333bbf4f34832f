package toothmark.chart;

import java.awt.Color;
import java.awt.Graphics2D;
import java.util.ArrayList;
import java.util.List;
import java.util.function.DoubleSupplier;
import org.jfree.chart.ui.RectangleEdge;

/**
 * What odd events in view are, to the right of each along the lower edge, or so far above it: the
 * more important kinds first.
 */
record WordsLayer(List<Instants> kinds, Color colour, Color paper, DoubleSupplier lift)
    implements Layer {

  private static final int MOST = 40;
  private static final double SIZE = 11;

  /** From the edge to the middle of the words. */
  private static final double ABOVE_EDGE = 11;

  @Override
  public void paint(Graphics2D g, Frame frame) {
    List<LabelsLayer.Label> labels = new ArrayList<>();
    for (Instants events : kinds) {
      int from = events.from(frame.fromX());
      int to = events.from(Math.nextUp(frame.toX()));
      if (to - from <= MOST) {
        for (int i = from; i < to; i++) {
          labels.add(label(events, i, frame));
        }
      }
    }
    new LabelsLayer(labels, Lettering.regular(SIZE), paper).paint(g, frame);
  }

  private LabelsLayer.Label label(Instants events, int i, Frame frame) {
    return new LabelsLayer.Label(
        events.times()[i],
        frame
            .yAxis()
            .java2DToValue(
                frame.area().getMaxY() - lift.getAsDouble() - ABOVE_EDGE,
                frame.area(),
                RectangleEdge.LEFT),
        events.word(i),
        LabelsLayer.Place.RIGHT,
        colour);
  }
}
