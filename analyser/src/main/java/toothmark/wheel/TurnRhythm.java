package toothmark.wheel;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.IntStream;

/**
 * Reads the wheel from what all turns of a clean train have in common.
 *
 * <p>On the starter a slow tooth and a gap look alike from edge to edge; over the turn they do not,
 * see {@link TurnPace}. It needs a train in which every turn has the same edges: no strays, no
 * tooth lost.
 *
 * <p>Where cylinders are odd in number or unlike, a turn's pace is not that of the next, and what
 * repeats is the cycle. So a row of intervals may also be two turns of a wheel of half as many
 * teeth.
 */
final class TurnRhythm {

  private static final int FEWEST_TEETH = 3;
  private static final int MOST_TEETH = 120;

  /** Turns differ by less than that share of an interval, or they are not turns. */
  private static final double ALIKE = 0.06;

  /** No interval differs by more from turn to turn; one with and without a gap does. */
  private static final double MOST_UNLIKE = 0.25;

  /** Teeth of finer wheels stand in each other's field, and their pace shows without widths. */
  private static final int MOST_WITH_WIDTHS = 24;

  private static final double WIDTHS_ALIKE = 0.15;

  /** Above this speed no wave of the pace is so strong that a gap could be mistaken. */
  private static final double STARTER_RPM = 500;

  private static final int NEIGHBOURS = 3;
  private static final int MOST_GAPS = 4;
  private static final int MOST_WIDE = 5;
  private static final double CLEAR_NATS = 3;
  private static final double MOST_VOTES = 0.8;

  /** Into so many parts a train is divided where the whole does not repeat. */
  private static final int PARTS = 3;

  private final int from;
  private final int to;
  private final double[] shares;
  private final TurnPace pace;
  private final double turnSeconds;

  private TurnRhythm(int from, int to, double[] shares, TurnPace pace, double turnSeconds) {
    this.from = from;
    this.to = to;
    this.shares = shares;
    this.pace = pace;
    this.turnSeconds = turnSeconds;
  }

  /**
   * Finds the turn that repeats.
   *
   * @param edges the series
   * @param from first edge
   * @param to end, exclusive
   * @return the shortest row of intervals that repeats at least twice; empty when none does
   */
  static Optional<TurnRhythm> atAnySpeed(EdgeSeries edges, int from, int to) {
    for (int teeth = FEWEST_TEETH; teeth <= MOST_TEETH; teeth++) {
      Optional<TurnRhythm> r = fold(edges, from, to, teeth);
      if (r.isPresent()) {
        return r;
      }
    }
    return Optional.empty();
  }

  /** Finds the turn that repeats, as {@link #atAnySpeed}; empty at a running speed too. */
  static Optional<TurnRhythm> of(EdgeSeries edges, int from, int to) {
    return atAnySpeed(edges, from, to).filter(TurnRhythm::isOnTheStarter);
  }

  private boolean isOnTheStarter() {
    return 60 < STARTER_RPM * turnSeconds;
  }

  /**
   * Puts labels right that are off by some teeth in all turns, as happens where the starter's
   * ripple makes a gap look like a slow tooth and a slow tooth like the gap.
   *
   * @param edges the series
   * @param labels of it, changed where another first tooth is much likelier
   * @param wheel by which they were given
   */
  static void settle(EdgeSeries edges, Labelling labels, WheelPattern wheel) {
    int size = labels.size();
    boolean onlyStarter = wheel.hasReference() && isOnlyStarter(edges.times, labels, wheel.teeth());
    for (int part = 1; onlyStarter && part <= PARTS; part++) {
      for (int k = 0; k < part; k++) {
        int from = labels.from + size * k / part;
        int to = labels.from + size * (k + 1) / part;
        Optional<TurnRhythm> rhythm =
            fold(edges, from, to, wheel.teeth())
                .or(() -> fold(edges, from, to, 2 * wheel.teeth()))
                .filter(TurnRhythm::isOnTheStarter);
        if (rhythm.isPresent()) {
          rhythm.get().settle(labels, wheel, from - labels.from, to - labels.from);
          return;
        }
      }
    }
  }

  /** Whether no turn is faster: at a running speed the gap is plain, and decides for all. */
  private static boolean isOnlyStarter(double[] times, Labelling labels, int teeth) {
    int end = labels.from + labels.size();
    for (int i = labels.from; i + teeth < end; i++) {
      if (60 > STARTER_RPM * (times[i + teeth] - times[i])) {
        return false;
      }
    }
    return true;
  }

  private void settle(Labelling labels, WheelPattern wheel, int from, int to) {
    TurnPace.Fit fit = pace.fit(wheel);
    int[] votes = new int[wheel.teeth()];
    for (int i = from; i < to; i++) {
      if (labels.teeth[i] != Labelling.STRAY) {
        votes[Math.floorMod(fit.firstTooth() + i - from - labels.teeth[i], wheel.teeth())]++;
      }
    }
    int shift = 0;
    for (int s = 1; s < votes.length; s++) {
      shift = votes[s] > votes[shift] ? s : shift;
    }
    int labelled = Math.floorMod(fit.firstTooth() - shift, wheel.teeth());
    double gain = fit.natsByFirstTooth()[fit.firstTooth()] - fit.natsByFirstTooth()[labelled];
    if (votes[shift] > MOST_VOTES * (to - from) && gain > CLEAR_NATS) {
      for (int i = 0; i < labels.size(); i++) {
        boolean stray = labels.teeth[i] == Labelling.STRAY;
        labels.teeth[i] = stray ? Labelling.STRAY : (labels.teeth[i] + shift) % wheel.teeth();
      }
    }
  }

  /** The turn of so many teeth, if the train repeats by it. */
  private static Optional<TurnRhythm> fold(EdgeSeries edges, int from, int to, int teeth) {
    int turns = (to - from - 1) / teeth;
    if (turns < 2) {
      return Optional.empty();
    }
    double[] times = edges.times;
    double[][] share = new double[teeth][turns];
    double[][] width = new double[teeth][turns];
    for (int turn = 0; turn < turns; turn++) {
      int first = from + turn * teeth;
      double time = times[first + teeth] - times[first];
      for (int k = 0; k < teeth; k++) {
        share[k][turn] = (times[first + k + 1] - times[first + k]) / time;
        width[k][turn] = edges.widths[first + k] / time;
      }
    }
    double[] mean = means(share);
    double squares = 0;
    for (int k = 0; k < teeth; k++) {
      for (double s : share[k]) {
        if (Math.abs(s - mean[k]) > MOST_UNLIKE * mean[k]) {
          return Optional.empty();
        }
        squares += (s - mean[k]) * (s - mean[k]) / mean[k];
      }
    }
    double scatter = Math.sqrt(squares / (teeth * (turns - 1.0)));
    double seconds = (times[from + turns * teeth] - times[from]) / turns;
    return scatter * Math.sqrt(teeth) < ALIKE && !repeats(mean)
        ? Optional.of(new TurnRhythm(from, to, mean, pace(mean, scatter, width, seconds), seconds))
        : Optional.empty();
  }

  private static double[] means(double[][] values) {
    return Arrays.stream(values).mapToDouble(v -> Arrays.stream(v).average().orElse(0)).toArray();
  }

  /** With the widths where each tooth's is known, and about the same in each turn. */
  private static TurnPace pace(double[] shares, double scatter, double[][] width, double seconds) {
    double root = Math.sqrt(width[0].length);
    double[][] known =
        Arrays.stream(width)
            .map(v -> Arrays.stream(v).filter(w -> w > 0).toArray())
            .toArray(double[][]::new);
    double[] mean = means(known);
    double average = Arrays.stream(mean).average().orElseThrow();
    double squares = 0;
    int n = 0;
    for (int k = 0; k < mean.length; k++) {
      for (double w : known[k]) {
        squares += Math.pow((w - mean[k]) / average, 2);
        n++;
      }
    }
    double differs = Math.sqrt(squares / Math.max(1, n - mean.length));
    boolean all = Arrays.stream(mean).allMatch(w -> w > 0);
    boolean used = all && mean.length <= MOST_WITH_WIDTHS && differs < WIDTHS_ALIKE;
    double[] widths = Arrays.stream(used ? mean : new double[0]).map(w -> w / average).toArray();
    return new TurnPace(shares, scatter / root, widths, differs / root, seconds);
  }

  /**
   * Whether a part of the row, less than half, is like every other: then so many teeth are several
   * turns. That halves are too much unlike was found before.
   */
  private static boolean repeats(double[] shares) {
    for (int part = FEWEST_TEETH; part <= shares.length / 3; part++) {
      double most = 0;
      for (int k = 0; k < shares.length && shares.length % part == 0; k++) {
        double other = shares[(k + part) % shares.length];
        most = Math.max(most, Math.abs(other - shares[k]) / (other + shares[k]));
      }
      if (shares.length % part == 0 && most < MOST_UNLIKE / 2) {
        return true;
      }
    }
    return false;
  }

  /** How well wheels explain the row. */
  TurnPace pace() {
    return pace;
  }

  /** How many edges the row has that repeats. */
  int teeth() {
    return shares.length;
  }

  /** Whether the row may be a turn of a wheel, or two, or any part of a plain one's. */
  boolean suits(WheelPattern wheel) {
    return wheel.teeth() == shares.length || pace.isCycleOf(wheel) || !wheel.hasReference();
  }

  /** How probable a wheel makes the row, nats; a plain one whatever its number of teeth. */
  double nats(WheelPattern wheel) {
    return pace.fit(wheel.hasReference() ? wheel : WheelPattern.plain(shares.length)).nats();
  }

  /**
   * Wheels with as many teeth, or with half as many: those with one gap, with an extra tooth, with
   * none, and what the intervals show when each is measured by those around it, one of its gaps a
   * slot more or less, or some of them alike and no others; and when it is measured by the widths
   * of its own edges.
   */
  Set<WheelPattern> candidates() {
    Set<WheelPattern> all = new LinkedHashSet<>();
    addCandidates(shares, all);
    addBySteps(pace.stepsByWidths(), all);
    int half = shares.length / 2;
    if (shares.length % 2 == 0 && half >= FEWEST_TEETH) {
      double[] turn = new double[half];
      Arrays.setAll(turn, k -> shares[k] + shares[k + half]);
      addCandidates(turn, all);
    }
    return all;
  }

  private static void addCandidates(double[] shares, Set<WheelPattern> all) {
    int n = shares.length;
    for (int missing = 1; missing <= 3; missing++) {
      all.add(WheelPattern.of(n + missing, missing));
    }
    all.add(WheelPattern.plain(n));
    if (n - 1 >= FEWEST_TEETH) {
      all.add(WheelPattern.withExtraTooth(n - 1));
    }
    int[] steps = new int[n];
    double[] around = new double[2 * NEIGHBOURS + 1];
    for (int k = 0; k < n; k++) {
      for (int j = 0; j < around.length; j++) {
        around[j] = shares[Math.floorMod(k + j - NEIGHBOURS, n)];
      }
      steps[k] = (int) Math.max(1, Math.round(shares[k] / median(around)));
    }
    addBySteps(steps, all);
    int[] wide = IntStream.range(0, n).filter(k -> steps[k] > 1).toArray();
    for (int k : wide) {
      for (int change = -1; change <= 1; change += 2) {
        steps[k] += change;
        addBySteps(steps, all);
        steps[k] -= change;
      }
    }
    if (wide.length <= MOST_WIDE) {
      addAlike(n, wide, all);
    }
  }

  /** Any of the wide intervals are gaps of one size, and the others slow teeth. */
  private static void addAlike(int n, int[] wide, Set<WheelPattern> all) {
    for (int some = 1; some < 1 << wide.length; some++) {
      for (int gap = 2; gap <= 4; gap++) {
        int[] steps = new int[n];
        Arrays.fill(steps, 1);
        for (int k = 0; k < wide.length; k++) {
          steps[wide[k]] = (some >> k & 1) == 1 ? gap : 1;
        }
        addBySteps(steps, all);
      }
    }
  }

  private static void addBySteps(int[] steps, Set<WheelPattern> all) {
    List<Integer> runs = new ArrayList<>();
    List<Integer> gaps = new ArrayList<>();
    int n = steps.length;
    int start = 0;
    while (start < n && steps[start] == 1) {
      start++;
    }
    int run = 1;
    for (int i = 1; start < n && i <= n; i++) {
      int step = steps[(start + i) % n];
      if (step == 1) {
        run++;
      } else {
        runs.add(run);
        gaps.add(step - 1);
        run = 1;
      }
    }
    int slots = Arrays.stream(steps).sum();
    if (!runs.isEmpty() && runs.size() <= MOST_GAPS && slots <= MOST_TEETH + 12) {
      all.add(WheelPattern.ofRuns(slots, ints(runs), ints(gaps)));
    }
  }

  private static int[] ints(List<Integer> list) {
    return list.stream().mapToInt(Integer::intValue).toArray();
  }

  /**
   * Labels the train, in which every edge is a tooth.
   *
   * @param wheel that suits the row
   * @return its labels
   */
  Labelling label(WheelPattern wheel) {
    Labelling labels = new Labelling(from, to);
    int first = wheel.hasReference() ? pace.fit(wheel).firstTooth() : 0;
    for (int i = 0; i < labels.size(); i++) {
      labels.teeth[i] = (first + i) % wheel.teeth();
      labels.steps[i] = i == 0 ? 0 : 1;
    }
    return labels;
  }

  private static double median(double[] values) {
    double[] sorted = values.clone();
    Arrays.sort(sorted);
    return sorted[sorted.length / 2];
  }
}
