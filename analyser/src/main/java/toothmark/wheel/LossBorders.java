package toothmark.wheel;

import java.util.stream.IntStream;

/**
 * Takes back edges beside a loss that do not fit the teeth beyond them.
 *
 * <p>When a signal goes or comes back, the jump may give an edge of its own. After many lost teeth
 * the speed is too uncertain for the search to see that it is none; the teeth that follow show it.
 */
final class LossBorders {

  /** So many teeth in a row are a loss, beside which the speed is uncertain. */
  private static final int LOSS = 3;

  /** Farther from the parabola through the next three teeth, in pitches, an edge is no tooth. */
  private static final double OFF = 0.2;

  /** On coarser wheels the crank changes its speed too much within three teeth, degrees. */
  private static final double COARSEST = 15;

  /** The three teeth are within so many pitches. */
  private static final int NEAR = 8;

  private static final int MOST = 2;

  private final EdgeSeries edges;
  private final Labelling labels;
  private final WheelTemplate wheel;
  private final double pitch;
  private final int[] seen;

  private LossBorders(EdgeSeries edges, Labelling labels, WheelPattern pattern) {
    this.edges = edges;
    this.labels = labels;
    this.wheel = WheelTemplate.of(pattern);
    this.pitch = pattern.pitchDegrees();
    this.seen =
        IntStream.range(0, labels.size()).filter(i -> labels.teeth[i] != Labelling.STRAY).toArray();
  }

  /**
   * Makes strays of them.
   *
   * @param edges the series
   * @param labels of it, changed in place
   * @param pattern the wheel
   */
  static void clear(EdgeSeries edges, Labelling labels, WheelPattern pattern) {
    if (pattern.pitchDegrees() <= COARSEST) {
      LossBorders borders = new LossBorders(edges, labels, pattern);
      for (int k = 1; k < borders.seen.length; k++) {
        if (labels.steps[borders.seen[k]] > LOSS) {
          borders.clearAfter(k);
          borders.clearBefore(k - 1);
        }
      }
    }
  }

  private void clearAfter(int first) {
    for (int k = first; k < first + MOST && k + 3 < seen.length && isOff(k, 1); k++) {
      labels.teeth[seen[k]] = Labelling.STRAY;
      labels.steps[seen[k + 1]] += labels.steps[seen[k]];
    }
  }

  private void clearBefore(int last) {
    int next = seen[last] + 1;
    while (labels.teeth[next] == Labelling.STRAY) {
      next++;
    }
    for (int k = last; k > last - MOST && k >= 4 && isOff(k, -1); k--) {
      labels.teeth[seen[k]] = Labelling.STRAY;
      labels.steps[next] += labels.steps[seen[k]];
    }
  }

  /** Whether an edge is off the parabola of angle through the next three seen on one side. */
  private boolean isOff(int k, int way) {
    double[] x = new double[3];
    double[] t = new double[3];
    double angle = 0;
    for (int j = 0; j < 3; j++) {
      int from = seen[k + way * j];
      int to = seen[k + way * (j + 1)];
      int later = way > 0 ? to : from;
      int earlier = way > 0 ? from : to;
      if (labels.steps[later] == 0 || labels.steps[later] > LOSS) {
        return false;
      }
      angle += way * wheel.ahead(labels.teeth[earlier], labels.steps[later]);
      x[j] = angle;
      t[j] = edges.times[labels.from + to];
    }
    if (Math.abs(angle) > NEAR * pitch) {
      return false;
    }
    double due = 0;
    for (int j = 0; j < 3; j++) {
      double a = x[(j + 1) % 3];
      double b = x[(j + 2) % 3];
      due += t[j] * a * b / ((x[j] - a) * (x[j] - b));
    }
    double pace = (t[2] - t[0]) / (x[2] - x[0]);
    return Math.abs(edges.times[labels.from + seen[k]] - due) > OFF * pitch * pace;
  }
}
