package toothmark.chart;

import java.awt.Graphics2D;
import java.awt.geom.Line2D;
import java.awt.geom.Rectangle2D;
import java.util.List;
import java.util.stream.IntStream;
import toothmark.receiver.ConditionerReplay;
import toothmark.receiver.SyncLoss;

/** What another input circuit would have made of the crank signal, to be drawn along it. */
public final class TriedInput {

  /** How high its lane is. */
  static final double LANE = 16;

  private static final double SIZE = 7;

  private record Train(Mark mark, Instants events) {}

  private final List<Train> trains;

  private TriedInput(List<Train> trains) {
    this.trains = trains;
  }

  /**
   * Collects what is to be drawn.
   *
   * @param result what became of the signal
   * @return the teeth lost, the strays and the losses of count
   */
  public static TriedInput of(ConditionerReplay.Result result) {
    return new TriedInput(
        List.of(
            new Train(
                Mark.HOLLOW,
                Instants.of(
                    IntStream.range(0, result.misses().teethLost())
                        .mapToDouble(result.misses()::toothLost)
                        .toArray())),
            new Train(
                Mark.CROSS,
                Instants.of(
                    IntStream.range(0, result.misses().strays())
                        .mapToDouble(result.misses()::stray)
                        .toArray())),
            new Train(
                Mark.FLAG,
                Instants.of(
                    result.trace().losses().stream()
                        .mapToDouble(SyncLoss::timeSeconds)
                        .toArray()))));
  }

  /** Draws it on a lane; {@code from} to {@code to} is what the lane shows, s. */
  void paint(Graphics2D g, Rectangle2D lane, double from, double to, Ink ink) {
    g.setPaint(ink.paper());
    g.fill(lane);
    g.setPaint(ink.grid());
    g.setStroke(Ink.line(1));
    double middle = lane.getCenterY();
    g.draw(new Line2D.Double(lane.getMinX(), middle, lane.getMaxX(), middle));
    double perSecond = lane.getWidth() / (to - from);
    for (Train t : trains) {
      double y = t.mark == Mark.FLAG ? lane.getMaxY() - 1 : middle;
      List<double[]> places =
          t.events.places(from, to, at -> lane.getX() + (at - from) * perSecond, y, SIZE / 3);
      t.mark.draw(g, places, SIZE, ink.text(), ink.paper());
    }
  }
}
