package toothmark.chart;

import java.awt.Color;
import java.awt.Graphics2D;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.OptionalInt;
import java.util.stream.IntStream;
import org.jfree.chart.ui.RectangleEdge;

/**
 * The words of a train of events along the upper edge: all where there is room, else those of a
 * round step, and none where even these would touch.
 */
record NumbersLayer(Instants events, Color colour, Color paper) implements Layer {

  private static final int[] STEPS = {1, 5, 10, 20};
  private static final double ROOM = 22;
  private static final double SIZE = 11;

  /** Kept free for the name of the channel. */
  private static final double LEFT = 92;

  @Override
  public void paint(Graphics2D g, Frame frame) {
    int from =
        events.from(
            frame
                .xAxis()
                .java2DToValue(frame.area().getMinX() + LEFT, frame.area(), RectangleEdge.BOTTOM));
    int to = events.from(Math.nextUp(frame.toX()));
    step(spacing(frame, from, to)).ifPresent(step -> labels(from, to, step).paint(g, frame));
  }

  /** From one event to the next, as half of them stand; 0 where there are more than have room. */
  private double spacing(Frame frame, int from, int to) {
    double width = frame.area().getWidth();
    double perSecond = width / (frame.toX() - frame.fromX());
    if (to - from < 2 || width / (to - from) * STEPS[STEPS.length - 1] < ROOM) {
      return to - from < 2 ? width : 0;
    }
    double[] steps =
        IntStream.range(from + 1, to)
            .mapToDouble(i -> events.times()[i] - events.times()[i - 1])
            .sorted()
            .toArray();
    return steps[steps.length / 2] * perSecond;
  }

  /**
   * The smallest step of tooth numbers at which none touches the next.
   *
   * @param spacing from one tooth to the next
   * @return empty where even the largest step is too narrow
   */
  static OptionalInt step(double spacing) {
    return Arrays.stream(STEPS).filter(step -> spacing * step >= ROOM).findFirst();
  }

  /** Whether a tooth has its number written at a step; the first always has. */
  static boolean isNumbered(int tooth, int step) {
    return tooth == 1 || tooth % step == 0;
  }

  private LabelsLayer labels(int from, int to, int step) {
    List<LabelsLayer.Label> first = new ArrayList<>();
    List<LabelsLayer.Label> rest = new ArrayList<>();
    for (int i = from; i < to; i++) {
      int number = Integer.parseInt(events.word(i));
      if (isNumbered(number, step)) {
        (number == 1 ? first : rest)
            .add(
                new LabelsLayer.Label(
                    events.times()[i],
                    Double.NaN,
                    events.word(i),
                    LabelsLayer.Place.BELOW,
                    colour));
      }
    }
    first.addAll(rest);
    return new LabelsLayer(first, Lettering.regular(SIZE), paper);
  }
}
