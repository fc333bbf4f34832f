package toothmark.timing;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.apache.commons.math3.stat.StatUtils;
import org.apache.commons.math3.stat.correlation.PearsonsCorrelation;
import toothmark.rotation.AngleTimeline;
import toothmark.units.Interval;
import toothmark.units.Measured;
import toothmark.units.WordBook;

/**
 * Finds a controller log's clock by laying its speeds over those of the capture.
 *
 * <p>Every shift that leaves enough rows in common is tried, with the capture's speed averaged over
 * a stretch before each row, as a controller does; large differences count no more than a cap, so
 * that a few wrong rows decide nothing. No shift is claimed better than the rows are apart.
 */
public final class LogMatcher {

  private static final WordBook BOOK = new WordBook("toothmark.timing.timing");

  private static final int FEWEST_ROWS = 5;
  private static final double LEAST_OVERLAP = 0.5;
  private static final double CAP = 0.05;
  private static final int STEPS_A_ROW = 4;

  /** The capture's speed must vary by this share of its mean for the clocks to be matched. */
  private static final double LEAST_SPAN = 0.05;

  private static final double LEAST_CORRELATION = 0.9;

  /** Largest root mean square difference of speeds, as a share of the mean. */
  private static final double LARGEST_DIFFERENCE = 0.05;

  /** A drift of the clock shows over no less than this, s. */
  private static final double LEAST_FOR_DRIFT_SECONDS = 30;

  private final ControllerLog log;
  private final AngleTimeline timeline;
  private final Sought sought;
  private final Interval span;
  private final double interval;

  private LogMatcher(ControllerLog log, AngleTimeline timeline, Sought sought) {
    this.log = log;
    this.timeline = timeline;
    this.sought = sought;
    this.span = timeline.span();
    this.interval = log.intervalSeconds();
  }

  /** What is taken from a log by its clock. */
  enum Sought {
    /** The advance that it holds. */
    ADVANCE,
    /** The load, by which a table holds the advance. */
    LOAD
  }

  /**
   * Matches a log to a capture. The first and last rows are dropped: they are often written while
   * the log opens and closes.
   *
   * @param log what the controller logged
   * @param timeline the crank's angle
   * @return the commanded advance; nowhere known when the log does not fit the capture
   */
  public static CommandedAdvance match(ControllerLog log, AngleTimeline timeline) {
    return match(log, timeline, Sought.ADVANCE);
  }

  static LoggedAdvance match(ControllerLog log, AngleTimeline timeline, Sought sought) {
    if (log.size() < FEWEST_ROWS + 2) {
      return refused(log, BOOK.of("log.few-rows", log.size(), FEWEST_ROWS + 2));
    }
    return new LogMatcher(log.rows(1, log.size() - 1), timeline, sought).match();
  }

  private static LoggedAdvance refused(ControllerLog log, String reason) {
    LogMatch none =
        new LogMatch(Optional.empty(), 0, 0, 0, List.of(), LogMatch.Outcome.REFUSED, reason);
    return new LoggedAdvance(log, none, AdvanceBySpeed.learn(new double[0], new double[0]), 0);
  }

  /** How well a shift fits. */
  private record Fit(double shift, double width, double cost, int rows) {

    static final Fit NONE = new Fit(0, 0, Double.POSITIVE_INFINITY, 0);
  }

  private LoggedAdvance match() {
    Fit best = fine(coarse(log), log);
    if (best.rows() == 0) {
      return refused(log, BOOK.of("log.apart"));
    }
    double[][] speeds = speeds(best, log);
    if (speeds[0].length < FEWEST_ROWS) {
      return refused(log, BOOK.of("log.no-speed"));
    }
    double correlation =
        StatUtils.variance(speeds[0]) > 0 && StatUtils.variance(speeds[1]) > 0
            ? new PearsonsCorrelation().correlation(speeds[0], speeds[1])
            : 0;
    double difference = Math.sqrt(meanSquare(speeds));
    double mean = StatUtils.mean(speeds[1]);
    double range = (StatUtils.max(speeds[1]) - StatUtils.min(speeds[1])) / mean;
    boolean alike = difference <= LARGEST_DIFFERENCE * mean;
    LogMatch.Outcome outcome =
        !alike || range >= LEAST_SPAN && correlation < LEAST_CORRELATION
            ? LogMatch.Outcome.REFUSED
            : range >= LEAST_SPAN ? LogMatch.Outcome.MATCHED : LogMatch.Outcome.BY_SPEED;
    AdvanceBySpeed bySpeed = bySpeed(best, outcome);
    if (outcome == LogMatch.Outcome.BY_SPEED && !bySpeed.follows()) {
      outcome = LogMatch.Outcome.REFUSED;
    }
    boolean placed = range >= LEAST_SPAN;
    double drift = outcome == LogMatch.Outcome.MATCHED ? drift(best) : 0;
    LogMatch match =
        new LogMatch(
            placed
                ? Optional.of(new Measured(best.shift(), interval / Math.sqrt(12)))
                : Optional.empty(),
            drift,
            correlation,
            difference,
            placed ? logged(best, drift) : List.of(),
            outcome,
            reason(outcome, correlation, difference, bySpeed));
    return new LoggedAdvance(log, match, bySpeed, middle(best));
  }

  /** The log's speeds within the capture, on its clock. */
  private List<LogMatch.LoggedSpeed> logged(Fit fit, double drift) {
    double middle = middle(fit);
    List<LogMatch.LoggedSpeed> out = new ArrayList<>();
    for (int i = 0; i < log.size(); i++) {
      double time = (log.time(i) + fit.shift() - middle) / (1 + drift * 1e-6) + middle;
      if (span.contains(time)) {
        out.add(new LogMatch.LoggedSpeed(time, log.rpm(i)));
      }
    }
    return out;
  }

  /** The middle of the rows that a fit compares, by the capture's clock: there its shift holds. */
  private double middle(Fit fit) {
    int from = firstAfter(log, span.startInclusive() + fit.width() - fit.shift());
    return (log.time(from) + log.time(from + fit.rows() - 1)) / 2 + fit.shift();
  }

  private static double meanSquare(double[][] speeds) {
    double sum = 0;
    for (int i = 0; i < speeds[0].length; i++) {
      double d = speeds[0][i] - speeds[1][i];
      sum += d * d;
    }
    return sum / speeds[0].length;
  }

  private String reason(
      LogMatch.Outcome outcome, double correlation, double difference, AdvanceBySpeed bySpeed) {
    String r = String.format(Locale.ROOT, "%.3f", correlation);
    String rpm = String.format(Locale.ROOT, "%.0f", difference);
    String matched =
        sought == Sought.LOAD
            ? "log.matched.load"
            : bySpeed.follows() ? "log.matched.speed" : "log.matched.time";
    return switch (outcome) {
      case MATCHED -> BOOK.of(matched, r, rpm);
      case BY_SPEED -> BOOK.of("log.by-speed", r, rpm);
      case REFUSED -> BOOK.of("log.refused", r, rpm);
    };
  }

  /** Advance by speed from the rows in common, or from all when they are not known. */
  private AdvanceBySpeed bySpeed(Fit fit, LogMatch.Outcome outcome) {
    boolean common = outcome == LogMatch.Outcome.MATCHED && fit.rows() >= 2 * FEWEST_ROWS;
    double[] rpm = new double[log.size()];
    double[] advance = new double[log.size()];
    int n = 0;
    for (int i = 0; i < log.size(); i++) {
      double at = log.time(i) + fit.shift();
      boolean near = at >= span.startInclusive() - interval && at <= span.endExclusive() + interval;
      if ((near || !common) && !Double.isNaN(log.advance(i))) {
        rpm[n] = log.rpm(i);
        advance[n++] = log.advance(i);
      }
    }
    return AdvanceBySpeed.learn(Arrays.copyOf(rpm, n), Arrays.copyOf(advance, n));
  }

  private Fit coarse(ControllerLog rows) {
    double step = interval / STEPS_A_ROW;
    double first = span.startInclusive() - rows.time(rows.size() - 1);
    double last = span.endExclusive() - rows.time(0);
    Fit best = Fit.NONE;
    for (long k = 0; first + k * step <= last; k++) {
      Fit f = fit(first + k * step, interval, rows);
      best = f.cost() < best.cost() ? f : best;
    }
    return best;
  }

  private Fit fine(Fit coarse, ControllerLog rows) {
    Fit best = Fit.NONE;
    double reach = interval / STEPS_A_ROW;
    for (double width : new double[] {0.25 * interval, 0.5 * interval, interval, 2 * interval}) {
      for (int k = -20; k <= 20; k++) {
        Fit f = fit(coarse.shift() + k * reach / 5, width, rows);
        best = f.cost() < best.cost() ? f : best;
      }
    }
    return best;
  }

  private Fit fit(double shift, double width, ControllerLog rows) {
    int from = firstAfter(rows, span.startInclusive() + width - shift);
    int to = firstAfter(rows, span.endExclusive() - shift);
    double shared = (to - from) * interval;
    double shorter = Math.min(span.seconds(), rows.size() * interval);
    if (to - from < FEWEST_ROWS || shared < LEAST_OVERLAP * shorter) {
      return Fit.NONE;
    }
    double cost = 0;
    for (int i = from; i < to; i++) {
      double t = rows.time(i) + shift;
      double relative = speed(t, width) / rows.rpm(i) - 1;
      cost += Double.isNaN(relative) ? CAP * CAP : Math.min(relative * relative, CAP * CAP);
    }
    return new Fit(shift, width, cost / (to - from), to - from);
  }

  private static int firstAfter(ControllerLog rows, double time) {
    int low = 0;
    int high = rows.size();
    while (low < high) {
      int middle = (low + high) >>> 1;
      if (rows.time(middle) <= time) {
        low = middle + 1;
      } else {
        high = middle;
      }
    }
    return low;
  }

  /** Mean speed over a stretch up to an instant; not a number where the angle is not known. */
  private double speed(double time, double width) {
    double from = Math.max(span.startInclusive(), time - width);
    if (!timeline.covers(from) || !timeline.covers(time)) {
      return Double.NaN;
    }
    return (timeline.degreesAt(time) - timeline.degreesAt(from)) / (time - from) / 6;
  }

  /** Logged and measured speed in the rows that a fit compares. */
  private double[][] speeds(Fit fit, ControllerLog rows) {
    int from = firstAfter(rows, span.startInclusive() + fit.width() - fit.shift());
    double[][] out = new double[2][fit.rows()];
    int n = 0;
    for (int i = 0; i < fit.rows(); i++) {
      double measured = speed(rows.time(from + i) + fit.shift(), fit.width());
      if (!Double.isNaN(measured)) {
        out[0][n] = rows.rpm(from + i);
        out[1][n++] = measured;
      }
    }
    return new double[][] {Arrays.copyOf(out[0], n), Arrays.copyOf(out[1], n)};
  }

  /** From the shifts that fit the first and the second half. */
  private double drift(Fit fit) {
    int from = firstAfter(log, span.startInclusive() + fit.width() - fit.shift());
    int middle = from + fit.rows() / 2;
    if (fit.rows() * interval < LEAST_FOR_DRIFT_SECONDS) {
      return 0;
    }
    Fit first = fine(fit, log.rows(from, middle));
    Fit second = fine(fit, log.rows(middle, from + fit.rows()));
    double apart = log.time(from + fit.rows() - 1) - log.time(middle - 1);
    double parts = (first.shift() - second.shift()) / apart * 1e6;
    double resolution = interval / STEPS_A_ROW / apart * 1e6;
    return Math.abs(parts) > 2 * resolution ? parts : 0;
  }
}
