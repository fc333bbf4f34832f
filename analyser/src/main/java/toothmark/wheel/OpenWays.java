package toothmark.wheel;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * The ways of reading all edges so far that a search keeps open.
 *
 * <p>Two ways to one label stay open where they disagree on the pace: the label alone does not say
 * which will serve better. Of too many the least probable are dropped, but for the best one of each
 * place that the crank may be in: which of them is right may show only when a gap passes.
 */
final class OpenWays {

  private static final int FIRST_REACH = 8;
  private static final double PATIENCE = 12;
  private static final int MOST = 60;
  private static final int MOST_EACH_TOOTH = 8;
  private static final double SAME_PACE = 0.3;
  private static final double NARROWER = 0.7;

  private final WheelTemplate wheel;
  private final double margin;
  private final int most;
  private final Survivor[] atEdge;
  private final Survivor[] besides;
  private final Survivor[] firstOfPhase;
  private final Ancestry ancestry = new Ancestry();
  private List<Survivor> open = new ArrayList<>();
  private List<Survivor> next = new ArrayList<>();
  private final List<Survivor> fresh = new ArrayList<>();
  private Survivor leader;

  /** Cost of the best way up to the last edge, nats. */
  private double best = Double.POSITIVE_INFINITY;

  OpenWays(WheelTemplate wheel, double margin) {
    this.wheel = wheel;
    this.margin = margin;
    this.most = MOST + MOST_EACH_TOOTH * wheel.teeth();
    this.atEdge = new Survivor[wheel.teeth()];
    this.besides = new Survivor[wheel.teeth()];
    this.firstOfPhase = new Survivor[wheel.teeth()];
  }

  /** Those up to the edge before the one at hand. */
  List<Survivor> list() {
    return open;
  }

  double best() {
    return best;
  }

  /** Leaves one way open, from which costs count anew. */
  void goOn(Survivor on) {
    open.clear();
    open.add(on);
    on.from = null;
    on.cost = 0;
    on.strayNats = 0;
    on.pending = 0;
    on.forward = 0;
    on.surprise = 0;
    on.successor = Double.POSITIVE_INFINITY;
    best = 0;
    leader = on;
  }

  /** The best of those up to the edge before, or null when none is open. */
  Survivor leader() {
    return leader;
  }

  /** The best of those that take the edge at hand for a tooth, or null. */
  Survivor newLeader() {
    Survivor likeliest = null;
    for (Survivor s : fresh) {
      likeliest = likeliest == null || s.cost < likeliest.cost ? s : likeliest;
    }
    return likeliest;
  }

  /** The last survivor that every open way passes, or null. */
  Survivor shared() {
    return ancestry.shared(open, leader);
  }

  /** The survivor of that label and about that pace, or one that may be overwritten with it. */
  Survivor place(int edge, int tooth, double logPace) {
    Survivor first = atEdge[tooth];
    if (first == null) {
      return atEdge[tooth] = added(edge, tooth);
    }
    if (Math.abs(first.logPace - logPace) < SAME_PACE) {
      return first;
    }
    Survivor second = besides[tooth];
    if (second == null) {
      return besides[tooth] = added(edge, tooth);
    }
    if (Math.abs(second.logPace - logPace) < SAME_PACE) {
      return second;
    }
    return first.cost > second.cost ? first : second;
  }

  private Survivor added(int edge, int tooth) {
    Survivor s = new Survivor(edge, tooth);
    s.cost = Double.POSITIVE_INFINITY;
    fresh.add(s);
    return s;
  }

  /**
   * Ends an edge: takes the new ways in and drops those too far behind.
   *
   * @param edge just tried
   * @param time when it came, s
   * @param strayNats what it costs to call it a stray
   */
  void close(int edge, double time, double strayNats) {
    double lowest = Double.POSITIVE_INFINITY;
    for (Survivor s : fresh) {
      s.pending = s.cost;
      lowest = s.cost < lowest ? s.cost : lowest;
      atEdge[s.tooth] = null;
      besides[s.tooth] = null;
    }
    for (Survivor s : open) {
      s.strayNats += strayNats;
      s.pending = s.cost + Survivor.skip(s.strayNats);
      lowest = s.pending < lowest ? s.pending : lowest;
    }
    best = lowest;
    leader = null;
    next.clear();
    for (Survivor s : open) {
      double behind = s.pending - lowest;
      boolean stale = !s.paceKnown && edge - s.edge > FIRST_REACH;
      if (behind <= margin && behind <= s.successor + PATIENCE && !stale) {
        keep(s);
      }
    }
    for (Survivor s : fresh) {
      if (s.cost <= lowest + margin) {
        keep(s);
      }
    }
    fresh.clear();
    thin(time);
    List<Survivor> swap = open;
    open = next;
    next = swap;
  }

  private void keep(Survivor s) {
    next.add(s);
    leader = leader == null || s.pending < leader.pending ? s : leader;
  }

  private void thin(double time) {
    if (next.size() <= most) {
      return;
    }
    markFirst(time);
    for (double m = margin; next.size() > most && m > 1; m *= NARROWER) {
      double limit = best + m;
      next.removeIf(s -> !s.firstOfPhase && s.pending > limit);
    }
  }

  private void markFirst(double time) {
    Arrays.fill(firstOfPhase, null);
    for (Survivor s : next) {
      double beyond = s.paceKnown ? (time - s.time) / s.pace : 0;
      int phase = wheel.phase(s.tooth, beyond, firstOfPhase.length);
      Survivor first = firstOfPhase[phase];
      s.firstOfPhase = first == null || s.pending < first.pending;
      if (s.firstOfPhase) {
        if (first != null) {
          first.firstOfPhase = false;
        }
        firstOfPhase[phase] = s;
      }
    }
  }
}
