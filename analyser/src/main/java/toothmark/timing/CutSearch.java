package toothmark.timing;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import toothmark.ignition.AbsentSpark;
import toothmark.ignition.CoilTrack;
import toothmark.ignition.CrankPoint;
import toothmark.ignition.Spark;
import toothmark.units.Interval;

/**
 * Looks for a limiter that leaves sparks out: on all coils alike, near the highest speed reached,
 * and hardly any below it.
 */
final class CutSearch {

  /** Slower than this no engine is limited, rev/min (common practice). */
  private static final double SLOWEST_LIMIT_RPM = 2000;

  private static final double HIGHEST_OVER_STEP = 1.25;
  private static final double LARGEST_SHARE_BELOW = 0.02;
  private static final double SMALLEST_SHARE_ABOVE = 0.1;

  /** Each coil must have at least this part of its even share of what is left out. */
  private static final double EVEN_PART = 0.3;

  private static final int FEWEST = 4;

  private CutSearch() {}

  /** A firing that was due: when, how fast, on which coil, and whether it came. */
  private record Due(double time, double rpm, int coil, boolean absent) {}

  static Optional<Limiter> find(List<CoilTrack> coils) {
    List<Due> due = due(coils);
    due.sort(Comparator.comparingDouble(Due::rpm));
    int absent = (int) due.stream().filter(Due::absent).count();
    if (absent < FEWEST) {
      return Optional.empty();
    }
    int first = firstOfCut(due, absent);
    double from = due.get(first).rpm();
    List<Due> above = due.subList(first, due.size());
    long cut = above.stream().filter(Due::absent).count();
    long below = absent - cut;
    boolean clear =
        cut >= FEWEST
            && below <= LARGEST_SHARE_BELOW * first
            && cut >= SMALLEST_SHARE_ABOVE * above.size();
    boolean fast =
        from >= SLOWEST_LIMIT_RPM && due.get(due.size() - 1).rpm() <= HIGHEST_OVER_STEP * from;
    return clear && fast && onAllCoils(above, coils.size(), cut)
        ? Optional.of(limiter(above, (int) cut, from))
        : Optional.empty();
  }

  private static List<Due> due(List<CoilTrack> coils) {
    List<Due> due = new ArrayList<>();
    for (int c = 0; c < coils.size(); c++) {
      for (Spark s : coils.get(c).sparks()) {
        Optional<CrankPoint> p = s.crank();
        if (p.isPresent() && s.turn() == Spark.Turn.FIRST) {
          due.add(new Due(s.timeSeconds(), p.get().rpm(), c, false));
        }
      }
      for (AbsentSpark a : coils.get(c).absent()) {
        due.add(new Due(a.timeSeconds(), a.crank().rpm(), c, true));
      }
    }
    return due;
  }

  /** Where the share of absent sparks changes most, by the likelihood of two shares. */
  private static int firstOfCut(List<Due> due, int absent) {
    int n = due.size();
    int best = 0;
    double most = Double.NEGATIVE_INFINITY;
    int below = 0;
    for (int i = 0; i < n; i++) {
      double likelihood = bernoulli(below, i) + bernoulli(absent - below, n - i);
      if (due.get(i).absent() && likelihood > most) {
        most = likelihood;
        best = i;
      }
      below += due.get(i).absent() ? 1 : 0;
    }
    return best;
  }

  private static double bernoulli(int hits, int of) {
    if (hits == 0 || hits == of) {
      return 0;
    }
    double p = (double) hits / of;
    return hits * Math.log(p) + (of - hits) * Math.log(1 - p);
  }

  private static boolean onAllCoils(List<Due> above, int coils, long cut) {
    int[] each = new int[coils];
    for (Due d : above) {
      each[d.coil()] += d.absent() ? 1 : 0;
    }
    for (int n : each) {
      if (n < EVEN_PART * cut / coils) {
        return false;
      }
    }
    return true;
  }

  private static Limiter limiter(List<Due> above, int cut, double from) {
    double start = above.stream().mapToDouble(Due::time).min().orElseThrow();
    double end = above.stream().mapToDouble(Due::time).max().orElseThrow();
    return new Limiter(
        Limiter.Manner.SPARK_CUT, from, new Interval(start, end), cut, above.size(), 0);
  }
}
