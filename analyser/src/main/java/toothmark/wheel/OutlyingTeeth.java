package toothmark.wheel;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.BitSet;
import java.util.List;
import java.util.function.IntPredicate;
import java.util.function.ToDoubleFunction;

/**
 * Finds teeth that stand far out of place, bent or chipped on one flank, teeth that are weak, and
 * teeth that are broken off.
 *
 * <p>Each tooth is compared with the cubic through two seen neighbours on either side; an edge that
 * the labels call stray stands for a tooth that gave none, if it is near. The worst tooth is taken
 * out and the rest measured anew, since it pulls its neighbours' cubics.
 */
final class OutlyingTeeth {

  private static final int MOST = 4;

  /**
   * Teeth beside a gap pass up to 2 % of a pitch out of place, for the field of the missing
   * neighbour is not there; so much sooner they count as out.
   */
  private static final double BESIDE_COUNTS = 20;

  /** So far out of place, in pitches, teeth beside a gap may seem though they are not. */
  static final double BESIDE_GAP = 0.03;

  private static final int FEWEST_TURNS = 3;
  private static final double SHARE_OF_TURNS = 0.5;

  /** From this share of a pitch on a tooth is out of place for the labelling. */
  private static final double OUT = 0.1;

  /** A tooth seen in fewer of its turns gives no edge at all. */
  private static final double DEAD = 0.25;

  private static final double REACH = 0.4;

  /** A tooth whose edges are usually weaker than this, of a sound one's, is weak. */
  private static final double WEAK = 0.6;

  /** A weak tooth need be this much less out of place to count as such. */
  private static final double WEAK_COUNTS = 4;

  /** Edges that come less regularly than this, in pitches, are not one tooth's. */
  private static final double REGULAR = 0.1;

  private final EdgeSeries edges;
  private final Labelling labels;
  private final WheelTemplate wheel;
  private final double pitch;
  private final double[] offsets;
  private final double[] strengths;
  private final int[] near;
  private final boolean[] beside;
  private final boolean[] crowded;
  private final boolean[] out;
  private final int[] at;
  private final long[] count;
  private final boolean hasReference;
  private int n;

  /** The edge that stands for a tooth in one turn: how late it is, degrees, and how strong. */
  private record Passing(double late, double strength) {}

  private OutlyingTeeth(EdgeSeries edges, Labelling labels, WheelPattern pattern) {
    this.edges = edges;
    this.labels = labels;
    this.wheel = WheelTemplate.of(pattern);
    this.pitch = pattern.pitchDegrees();
    this.offsets = new double[pattern.teeth()];
    this.strengths = new double[pattern.teeth()];
    Arrays.fill(strengths, 1);
    this.hasReference = pattern.hasReference();
    this.near = new int[pattern.teeth()];
    this.beside = new boolean[pattern.teeth()];
    this.crowded = new boolean[pattern.teeth()];
    for (int t = 0; t < beside.length; t++) {
      int before = t == 0 ? beside.length - 1 : t - 1;
      double step = wheel.ahead(before, 1);
      boolean uneven = step > 1.5 * pitch || step < 0.75 * pitch;
      crowded[t] = pattern.isCrowded(t + 1);
      beside[t] |= uneven;
      beside[before] |= uneven;
    }
    this.out = new boolean[pattern.teeth()];
    this.at = new int[labels.size()];
    this.count = new long[labels.size()];
  }

  /**
   * Finds them.
   *
   * @param edges the series
   * @param labels a first labelling of it
   * @param pattern the wheel
   * @return how late each passes that is not about in place, how strong the weak are, and those
   *     never seen; and what gives an edge and is none
   */
  static ToothFaults find(EdgeSeries edges, Labelling labels, WheelPattern pattern) {
    OutlyingTeeth o = new OutlyingTeeth(edges, labels, pattern);
    o.unroll();
    int most = MOST + 2 * pattern.gapLengths().length;
    for (int k = 0; k < most && o.takeOutWorst(); k++) {
      continue;
    }
    o.measureAnew();
    return ToothFaults.none(pattern.teeth())
        .withOffsets(o.offsets)
        .withStrengths(o.strengths)
        .withDead(o.dead())
        .withFeature(WheelFeature.find(edges, labels, pattern));
  }

  /**
   * Teeth seen in under a quarter of their turns, with no edge near in most, and not merely weak or
   * out of place.
   */
  private BitSet dead() {
    int teeth = offsets.length;
    BitSet dead = new BitSet();
    double turns = n == 0 ? 0 : (count[n - 1] - count[0]) / (double) teeth;
    if (turns >= FEWEST_TURNS) {
      int[] passes = new int[teeth];
      int[] seen = new int[teeth];
      for (int i = 0; i + 1 < n; i++) {
        for (long c = count[i]; c < count[i + 1] && count[i + 1] - count[i] < teeth; c++) {
          passes[(int) (c % teeth)]++;
        }
        seen[(int) (count[i] % teeth)]++;
      }
      for (int t = 0; t < teeth; t++) {
        if (offsets[t] == 0
            && strengths[t] == 1
            && passes[t] >= FEWEST_TURNS
            && seen[t] < DEAD * passes[t]
            && near[t] < SHARE_OF_TURNS * passes[t]) {
          dead.set(t);
        }
      }
    }
    return dead;
  }

  private void unroll() {
    long c = 0;
    for (int i = 0; i < labels.size(); i++) {
      if (labels.teeth[i] != Labelling.STRAY) {
        boolean anew = labels.steps[i] == 0;
        c = n == 0 ? labels.teeth[i] : anew ? anew(c, labels.teeth[i]) : c + labels.steps[i];
        at[n] = labels.from + i;
        count[n++] = c;
      }
    }
  }

  /** A count far from all before, of the same tooth. */
  private long anew(long before, int tooth) {
    long teeth = offsets.length;
    return (before / teeth + 3) * teeth + tooth;
  }

  private boolean takeOutWorst() {
    return worst(passings(t -> !out[t]));
  }

  /**
   * Teeth taken out first were measured beside others that were still in; now all those are out.
   */
  private void measureAnew() {
    for (int t = 0; t < offsets.length; t++) {
      if (out[t]) {
        int tooth = t;
        out[t] = false;
        List<Passing> all = passings(k -> k == tooth).get(t);
        out[t] = true;
        double[] late = sorted(all, Passing::late);
        offsets[t] = late.length < FEWEST_TURNS ? offsets[t] : late[late.length / 2];
      }
    }
  }

  private List<List<Passing>> passings(IntPredicate wanted) {
    int teeth = offsets.length;
    List<List<Passing>> passings = new ArrayList<>();
    for (int t = 0; t < teeth; t++) {
      passings.add(new ArrayList<>());
    }
    for (int i = 0; i + 1 < n; i++) {
      long gap = count[i + 1] - count[i];
      for (long c = count[i]; c < count[i + 1] && gap <= 3; c++) {
        Passing p = wanted.test((int) (c % teeth)) ? passing(c, i) : null;
        if (p != null) {
          passings.get((int) (c % teeth)).add(p);
        }
      }
    }
    return passings;
  }

  private boolean worst(List<List<Passing>> passings) {
    double turns = n == 0 ? 0 : (count[n - 1] - count[0]) / (double) offsets.length;
    double[] late = new double[offsets.length];
    double[] counting = new double[offsets.length];
    for (int t = 0; t < offsets.length; t++) {
      List<Passing> all = passings.get(t);
      near[t] = Math.max(near[t], all.size());
      if (all.size() >= Math.max(FEWEST_TURNS, SHARE_OF_TURNS * turns)) {
        double[] sorted = sorted(all, Passing::late);
        double median = sorted[sorted.length / 2];
        double spread = sorted[(int) (0.75 * sorted.length)] - sorted[(int) (0.25 * sorted.length)];
        double strength = sorted(all, Passing::strength)[sorted.length / 2];
        boolean weak = hasReference && !crowded[t] && strength < WEAK && spread < REGULAR * pitch;
        strengths[t] = weak ? strength : 1;
        late[t] = Math.abs(median) > spread ? median : 0;
        counting[t] = late[t] * (beside[t] ? BESIDE_COUNTS : weak ? WEAK_COUNTS : 1);
      }
    }
    // A tooth far out pulls those beside the gap a little, who would count for more than it.
    int worst = farthest(late) >= 0 ? farthest(late) : farthest(counting);
    for (int t = 0; t < offsets.length; t++) {
      offsets[t] = t == worst ? late[t] : out[t] ? offsets[t] : 0;
    }
    if (worst >= 0) {
      out[worst] = true;
    }
    return worst >= 0;
  }

  /** The tooth that is farthest out of place; -1 when none is out. */
  private int farthest(double[] late) {
    int farthest = -1;
    double most = OUT * pitch;
    for (int t = 0; t < late.length; t++) {
      if (Math.abs(late[t]) > most) {
        most = Math.abs(late[t]);
        farthest = t;
      }
    }
    return farthest;
  }

  private static double[] sorted(List<Passing> passings, ToDoubleFunction<Passing> of) {
    return passings.stream().mapToDouble(of).sorted().toArray();
  }

  /** The edge of the tooth with count c, at or after place i; null when it cannot be told. */
  private Passing passing(long c, int i) {
    int before = count[i] == c ? i - 1 : i;
    int[] near = {back(before), 0, 0, 0};
    near[1] = near[0] < 0 ? -1 : back(near[0] - 1);
    near[2] = on(i + 1);
    near[3] = near[2] < 0 ? -1 : on(near[2] + 1);
    for (int k : near) {
      if (k < 0 || Math.abs(count[k] - c) > 6) {
        return null;
      }
    }
    double[] x = new double[4];
    for (int k = 0; k < 4; k++) {
      x[k] = degrees(count[near[k]]) - degrees(c);
    }
    double due = 0;
    for (int k = 0; k < 4; k++) {
      double w = 1;
      for (int j = 0; j < 4; j++) {
        w *= j == k ? 1 : -x[j] / (x[k] - x[j]);
      }
      due += w * edges.times[at[near[k]]];
    }
    double pace = (edges.times[at[near[2]]] - edges.times[at[near[0]]]) / (x[2] - x[0]);
    int edge = count[i] == c ? at[i] : nearest(due, at[i], at[i + 1]);
    double late = edge < 0 ? Double.NaN : (edges.times[edge] - due) / pace;
    return Math.abs(late) < REACH * pitch ? new Passing(late, edges.strengths[edge]) : null;
  }

  private int nearest(double due, int after, int before) {
    int best = -1;
    for (int e = after + 1; e < before; e++) {
      if (best < 0 || Math.abs(edges.times[e] - due) < Math.abs(edges.times[best] - due)) {
        best = e;
      }
    }
    return best;
  }

  private int back(int k) {
    int j = k;
    while (j >= 0 && out[(int) (count[j] % offsets.length)]) {
      j--;
    }
    return j;
  }

  private int on(int k) {
    int j = k;
    while (j < n && out[(int) (count[j] % offsets.length)]) {
      j++;
    }
    return j < n ? j : -1;
  }

  private double degrees(long c) {
    return wheel.ahead(0, (int) (c % offsets.length)) + 360.0 * (c / offsets.length);
  }
}
