package toothmark.wheel;

/**
 * Finds the most probable reading of a run of edges: which tooth each one is, or that it is none.
 *
 * <p>Dynamic programming over (edge, tooth). A survivor is the best way of reading everything up to
 * an edge that is a certain tooth; it carries a {@link SpeedState} of its own. Each new edge is
 * tried as every tooth that the speed allows, after every open survivor; edges skipped are strays,
 * teeth skipped are lost. Costs are negative logarithms of probability densities in time (nats):
 *
 * <ul>
 *   <li>a tooth: its {@link Lateness};
 *   <li>a stray: its rate; many in a row are a burst, in which each costs less;
 *   <li>m teeth lost in a row: {@code lossNats + lossGrowth ln m}, concave, since an open circuit
 *       loses a thousand teeth as easily as ten;
 *   <li>taking the count up anew: a fixed price, offered only where the best way is in trouble.
 * </ul>
 *
 * <p>Sources: Viterbi, IEEE Trans. Inf. Theory 13 (1967) 260-269, doi:10.1109/TIT.1967.1054010; the
 * survivors' own filters after Raheli, Polydoros and Tzou, IEEE Trans. Commun. 43 (1995) 354-364,
 * doi:10.1109/26.380054 ("per-survivor processing").
 */
final class Labeller {

  private static final double RESTART_NATS = 18.0;
  private static final double HOPELESS_NATS = 40;
  private static final double FAULT_NATS = 6;
  private static final double TROUBLE = 22.0;
  private static final double FADE = 0.85;
  private static final int FIRST_EDGES = 24;
  private static final int FIRST_STEPS = 4;
  private static final int LOOK_EVERY = 8;
  private static final double CALM = 3;
  private static final double AHEAD = 18;
  private static final int SETTLE_EVERY = 64;
  private static final double ARC_MARGIN = 14;
  private static final double FARTHEST = 3.6e7;
  private static final double HALF_TURN = 180;

  /** How the search is bounded. */
  enum Effort {
    /** Every way within reach stays open: for decoding. */
    THOROUGH(30, true, false),
    /** The same, but follows the only reading without a search where nothing else is in reach. */
    SWIFT(30, true, true),
    /** Fewer ways and no confidences: for comparing wheels. */
    BRISK(26, false, false);

    private final double margin;
    private final boolean confidences;
    private final boolean shortCut;

    Effort(double margin, boolean confidences, boolean shortCut) {
      this.margin = margin;
      this.confidences = confidences;
      this.shortCut = shortCut;
    }
  }

  private final EdgeSeries edges;
  private final WheelTemplate wheel;
  private final NoiseModel noise;
  private final SpeedFilter filter;
  private final Effort effort;
  private final Lateness lateness = new Lateness();
  private final SteadyRun steady;
  private final Lattice lattice = new Lattice();
  private final OpenWays ways;
  private double jitter;
  private double settledCost;
  private Labelling labels;
  private int[] meant = {};
  private double[] rival = {};

  Labeller(
      EdgeSeries edges, WheelTemplate wheel, NoiseModel noise, SpeedFilter filter, Effort effort) {
    this.edges = edges;
    this.wheel = wheel;
    this.noise = noise;
    this.filter = filter;
    this.effort = effort;
    this.steady = new SteadyRun(edges, wheel, noise, filter);
    this.ways = new OpenWays(wheel, effort.margin);
  }

  /**
   * Lets the search begin, or take up the count anew, only with certain teeth.
   *
   * @param teeth for each edge to be labelled, or {@link PhaseCheck#ANY}
   * @return this
   */
  Labeller steered(int[] teeth) {
    meant = teeth;
    return this;
  }

  /**
   * Lets the search give up when it falls far behind another.
   *
   * @param costs of the other up to each edge, nats; empty when there is none
   * @return this
   */
  Labeller against(double[] costs) {
    rival = costs;
    return this;
  }

  /** Allows for what teeth out of place may cost each turn until they are known. */
  private boolean isHopeless(int i) {
    double turns = (i - labels.from) / (double) wheel.teeth();
    return rival.length > 0
        && ways.best() > rival[i - labels.from] + HOPELESS_NATS + FAULT_NATS * Math.max(1, turns);
  }

  /** Whether an edge may be that tooth where the count begins. */
  private boolean isMeant(int i, int tooth) {
    return meant.length == 0 || meant[i - labels.from] == tooth;
  }

  /** Whether the likeliest reading of an edge as a tooth is not the one meant. */
  private boolean isOffCourse(int i) {
    if (meant.length == 0 || meant[i - labels.from] == PhaseCheck.ANY) {
      return false;
    }
    Survivor likeliest = ways.newLeader();
    return likeliest == null || likeliest.tooth != meant[i - labels.from];
  }

  /**
   * Labels edges.
   *
   * @param from first edge
   * @param to end, exclusive
   * @return the most probable labels and their cost
   */
  Labelling label(int from, int to) {
    labels = new Labelling(from, to);
    double before = 0;
    int surprise = from;
    for (int i = from; i < to; i++) {
      advance(i);
      if (i - from < FIRST_EDGES) {
        start(i, null, Survivor.skip(before));
        before += stray(i);
      } else if (ways.leader() == null || trouble() > TROUBLE || isOffCourse(i)) {
        restart(i);
      }
      ways.close(i, edges.times[i], stray(i));
      labels.reached(i, ways.best());
      if (isHopeless(i)) {
        labels.cost = Double.POSITIVE_INFINITY;
        return labels;
      }
      if ((i - from) % SETTLE_EVERY == SETTLE_EVERY - 1) {
        settleShared();
      }
      if (effort.shortCut && i >= surprise && (i - from) % LOOK_EVERY == 0 && isAlone(i)) {
        i = followLone(to);
        surprise = Math.max(surprise, steady.end()) + wheel.teeth() / 2;
      }
    }
    finish();
    return labels;
  }

  /** Follows the only reading while it is beyond doubt; returns the edge from which to search. */
  private int followLone(int to) {
    Survivor lone = ways.leader();
    Survivor on = steady.follow(lone, to, labels);
    if (on != lone) {
      settle(lone);
      ways.goOn(on);
      lattice.clear();
      settledCost = 0;
    }
    return on.edge;
  }

  /** Whether one reading is so far ahead that no other need be looked at. */
  private boolean isAlone(int i) {
    Survivor lone = ways.leader();
    if (lone == null
        || lone.edge != i
        || !lone.paceKnown
        || lone.surprise > CALM
        || i - labels.from < FIRST_EDGES
        || !isMeant(i, lone.tooth)) {
      return false;
    }
    for (Survivor s : ways.list()) {
      if (s.pending < ways.best() + AHEAD && !isBefore(s, lone)) {
        return false;
      }
    }
    return true;
  }

  private static boolean isBefore(Survivor s, Survivor lone) {
    Survivor up = lone;
    while (up != null && up.edge > s.edge) {
      up = up.from;
    }
    return up == s;
  }

  private double stray(int i) {
    return Math.max(0.5, noise.strayNats() - 0.6 * edges.toothNats[i]);
  }

  /** Tries edge i after every open survivor. */
  private void advance(int i) {
    double interval = edges.intervals[i];
    double u = edges.uncertainties[i] / interval;
    jitter = noise.jitter() * noise.jitter() + u * u;
    double roughness = noise.roughnessAt(edges.slowest[i]);
    int since = -1;
    for (Survivor s : ways.list()) {
      double dt = edges.times[i] - edges.times[s.edge];
      if (dt <= 0) {
        continue;
      }
      double base = s.pending;
      if (!s.paceKnown) {
        second(s, i, base, interval, roughness);
        continue;
      }
      if (s.edge != since) {
        filter.lookAhead(dt / interval, roughness);
        since = s.edge;
      }
      follow(s, i, base, interval);
    }
  }

  private void follow(Survivor s, int i, double base, double interval) {
    filter.predict(s);
    double dt = edges.times[i] - s.time;
    double variance = filter.varTime + jitter;
    double pace = filter.meanPace;
    double about = dt / pace;
    if (!(about < FARTHEST)) {
      return;
    }
    double reach = (4 * Math.sqrt(variance) + Lateness.REACH) * interval;
    double span = Math.min(reach / pace, HALF_TURN);
    lateness.of(variance);
    int step = wheel.firstStepBeyond(s.tooth, about - span);
    for (double angle = wheel.ahead(s.tooth, step);
        angle <= about + span;
        angle = wheel.ahead(s.tooth, ++step)) {
      double late = (dt - angle * pace) / interval;
      double weak = edges.toothNats(i, wheel.strength(wheel.after(s.tooth, step)));
      double rare = lost(step - 1) + weak;
      double cost = rare + lateness.nats(late);
      Survivor to = offer(s, i, step, base, cost, filter.paceAfter(late, variance));
      if (to != null) {
        double spread = lateness.spread(late);
        filter.correct(to, edges.times[i], late, jitter + spread, interval);
        if (spread == Lateness.WIDE) {
          to.varPace += 0.25 * late * late;
        }
        to.surprise += rare + 0.5 * late * late / (variance + Lateness.WIDE / 4);
      }
    }
  }

  /** A second tooth gives the pace; before it any pace is as likely as another. */
  private void second(Survivor s, int i, double base, double interval, double roughness) {
    double dt = edges.times[i] - edges.times[s.edge];
    double h = dt / interval;
    for (int step = 1; step <= Math.min(FIRST_STEPS, wheel.teeth()); step++) {
      double cost = lost(step - 1) + edges.toothNats[i] + Math.log(4 * Math.max(h, 0.05));
      double pace = dt / wheel.ahead(s.tooth, step);
      Survivor to = offer(s, i, step, base, cost, Math.log(pace));
      if (to != null) {
        SpeedFilter.start(to, edges.times[i], pace, h, jitter, roughness);
      }
    }
  }

  private double lost(int m) {
    return m == 0 ? 0 : noise.lossNats() + noise.lossGrowth() * Math.log(m);
  }

  /**
   * Offers a way to read edge i.
   *
   * @return the survivor to fill in when this is the best way to that label, else null
   */
  private Survivor offer(Survivor s, int i, int step, double base, double cost, double logPace) {
    double total = base + cost;
    if (total > ways.best() + effort.margin) {
      return null;
    }
    int tooth = wheel.after(s.tooth, step);
    Survivor to = ways.place(i, tooth, logPace);
    if (effort.confidences && (to.cost > total || total < ways.best() + ARC_MARGIN)) {
      lattice.add(s, to, total - s.cost);
    }
    if (to.cost <= total) {
      return null;
    }
    to.from = s;
    to.steps = step;
    to.cost = total;
    s.successor = Math.min(s.successor, total - ways.best());
    to.surprise = FADE * s.surprise + Survivor.skip(s.strayNats);
    return to;
  }

  /** Any tooth may be the first; its pace is open. */
  private void start(int i, Survivor after, double base) {
    double cost = base + Math.log(wheel.starts()) + edges.toothNats[i];
    for (int k = 0; k < wheel.starts(); k++) {
      if (!isMeant(i, k)) {
        continue;
      }
      Survivor s = ways.place(i, k, Double.NaN);
      if (cost < s.cost) {
        s.time = edges.times[i];
        s.logPace = Double.NaN;
        s.paceKnown = false;
        s.from = after;
        s.steps = 0;
        s.cost = cost;
        s.surprise = 0;
        if (effort.confidences) {
          lattice.add(after, s, after == null ? cost - settledCost : cost - after.cost);
        }
      }
    }
  }

  private void restart(int i) {
    Survivor leader = ways.leader();
    double base = leader == null ? ways.best() : leader.pending;
    start(i, leader, base + RESTART_NATS);
  }

  private double trouble() {
    Survivor s = ways.leader();
    return s.surprise + Survivor.skip(s.strayNats);
  }

  /** Writes down what all open ways have in common. */
  private void settleShared() {
    Survivor shared = ways.shared();
    if (shared != null && shared.from != null) {
      settle(shared);
    }
  }

  private void settle(Survivor to) {
    for (Survivor s = to; s != null && s.from != s; s = s.from) {
      labels.teeth[s.edge - labels.from] = s.tooth;
      labels.steps[s.edge - labels.from] = s.steps;
    }
    if (effort.confidences) {
      lattice.settle(ways.list(), to, labels);
    }
    settledCost = to.cost;
    to.from = null;
  }

  private void finish() {
    Survivor leader = ways.leader();
    if (leader == null) {
      labels.cost = Double.POSITIVE_INFINITY;
      return;
    }
    labels.cost = effort.shortCut ? Double.NaN : leader.pending;
    settle(leader);
  }
}
