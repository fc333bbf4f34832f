package toothmark.wheel;

import java.util.Arrays;

/**
 * All the ways that were still open, kept until they meet, for the probability of each label.
 *
 * <p>Forward-backward sums over the survivors' arcs: Bahl, Cocke, Jelinek and Raviv, IEEE Trans.
 * Inf. Theory 20 (1974) 284-287, doi:10.1109/TIT.1974.1055186. The speed in each survivor is that
 * of its own best way, so the sums are close, not exact.
 */
final class Lattice {

  private Survivor[] heads = new Survivor[1024];
  private double[] costs = new double[1024];
  private Survivor[] tails = new Survivor[1024];
  private int size;

  void clear() {
    Arrays.fill(tails, 0, size, null);
    Arrays.fill(heads, 0, size, null);
    size = 0;
  }

  int size() {
    return size;
  }

  /**
   * Adds a way from one survivor to a later one.
   *
   * @param from null for a start
   * @param to where it leads
   * @param cost of this step alone, nats
   */
  void add(Survivor from, Survivor to, double cost) {
    if (size == heads.length) {
      tails = Arrays.copyOf(tails, 2 * size);
      heads = Arrays.copyOf(heads, 2 * size);
      costs = Arrays.copyOf(costs, 2 * size);
    }
    tails[size] = from;
    heads[size] = to;
    costs[size++] = cost;
  }

  /**
   * Works out the probability of every label up to a survivor through which the best way leads.
   *
   * @param front survivors still open, with what they have pending
   * @param to the survivor
   * @param labels whose confidences are set
   */
  void settle(Iterable<Survivor> front, Survivor to, Labelling labels) {
    for (int i = 0; i < size; i++) {
      double before = tails[i] == null ? 0 : tails[i].forward;
      heads[i].forward = add(heads[i].forward, before - costs[i]);
    }
    double total = Double.NEGATIVE_INFINITY;
    for (Survivor s : front) {
      s.backward = -Survivor.skip(s.strayNats);
      total = add(total, s.forward + s.backward);
    }
    for (int i = size - 1; i >= 0; i--) {
      if (tails[i] != null) {
        tails[i].backward = add(tails[i].backward, heads[i].backward - costs[i]);
      }
    }
    spread(to, total, labels);
    forget(to);
  }

  private void spread(Survivor to, double total, Labelling labels) {
    if (size == 0) {
      return;
    }
    int lowest = heads[0].edge;
    double[] tooth = new double[Math.max(0, to.edge - lowest + 1)];
    for (int i = 0; i < size; i++) {
      int e = heads[i].edge - lowest;
      if (e < tooth.length) {
        double before = tails[i] == null ? 0 : tails[i].forward;
        tooth[e] += Math.exp(before - costs[i] + heads[i].backward - total);
      }
    }
    for (int e = 0; e < tooth.length; e++) {
      labels.confidences[lowest + e - labels.from] = Math.max(0, 1 - tooth[e]);
    }
    for (Survivor s = to; s != null && s.edge >= lowest; s = s.from) {
      labels.confidences[s.edge - labels.from] = share(s, total);
    }
  }

  private static double share(Survivor s, double total) {
    return Math.min(1, Math.exp(s.forward + s.backward - total));
  }

  /** Drops all that lies before a survivor that every open way passes. */
  private void forget(Survivor to) {
    int kept = 0;
    for (int i = 0; i < size; i++) {
      if (tails[i] != null && tails[i].edge >= to.edge) {
        tails[kept] = tails[i];
        heads[kept] = heads[i];
        costs[kept++] = costs[i];
      }
      heads[i].forward = Double.NEGATIVE_INFINITY;
      heads[i].backward = Double.NEGATIVE_INFINITY;
      if (tails[i] != null) {
        tails[i].forward = Double.NEGATIVE_INFINITY;
        tails[i].backward = Double.NEGATIVE_INFINITY;
      }
    }
    Arrays.fill(tails, kept, size, null);
    Arrays.fill(heads, kept, size, null);
    size = kept;
    to.forward = 0;
  }

  private static double add(double a, double b) {
    if (a == Double.NEGATIVE_INFINITY) {
      return b;
    }
    if (b == Double.NEGATIVE_INFINITY) {
      return a;
    }
    double hi = Math.max(a, b);
    return hi + Math.log1p(Math.exp(Math.min(a, b) - hi));
  }
}
