package toothmark.wheel;

/**
 * Follows the one reading that is left while every edge is the next tooth and comes on time.
 *
 * <p>It does what the full search would do with a single way open, without the search. At the first
 * edge that is late, early or weak it stops and goes back one turn, so that the full search decides
 * with all that went before the surprise.
 */
final class SteadyRun {

  /** Up to this many squared deviations a tooth is in place beyond doubt. */
  private static final double SURELY_IN_PLACE = 4;

  private static final double ON_TIME = 9;

  /** Later or earlier than this an edge could be something else, in edge intervals. */
  private static final double NEAR = 0.2;

  private static final double WEAK_NATS = 0.5;

  private final EdgeSeries edges;
  private final WheelTemplate wheel;
  private final NoiseModel noise;
  private final SpeedFilter filter;
  private final Lateness lateness = new Lateness();
  private final SpeedState state = new SpeedState();
  private int end;
  private final Survivor[] marks = new Survivor[2];

  SteadyRun(EdgeSeries edges, WheelTemplate wheel, NoiseModel noise, SpeedFilter filter) {
    this.edges = edges;
    this.wheel = wheel;
    this.noise = noise;
    this.filter = filter;
  }

  /**
   * Follows.
   *
   * @param start the reading that is left
   * @param to end of the edges, exclusive
   * @param labels that are written for every edge followed
   * @return where to go on: a tooth one turn before the surprise, or the last tooth at the end
   */
  Survivor follow(Survivor start, int to, Labelling labels) {
    state.copySpeed(start);
    int tooth = start.tooth;
    int turn = Math.max(8, wheel.teeth());
    marks[0] = start;
    marks[1] = start;
    for (int i = start.edge + 1; i < to; i++) {
      int next = tooth + 1 == wheel.teeth() ? 0 : tooth + 1;
      end = i;
      if (!isNext(i, wheel.ahead(tooth, 1), wheel.strength(next))) {
        return unlabelled(marks[0], i, labels);
      }
      tooth = next;
      labels.teeth[i - labels.from] = tooth;
      labels.steps[i - labels.from] = 1;
      if (i - marks[1].edge >= turn) {
        marks[0] = marks[1];
        marks[1] = mark(i, tooth);
      }
    }
    return to - 1 == start.edge ? start : mark(to - 1, tooth);
  }

  /** The edge that was the surprise, or the last. */
  int end() {
    return end;
  }

  /** Takes the edge for the next tooth if nothing speaks against it. */
  private boolean isNext(int i, double angle, double strength) {
    double interval = edges.intervals[i];
    double rate = 1 / interval;
    double dt = edges.times[i] - state.time;
    if (edges.toothNats(i, strength) > WEAK_NATS || dt <= 0) {
      return false;
    }
    filter.lookAhead(
        (edges.times[i] - edges.times[i - 1]) * rate, noise.roughnessAt(edges.slowest[i]));
    filter.predict(state);
    double u = edges.uncertainties[i] * rate;
    double jitter = noise.jitter() * noise.jitter() + u * u;
    double variance = filter.varTime + jitter;
    double late = (dt - angle * filter.meanPace) * rate;
    double square = late * late;
    if (square > ON_TIME * variance || square > NEAR * NEAR) {
      return false;
    }
    double spread = 0;
    if (square > SURELY_IN_PLACE * variance) {
      lateness.of(variance);
      spread = lateness.spread(late);
    }
    filter.correct(state, edges.times[i], late, jitter + spread, interval);
    return true;
  }

  private Survivor mark(int edge, int tooth) {
    Survivor s = new Survivor(edge, tooth);
    s.copySpeed(state);
    s.steps = 1;
    return s;
  }

  private static Survivor unlabelled(Survivor back, int end, Labelling labels) {
    for (int i = back.edge + 1; i < end; i++) {
      labels.teeth[i - labels.from] = Labelling.STRAY;
      labels.steps[i - labels.from] = 0;
    }
    return back;
  }
}
