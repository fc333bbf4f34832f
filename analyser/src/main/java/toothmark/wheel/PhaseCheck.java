package toothmark.wheel;

import java.util.Arrays;
import java.util.BitSet;
import java.util.List;
import java.util.function.Supplier;

/**
 * Looks over all turns at once for where the gap is.
 *
 * <p>A search that goes from edge to edge may settle, while strays fill the gap or the crank starts
 * from rest, on a count that is off by some slots, and nothing later makes it improbable enough at
 * any one place to be given up. Over a turn the places that stay empty tell: the labelled train is
 * laid out slot by slot, every shift of the wheel is charged with the edges in its gaps and with
 * its teeth that gave none, and the cheapest row of shifts from turn to turn is found, a change of
 * shift having its price (Viterbi, IEEE Trans. Inf. Theory 13 (1967) 260-269,
 * doi:10.1109/TIT.1967.1054010).
 */
final class PhaseCheck {

  /** Any tooth may be meant. */
  static final int ANY = -1;

  /** Nats for and against a gap in an empty place and in a full one, by 7 % and 8 % of errors. */
  private static final double EMPTY_NATS = Math.log(0.92 / 0.07);

  private static final double FULL_NATS = Math.log(0.93 / 0.08);
  private static final double CHANGE_NATS = 18;

  /** What every turn says against a gap that is full while a tooth's place is empty. */
  static final double NATS_A_TURN = EMPTY_NATS + FULL_NATS;

  /**
   * Labels that cost so much more a turn are not less likely, nats: a tooth out of place costs the
   * same as none wherever the gap is taken to be, give or take what its edge does to the speed.
   */
  private static final double AS_DEAR = 0.5;

  /** A reading that calls teeth strays puts none of them right. */
  private static final double MOST_NAMED = 0.95;

  /** An edge that far from its place, in slots, fills it no more than chance would. */
  private static final double IN_PLACE = 0.15;

  private static final int MOST_STEP = 4;

  private final EdgeSeries edges;
  private final Labelling labels;
  private final WheelPattern pattern;
  private final int places;
  private final int[] placeOf;
  private final int[] toothAt;
  private final long[] at;
  private final BitSet full = new BitSet();

  private PhaseCheck(EdgeSeries edges, Labelling labels, WheelPattern pattern) {
    this.edges = edges;
    this.labels = labels;
    this.pattern = pattern;
    boolean halves = pattern.teeth() > pattern.slots();
    this.places = halves ? 2 * pattern.slots() : pattern.slots();
    this.placeOf = new int[pattern.teeth()];
    this.toothAt = new int[places];
    Arrays.fill(toothAt, ANY);
    for (int k = 0; k < placeOf.length; k++) {
      placeOf[k] = (int) Math.round(pattern.degreesAfterTooth1(k + 1) * places / 360) % places;
      toothAt[placeOf[k]] = k;
    }
    this.at = new long[labels.size()];
  }

  /**
   * Labels edges, and once more where the first labels are off by some slots.
   *
   * @param edges the series
   * @param pattern the wheel, none of its teeth dead
   * @param search gives a new search by that wheel
   * @param from first edge
   * @param to end, exclusive
   * @return the first labels, or those of a search that is steered to the cheapest shifts where
   *     that puts turns right
   */
  static Labelling label(
      EdgeSeries edges, WheelPattern pattern, Supplier<Labeller> search, int from, int to) {
    List<Labelling> both = readings(edges, pattern, search, from, to);
    Labelling first = both.get(0);
    if (both.size() < 2) {
      return first;
    }
    Labelling again = both.get(1);
    double turns = (double) first.count() / pattern.teeth();
    boolean dearer = again.cost > first.cost + AS_DEAR * Math.max(1, turns);
    int left = off(again, corrected(edges, again, pattern));
    boolean names = again.count() >= MOST_NAMED * first.count();
    return names && !dearer && left < off(first, corrected(edges, first, pattern)) ? again : first;
  }

  /**
   * Labels edges, and once more where the first labels are off by some slots.
   *
   * @param edges the series
   * @param pattern the wheel, none of its teeth dead
   * @param search gives a new search by that wheel
   * @param from first edge
   * @param to end, exclusive
   * @return the first labels, then those of a search that is steered to the cheapest shifts, if any
   */
  static List<Labelling> readings(
      EdgeSeries edges, WheelPattern pattern, Supplier<Labeller> search, int from, int to) {
    Labelling first = search.get().label(from, to);
    TurnRhythm.settle(edges, first, pattern);
    int[] meant = corrected(edges, first, pattern);
    return meant.length == 0
        ? List.of(first)
        : List.of(first, search.get().steered(meant).label(from, to));
  }

  /** Whether a gap with a dead tooth's place for one of its own looks just like the wheel's. */
  static boolean mayExchange(WheelPattern pattern, ToothFaults faults) {
    int[] gaps = pattern.gapLengths();
    int dead = faults.firstDead();
    boolean beside = dead == 0 || dead == pattern.teeth() - 1;
    return faults.dead() == 1 && gaps.length == 1 && (gaps[0] == 1 || beside);
  }

  /**
   * Counts the same edges as if a dead tooth's place were in the gap, and one of the gap's own a
   * tooth's.
   *
   * @param edges the series
   * @param labels of it
   * @param pattern a wheel with one gap
   * @param dead the tooth, from 0; beside the gap if that is wider than one
   * @return other labels; an edge in the place of the new gap is a stray
   */
  static Labelling withGapAt(EdgeSeries edges, Labelling labels, WheelPattern pattern, int dead) {
    PhaseCheck check = new PhaseCheck(edges, labels, pattern);
    check.layOut();
    int gap = pattern.gapLengths()[0];
    int shift = dead == 0 ? 1 : check.placeOf[dead] - (check.places - gap);
    Labelling other = new Labelling(labels.from, labels.from + labels.size());
    long before = -1;
    for (int i = 0; i < labels.size(); i++) {
      if (labels.teeth[i] != Labelling.STRAY) {
        long place = check.at[i] - shift;
        other.teeth[i] = check.toothAt[(int) Math.floorMod(place, (long) check.places)];
        other.confidences[i] = labels.confidences[i];
        before = labels.steps[i] == 0 ? -1 : before;
        if (other.teeth[i] != ANY) {
          other.steps[i] = before < 0 ? 0 : check.teethFrom(before, place);
          before = place;
        }
      }
    }
    return other;
  }

  /** How many teeth stand after one place up to another. */
  private int teethFrom(long before, long place) {
    int teeth = 0;
    for (long p = before + 1; p <= place; p++) {
      teeth += toothAt[(int) Math.floorMod(p, (long) places)] == ANY ? 0 : 1;
    }
    return teeth;
  }

  private static int off(Labelling labels, int[] meant) {
    int off = 0;
    for (int i = 0; i < meant.length; i++) {
      off += labels.teeth[i] != Labelling.STRAY && meant[i] != labels.teeth[i] ? 1 : 0;
    }
    return off;
  }

  /** For each edge the tooth it should be, or {@link #ANY}; empty when the labels stand. */
  private static int[] corrected(EdgeSeries edges, Labelling labels, WheelPattern pattern) {
    if (!pattern.hasReference() || labels.count() < 2 * pattern.teeth()) {
      return new int[0];
    }
    PhaseCheck check = new PhaseCheck(edges, labels, pattern);
    int[] shifts = check.cheapestRow(check.layOut());
    return Arrays.stream(shifts).allMatch(s -> s == 0) ? new int[0] : check.teeth(shifts);
  }

  /** Places of all labelled edges; returns how many turns they fill. */
  private int layOut() {
    int last = -1;
    int before = -1;
    for (int i = 0; i < labels.size(); i++) {
      if (labels.teeth[i] == Labelling.STRAY) {
        continue;
      }
      int place = placeOf[labels.teeth[i]];
      if (last < 0) {
        at[i] = place;
      } else {
        int turns = labels.steps[i] == 0 ? 1 : (labels.steps[i] - 1) / pattern.teeth();
        int rest = place - placeOf[labels.teeth[last]];
        at[i] = at[last] + (rest > 0 ? rest : rest + places) + (long) Math.min(turns, 8) * places;
        fill(before, last, i);
      }
      before = last;
      last = i;
    }
    return (int) (at[last] / places) + 1;
  }

  /** Marks what lies from one labelled edge to the next, the first included. */
  private void fill(int before, int from, int to) {
    long step = at[to] - at[from];
    if (labels.steps[to] == 0 || step > MOST_STEP) {
      return;
    }
    double[] t = edges.times;
    double slot = (t[labels.from + to] - t[labels.from + from]) / step;
    if (before < 0 || at[from] - at[before] > MOST_STEP || isInPlace(before, from, slot)) {
      full.set((int) at[from]);
    }
    for (int i = from + 1; i < to; i++) {
      double place = (t[labels.from + i] - t[labels.from + from]) / slot;
      long nearest = Math.round(place);
      if (nearest > 0 && nearest < step && Math.abs(place - nearest) < IN_PLACE) {
        full.set((int) (at[from] + nearest));
      }
    }
  }

  private boolean isInPlace(int before, int i, double slotAfter) {
    double[] t = edges.times;
    double slotBefore = (t[labels.from + i] - t[labels.from + before]) / (at[i] - at[before]);
    return Math.abs(slotAfter - slotBefore) < IN_PLACE * (slotAfter + slotBefore);
  }

  /** The shift of each turn. */
  private int[] cheapestRow(int turns) {
    int[][] cameFrom = new int[turns][places];
    double[] cost = new double[places];
    for (int turn = 0; turn < turns; turn++) {
      int best = cheapest(cost);
      double change = cost[best] + CHANGE_NATS;
      double[] here = costs(turn);
      for (int s = 0; s < places; s++) {
        boolean stays = turn == 0 || cost[s] <= change;
        cameFrom[turn][s] = stays ? s : best;
        cost[s] = here[s] + (stays ? cost[s] : change);
      }
    }
    int[] shifts = new int[turns];
    int s = cheapest(cost);
    for (int turn = turns - 1; turn >= 0; turn--) {
      shifts[turn] = s;
      s = cameFrom[turn][s];
    }
    return shifts;
  }

  /** The least, the unshifted one of equals. */
  private static int cheapest(double[] cost) {
    int best = 0;
    for (int s = 1; s < cost.length; s++) {
      best = cost[s] < cost[best] - 1e-9 ? s : best;
    }
    return best;
  }

  /** Cost of every shift over one turn, nats. */
  private double[] costs(int turn) {
    double[] cost = new double[places];
    for (int gap = 0; gap < places; gap++) {
      for (int s = 0; s < places && toothAt[gap] == ANY; s++) {
        int p = gap + s < places ? gap + s : gap + s - places;
        cost[s] += full.get(turn * places + p) ? FULL_NATS : -EMPTY_NATS;
      }
    }
    return cost;
  }

  private int[] teeth(int[] shifts) {
    int[] teeth = new int[labels.size()];
    for (int i = 0; i < teeth.length; i++) {
      boolean stray = labels.teeth[i] == Labelling.STRAY;
      int turn = (int) (at[i] / places);
      teeth[i] = stray ? ANY : toothAt[(int) Math.floorMod(at[i] - shifts[turn], (long) places)];
    }
    return teeth;
  }
}
