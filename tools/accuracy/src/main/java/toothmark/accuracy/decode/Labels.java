package toothmark.accuracy.decode;

import java.util.Arrays;
import toothmark.accuracy.TextbookFollower;
import toothmark.simulator.Pattern;
import toothmark.wheel.ToothEvents;
import toothmark.wheel.ToothKind;

/** Named instants in time order, as some decoder gave them. */
final class Labels {

  private final double[] times;
  private final int[] teeth;
  private int size;

  private Labels(int capacity) {
    times = new double[capacity];
    teeth = new int[capacity];
  }

  private void add(double time, int tooth) {
    times[size] = time;
    teeth[size++] = tooth;
  }

  /** The analyser's: teeth seen and teeth missing. */
  static Labels of(ToothEvents events) {
    Labels labels = new Labels(events.size());
    for (int i = 0; i < events.size(); i++) {
      if (events.kind(i) != ToothKind.STRAY) {
        labels.add(events.time(i), events.tooth(i));
      }
    }
    return labels;
  }

  /** No instant has a name. */
  static Labels none() {
    return new Labels(0);
  }

  /** The textbook follower's. Edges while it searches have no name. */
  static Labels follower(double[] edges, Pattern wheel) {
    TextbookFollower follower =
        new TextbookFollower(edges, wheel.slots(), wheel.slots() - wheel.teeth());
    Labels labels = new Labels(edges.length);
    for (int i = 0; i < edges.length; i++) {
      if (follower.tooth(i) > 0) {
        labels.add(edges[i], follower.tooth(i));
      }
    }
    return labels;
  }

  /** Plainer still: every gap starts a turn, and edges are counted from there. */
  static Labels gapRatio(double[] edges, Pattern wheel) {
    double limit = 1.0 + 0.5 * (wheel.slots() - wheel.teeth());
    Labels labels = new Labels(edges.length);
    int tooth = 0;
    for (int i = 2; i < edges.length; i++) {
      double ratio = (edges[i] - edges[i - 1]) / (edges[i - 1] - edges[i - 2]);
      tooth = ratio > limit ? 1 : tooth == 0 ? 0 : tooth + 1;
      if (tooth > 0) {
        labels.add(edges[i], tooth);
      }
    }
    return labels;
  }

  /** The name of the instant nearest to a time, if it lies within reach; else 0. */
  int near(double time, double reach) {
    int at = Arrays.binarySearch(times, 0, size, time);
    int after = at < 0 ? -at - 1 : at;
    int best = after;
    if (after == size || (after > 0 && time - times[after - 1] < times[after] - time)) {
      best = after - 1;
    }
    return best >= 0 && best < size && Math.abs(times[best] - time) < reach ? teeth[best] : 0;
  }
}
