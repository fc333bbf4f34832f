package toothmark.wheel;

import java.util.Arrays;
import java.util.BitSet;

/**
 * Finds teeth that stand far out of place, bent or chipped on one flank, and teeth that are broken
 * off.
 *
 * <p>Each tooth is compared with the cubic through two seen neighbours on either side; an edge that
 * the labels call stray stands for a tooth that gave none, if it is near. The worst tooth is taken
 * out and the rest measured anew, since it pulls its neighbours' cubics.
 */
final class OutlyingTeeth {

  private static final int MOST = 4;
  private static final int FEWEST_TURNS = 3;
  private static final double SHARE_OF_TURNS = 0.5;

  /** From this share of a pitch on a tooth is out of place for the labelling. */
  private static final double OUT = 0.1;

  /** A tooth seen in fewer of its turns gives no edge at all. */
  private static final double DEAD = 0.25;

  private static final double REACH = 0.4;

  private final EdgeSeries edges;
  private final Labelling labels;
  private final WheelTemplate wheel;
  private final double pitch;
  private final double[] offsets;
  private final boolean[] out;
  private final int[] at;
  private final long[] count;
  private int n;

  private OutlyingTeeth(EdgeSeries edges, Labelling labels, WheelPattern pattern) {
    this.edges = edges;
    this.labels = labels;
    this.wheel = WheelTemplate.of(pattern);
    this.pitch = pattern.pitchDegrees();
    this.offsets = new double[pattern.teeth()];
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
   * @return how late each passes that is not about in place, and those never seen
   */
  static ToothFaults find(EdgeSeries edges, Labelling labels, WheelPattern pattern) {
    OutlyingTeeth o = new OutlyingTeeth(edges, labels, pattern);
    o.unroll();
    for (int k = 0; k < MOST && o.takeOutWorst(); k++) {
      continue;
    }
    return ToothFaults.none(pattern.teeth()).withOffsets(o.offsets).withDead(o.dead());
  }

  /** Teeth seen in under a quarter of their turns and not merely out of place. */
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
        if (offsets[t] == 0 && passes[t] >= FEWEST_TURNS && seen[t] < DEAD * passes[t]) {
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
    int teeth = offsets.length;
    double[][] late = new double[teeth][16];
    int[] seen = new int[teeth];
    for (int i = 0; i + 1 < n; i++) {
      long gap = count[i + 1] - count[i];
      for (long c = count[i]; c < count[i + 1] && gap <= 3; c++) {
        int tooth = (int) (c % teeth);
        double x = out[tooth] ? Double.NaN : lateness(c, i);
        if (!Double.isNaN(x)) {
          if (seen[tooth] == late[tooth].length) {
            late[tooth] = Arrays.copyOf(late[tooth], 2 * seen[tooth]);
          }
          late[tooth][seen[tooth]++] = x;
        }
      }
    }
    return worst(late, seen);
  }

  private boolean worst(double[][] late, int[] seen) {
    double turns = n == 0 ? 0 : (count[n - 1] - count[0]) / (double) offsets.length;
    int worst = -1;
    double most = OUT * pitch;
    for (int t = 0; t < offsets.length; t++) {
      if (seen[t] < Math.max(FEWEST_TURNS, SHARE_OF_TURNS * turns)) {
        continue;
      }
      double[] x = Arrays.copyOf(late[t], seen[t]);
      Arrays.sort(x);
      double median = x[x.length / 2];
      double spread = x[(int) (0.75 * x.length)] - x[(int) (0.25 * x.length)];
      if (Math.abs(median) > Math.max(most, spread)) {
        most = Math.abs(median);
        worst = t;
        offsets[t] = median;
      }
    }
    for (int t = 0; t < offsets.length; t++) {
      offsets[t] = out[t] || t == worst ? offsets[t] : 0;
    }
    if (worst >= 0) {
      out[worst] = true;
    }
    return worst >= 0;
  }

  /** How late the tooth with count c, at or after place i, passed; NaN when it cannot be told. */
  private double lateness(long c, int i) {
    int before = count[i] == c ? i - 1 : i;
    int[] near = {back(before), 0, 0, 0};
    near[1] = near[0] < 0 ? -1 : back(near[0] - 1);
    near[2] = on(i + 1);
    near[3] = near[2] < 0 ? -1 : on(near[2] + 1);
    for (int k : near) {
      if (k < 0 || Math.abs(count[k] - c) > 6) {
        return Double.NaN;
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
    double found = count[i] == c ? edges.times[at[i]] : nearest(due, at[i], at[i + 1]);
    double late = (found - due) / pace;
    return Math.abs(late) < REACH * pitch ? late : Double.NaN;
  }

  private double nearest(double due, int after, int before) {
    double best = Double.NaN;
    for (int e = after + 1; e < before; e++) {
      if (Double.isNaN(best) || Math.abs(edges.times[e] - due) < Math.abs(best - due)) {
        best = edges.times[e];
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
