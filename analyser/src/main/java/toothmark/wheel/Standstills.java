package toothmark.wheel;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/**
 * Parts a record where the crank as good as stood still: at a stall, between two attempts to start,
 * after the key was off. It may have moved unseen there, forward or back, so nothing is counted
 * across.
 *
 * <p>An open wire is another thing: its silence begins and ends at a speed from which no crank
 * comes to rest, nor gets to from rest, between one tooth and the next. With an acceleration
 * <i>a</i>, a crank that comes to rest within an angle <i>g</i> after a tooth took at least √(2
 * (<i>g</i> + <i>p</i>) / <i>a</i>) − √(2 <i>g</i> / <i>a</i>) for the pitch <i>p</i> before it;
 * and where it turns round, √(<i>p</i> / <i>a</i>) for one of the pitches there.
 */
final class Standstills {

  /**
   * The hardest that compression or a starter changes the speed of an engine, degrees/s²: from 200
   * rev/min to rest within 24°. A judgement.
   */
  private static final double HARDEST = 30_000;

  /** A silence is so much longer than the widest gap would be at the speed around it. */
  private static final double LONGER = 3;

  /** The widest gap that wheels have, in pitches, where the wheel is not known. */
  private static final double WIDEST_GAP = 4;

  /**
   * So long a silence, in s, parts a record where the wheel is not known; and in it a crank may
   * rest anywhere, a gap included, while the shortest rests are turning points.
   */
  private static final double SILENCE = 0.25;

  /** Intervals this much longer than both neighbours' are a gap's, if they are no longer. */
  private static final double GAP_LIKE = 1.3;

  /** Fewer edges in a row say nothing. */
  private static final int FEWEST_EDGES = 6;

  private final EdgeSeries edges;
  private final double pitchSeconds;
  private final double gap;

  private Standstills(EdgeSeries edges, double pitchDegrees, double gap) {
    this.edges = edges;
    this.pitchSeconds = Math.sqrt(pitchDegrees / HARDEST);
    this.gap = gap;
  }

  /** Edges between two standstills, the last one exclusive. */
  record Part(int from, int to) {
    int size() {
      return to - from;
    }
  }

  /**
   * Parts a record by its long silences, whatever they are, before the wheel is known.
   *
   * @param edges the series
   * @return the parts in time order; one where there is no such silence
   */
  static List<Part> bySilence(EdgeSeries edges) {
    List<Part> parts = new ArrayList<>();
    int from = 0;
    for (int i = 1; i < edges.size(); i++) {
      double usual = Math.min(edges.intervals[i - 1], edges.intervals[i]);
      if (edges.times[i] - edges.times[i - 1] > Math.max(SILENCE, LONGER * WIDEST_GAP * usual)) {
        parts.add(new Part(from, i));
        from = i;
      }
    }
    parts.add(new Part(from, edges.size()));
    return parts;
  }

  /**
   * Parts a record at standstills.
   *
   * @param edges the series
   * @param pattern the wheel
   * @return the parts, in time order, that hold half a turn's teeth, without the edges at which the
   *     crank rocked to rest; the longest alone where none does
   */
  static List<Part> parts(EdgeSeries edges, WheelPattern pattern) {
    int widest = 0;
    for (int g : pattern.gapLengths()) {
      widest = Math.max(widest, g);
    }
    Standstills still = new Standstills(edges, pattern.pitchDegrees(), widest + 1);
    List<Part> all = still.all(pattern.teeth());
    int least = Math.max(FEWEST_EDGES, pattern.teeth() / 2);
    List<Part> fair = all.stream().filter(p -> p.size() >= least).toList();
    return fair.isEmpty()
        ? all.stream().max(Comparator.comparingInt(Part::size)).stream().toList()
        : fair;
  }

  private List<Part> all(int teeth) {
    List<Part> parts = new ArrayList<>();
    int from = 0;
    for (int i = 1; i < edges.size(); i++) {
      if (isRest(i)) {
        parts.add(new Part(from, rocksFrom(Math.max(from, i - 2 * teeth), i)));
        from = i;
      }
    }
    parts.add(new Part(from, edges.size()));
    return parts;
  }

  private double interval(int i) {
    return i < 1 || i >= edges.size()
        ? Double.POSITIVE_INFINITY
        : edges.times[i] - edges.times[i - 1];
  }

  /** Whether the crank may have come to rest, and moved, before an edge. */
  private boolean isRest(int i) {
    double usual = Math.min(edges.intervals[i - 1], edges.intervals[i]);
    double least = Math.max(gap * pitchSeconds, LONGER * gap * usual);
    double within = interval(i) > SILENCE ? gap : 1;
    return interval(i) > least && isSlow(i - 1, -1, within) && isSlow(i + 1, 1, within);
  }

  /**
   * Whether either of the two intervals beside a silence is that of a crank at rest within so many
   * pitches from there.
   */
  private boolean isSlow(int i, int way, double pitches) {
    double least = (Math.sqrt(2 * (pitches + 1)) - Math.sqrt(2 * pitches)) * pitchSeconds;
    return Math.max(interval(i), interval(i + way)) > least;
  }

  /** The first edge, behind the fastest of some before a rest, where the crank may turn round. */
  private int rocksFrom(int first, int rest) {
    int fastest = first + 1;
    for (int i = first + 1; i < rest; i++) {
      fastest = interval(i) < interval(fastest) ? i : fastest;
    }
    for (int i = fastest + 1; i < rest; i++) {
      double beside = Math.max(interval(i - 1), interval(i + 1));
      boolean ofGap = interval(i) > GAP_LIKE * beside && interval(i) < GAP_LIKE * gap * beside;
      if (interval(i) / (ofGap ? gap : 1) > pitchSeconds) {
        return i;
      }
    }
    return rest;
  }
}
