package toothmark.capture.text;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/** Divides the rows into segments and says which ticks of the clock each fills. */
final class Stretches {

  /** Rows lost in a row that are filled by a straight line; more make a new segment. */
  static final int MOST_FILLED = 8;

  private static final double UNNOTICED = 1e-9;

  private final List<Stretch> list = new ArrayList<>();
  private final double interval;
  private long filled;
  private int moved;

  private Stretches(double interval) {
    this.interval = interval;
  }

  /**
   * Segments of rows on a steady clock.
   *
   * @param clock behind the times
   * @param rows how many
   * @param announced rows at which the file itself starts a segment
   */
  static Stretches of(Clock clock, long rows, long[] announced) {
    Stretches s = new Stretches(clock.intervalSeconds());
    Clock.Pieces pieces = clock.pieces();
    for (int p = 0; p < pieces.size(); p++) {
      long first = pieces.firsts.get(p);
      long end = p + 1 < pieces.size() ? pieces.firsts.get(p + 1) : rows;
      boolean starts = Arrays.binarySearch(announced, first) >= 0;
      double slack = Math.max(0.2, clock.roundedToSeconds() / s.interval);
      s.add(pieces.times.get(p), first, end, end - first, starts ? -slack : slack);
    }
    return s;
  }

  /**
   * Segments of rows at uneven times.
   *
   * @param times of the rows
   * @param interval of the clock that they are brought to, s
   * @param longestStep a longer step starts a segment, s
   */
  static Stretches uneven(Times times, double interval, double longestStep, long[] announced) {
    Stretches s = new Stretches(interval);
    double[] chunk = new double[8192];
    long first = 0;
    double start = times.at(0);
    double before = start;
    int next = 1;
    for (long row = 0; row < times.count(); row += chunk.length) {
      int n = (int) Math.min(chunk.length, times.count() - row);
      times.read(row, chunk, n);
      for (int i = 0; i < n; i++) {
        boolean told = next < announced.length && announced[next] == row + i;
        next += told ? 1 : 0;
        if (told || chunk[i] < before || chunk[i] - before > longestStep) {
          s.addUneven(start, before, first, row + i);
          first = row + i;
          start = chunk[i];
        }
        before = chunk[i];
      }
    }
    s.addUneven(start, before, first, times.count());
    return s;
  }

  private void addUneven(double start, double last, long first, long end) {
    long ticks = 1 + (long) Math.floor((last - start) / interval * (1 + 1e-12));
    add(start, first, end, ticks, Double.NaN);
  }

  /**
   * Adds rows: to the last segment when no more than a few ticks are missing between, else as a new
   * one.
   *
   * @param slack how far the start may be off a tick of the last segment, in intervals; negative
   *     for rows that the file calls a segment, which they are unless the clock just goes on, as
   *     where a header is repeated; not a number for rows that start one in any case
   */
  private void add(double start, long first, long end, long ticks, double slack) {
    if (list.isEmpty()) {
      list.add(new Stretch(first, end, start, start, ticks));
      return;
    }
    Stretch last = list.get(list.size() - 1);
    double ahead = (start - last.writtenStart()) / interval;
    long gap = Math.round(ahead) - last.ticks();
    long most = slack < 0 ? 0 : MOST_FILLED;
    boolean joins =
        gap >= 0 && gap <= most && Math.abs(ahead - Math.rint(ahead)) <= Math.abs(slack);
    if (joins) {
      filled += gap;
      list.set(
          list.size() - 1,
          new Stretch(
              last.firstRow(), end, last.writtenStart(), last.start(), last.ticks() + gap + ticks));
      return;
    }
    double after = RoundNumber.near(last.start() + last.ticks() * interval, UNNOTICED * interval);
    double moveBy = last.start() - last.writtenStart();
    boolean overlaps = start + moveBy < after - interval / 2;
    moved += overlaps ? 1 : 0;
    list.add(new Stretch(first, end, start, overlaps ? after : start + moveBy, ticks));
  }

  List<Stretch> list() {
    return list;
  }

  double intervalSeconds() {
    return interval;
  }

  /** Ticks without a row. */
  long filled() {
    return filled;
  }

  /** Segments whose times overlap those before, so that they were placed behind one another. */
  int moved() {
    return moved;
  }
}
