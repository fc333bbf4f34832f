package toothmark.wheel;

/** The teeth that were seen, unrolled: time and angle of each, in runs without a break of count. */
final class TurnCount {

  private final WheelPattern pattern;

  /** Index of each seen tooth in the edge series. */
  final int[] edges;

  final double[] times;

  /** Teeth since tooth 1 of revolution 0. */
  final long[] counts;

  /** Nominal degrees since tooth 1 of revolution 0. */
  final double[] degrees;

  /** Whether the count was taken up anew at this tooth. */
  final boolean[] fresh;

  private TurnCount(WheelPattern pattern, int n) {
    this.pattern = pattern;
    edges = new int[n];
    times = new double[n];
    counts = new long[n];
    degrees = new double[n];
    fresh = new boolean[n];
  }

  static TurnCount of(EdgeSeries series, Labelling labels, WheelPattern pattern) {
    TurnCount c = new TurnCount(pattern, labels.count());
    int teeth = pattern.teeth();
    int n = 0;
    long count = 0;
    for (int i = 0; i < labels.size(); i++) {
      if (labels.teeth[i] == Labelling.STRAY) {
        continue;
      }
      boolean anew = labels.steps[i] == 0;
      if (n == 0) {
        count = labels.teeth[i] == 0 ? 0 : labels.teeth[i] - teeth;
      } else if (anew) {
        count += Math.floorMod(labels.teeth[i] - count, (long) teeth);
        count += count == c.counts[n - 1] ? teeth : 0;
      } else {
        count += labels.steps[i];
      }
      c.edges[n] = labels.from + i;
      c.times[n] = series.times[labels.from + i];
      c.counts[n] = count;
      c.degrees[n] = c.degreesOf(count);
      c.fresh[n] = anew;
      n++;
    }
    return c;
  }

  int size() {
    return times.length;
  }

  double degreesOf(long count) {
    int teeth = pattern.teeth();
    long turn = Math.floorDiv(count, (long) teeth);
    return 360.0 * turn + pattern.degreesAfterTooth1((int) (count - turn * teeth) + 1);
  }

  /** Moves all teeth from one on by whole turns. */
  void shiftTurns(int from, int turns) {
    for (int i = from; i < size(); i++) {
      counts[i] += (long) turns * pattern.teeth();
      degrees[i] += 360.0 * turns;
    }
  }

  /** Tooth number from 1. */
  int tooth(long count) {
    return (int) Math.floorMod(count, (long) pattern.teeth()) + 1;
  }

  int revolution(long count) {
    return (int) Math.floorDiv(count, (long) pattern.teeth());
  }
}
