package toothmark.capture.text;

import java.util.Arrays;
import java.util.OptionalDouble;

/**
 * Recovers the steady clock behind a column of times, however coarsely they are rounded.
 *
 * <p>Rows are taken together as long as one straight line passes all of them within the rounding
 * (the corridor method: J. Sklansky and V. Gonzalez, Fast polygonal approximation of digitized
 * curves, Pattern Recognition 12 (1980), doi:10.1016/0031-3203(80)90031-X). One interval for all
 * such pieces is then fitted by least squares, brought to the nearest round number within the
 * uncertainty of the fit, and checked against every row.
 */
final class ClockFinder {

  private static final int CHUNK = 8192;
  private static final int FIT_ROWS = 1 << 16;

  /** Times that are written finely tell their clock as well by so many. */
  private static final int FINE_ROWS = 1 << 12;

  private static final int WORTH_FETCHING_TOGETHER = 16;
  private static final int WINDOWS = 64;
  private static final int WINDOW = 256;

  /** Departure from the clock that is put down to rounding whatever was written, in intervals. */
  private static final double NEGLIGIBLE = 0.05;

  /** Share of steps that must be the same for times to count as rounded to it. */
  private static final double SHARE_ALIKE = 0.7;

  /**
   * How far a round interval may lead away from the fitted one over the whole record, in intervals.
   */
  private static final double UNNOTICED_DRIFT = 0.01;

  /** Digits of a number that a maker of recorders would choose. */
  private static final int FEW_DIGITS = 7;

  private static final int MOST_DIGITS = 9;

  private static final int ROWS_FOR_A_PIECE = 16;
  private static final int MOST_PIECES = 100_000;

  private final Times times;
  private final long[] announced;
  private final OptionalDouble stated;
  private final double[] chunk = new double[CHUNK];

  /** Distance of the rows that the fit looks at. */
  private long stride;

  private double[] near;
  private long nearFirst;
  private int nearCount;
  private double[] sampled;
  private double typicalStep;
  private double rounding;
  private double uncertainty;
  private Clock.Pieces pieces;

  /**
   * Starts a search.
   *
   * @param times of the rows
   * @param announced rows that start a segment, as the file says; the first is 0
   * @param stated the interval that the preamble states, s
   */
  ClockFinder(Times times, long[] announced, OptionalDouble stated) {
    this.times = times;
    this.announced = announced;
    this.stated = stated;
  }

  /** The clock, or null when the rows follow none. */
  Clock find() {
    if (times.count() < 2) {
      return null;
    }
    survey();
    if (!(typicalStep > 0)) {
      return null;
    }
    boolean fine = rounding <= NEGLIGIBLE * typicalStep;
    stride = Math.max(1, times.count() / (fine ? FINE_ROWS : FIT_ROWS));
    near = new double[stride < WORTH_FETCHING_TOGETHER ? CHUNK : 1];
    Clock exact = attempt(NEGLIGIBLE * typicalStep);
    if (fine || exact != null && exact.pieces().size() == 1) {
      return exact;
    }
    Clock rounded = attempt(rounding);
    boolean fewer =
        exact == null || rounded != null && rounded.pieces().size() < exact.pieces().size();
    return fewer ? rounded : exact;
  }

  /** The clock when rows may be off it by a tolerance, or null. */
  private Clock attempt(double tolerance) {
    if (!split(tolerance)) {
      return null;
    }
    fetch();
    double fitted = fit();
    if (!(fitted > 0)) {
      return null;
    }
    double interval = chosen(fitted);
    place(interval);
    double worst = worst(interval);
    double limit = Math.max(0.75 * tolerance, NEGLIGIBLE * interval);
    return worst <= limit ? new Clock(interval, pieces, worst, rounding, interval != fitted) : null;
  }

  /** Typical step between rows, s; not a number when the times do not rise. */
  double typicalStep() {
    return typicalStep;
  }

  /** Looks at some windows of rows: the typical step, and how coarsely times are rounded. */
  private void survey() {
    int window = (int) Math.min(WINDOW + 1, times.count());
    int windows = (int) Math.min(WINDOWS, 1 + times.count() / window);
    double[] t = new double[window];
    double[] steps = new double[windows * window];
    int rising = 0;
    int repeats = 0;
    for (int w = 0; w < windows; w++) {
      times.read((times.count() - window) * w / Math.max(1, windows - 1), t, window);
      for (int i = 1; i < window; i++) {
        double step = t[i] - t[i - 1];
        repeats += step == 0 ? 1 : 0;
        if (step > 0) {
          steps[rising++] = step;
        }
      }
    }
    rounding = Math.max(times.writtenStep(), Math.ulp(t[window - 1]));
    if (rising == 0) {
      typicalStep = Double.NaN;
      return;
    }
    Arrays.sort(steps, 0, rising);
    typicalStep = steps[rising / 2];
    if (repeats > (rising + repeats) / 100) {
      surveyRepeats(Arrays.copyOf(steps, rising), repeats);
    }
  }

  /** Times that repeat and else rise by one and the same step are rounded to that step. */
  private void surveyRepeats(double[] rising, int repeats) {
    double step = rising[rising.length * 9 / 10];
    int alike = 0;
    double sum = 0;
    int counted = repeats;
    for (double s : rising) {
      alike += Math.abs(s - step) < 0.01 * step ? 1 : 0;
      if (s < 1.5 * step) {
        sum += s;
        counted++;
      }
    }
    if (alike >= SHARE_ALIKE * rising.length) {
      rounding = Math.max(rounding, step);
      typicalStep = sum / counted;
    }
  }

  /** Divides the rows into pieces; false when there are too many to be a clock with pauses. */
  private boolean split(double tolerance) {
    pieces = new Clock.Pieces();
    Corridor corridor = new Corridor(tolerance, typicalStep);
    int nextAnnounced = 0;
    long own = Math.max(1, times.count() / ROWS_FOR_A_PIECE);
    long most = Math.min(MOST_PIECES, announced.length + own);
    long row = 0;
    while (row < times.count()) {
      long stop = nextAnnounced < announced.length ? announced[nextAnnounced] : Long.MAX_VALUE;
      if (row == stop) {
        nextAnnounced++;
        begin(corridor, row);
        row++;
        continue;
      }
      row = advance(corridor, row, Math.min(stop, times.count()));
      if (pieces.size() > most) {
        return false;
      }
    }
    return true;
  }

  private void begin(Corridor corridor, long row) {
    pieces.firsts.add(row);
    double t = times.at(row);
    pieces.times.add(t);
    corridor.begin(row, t);
  }

  /** Takes rows up to a limit, or to the next jump; gives the next row to look at. */
  private long advance(Corridor corridor, long row, long limit) {
    long lineEnd = Math.min(limit, times.lineEnd(row));
    if (lineEnd - row > 2 && corridor.passes(row, times.at(row))) {
      double last = times.at(lineEnd - 1);
      if (corridor.passes(lineEnd - 1, last) && corridor.take(row, times.at(row))) {
        corridor.take(lineEnd - 1, last);
        return lineEnd;
      }
    }
    int n = (int) Math.min(CHUNK, limit - row);
    times.read(row, chunk, n);
    if (corridor.passesAll(row, chunk, n) && corridor.take(row + n - 1, chunk[n - 1])) {
      return row + n;
    }
    for (int i = 0; i < n; i++) {
      if (!corridor.take(row + i, chunk[i])) {
        begin(corridor, row + i);
      }
    }
    return row + n;
  }

  /**
   * Fetches the rows that the fit looks at, piece by piece: at most 2^17 and one for each piece.
   */
  private void fetch() {
    int rows = 0;
    for (int p = 0; p < pieces.size(); p++) {
      rows += fitted(p);
    }
    sampled = new double[rows];
    int s = 0;
    for (int p = 0; p < pieces.size(); p++) {
      long first = pieces.firsts.get(p);
      for (int k = 0; k < fitted(p); k++) {
        sampled[s++] = at(first + k * stride);
      }
    }
  }

  /** How many rows of a piece the fit looks at. */
  private int fitted(int piece) {
    return (int) ((end(piece) - pieces.firsts.get(piece) - 1) / stride + 1);
  }

  /** Least squares; each piece has its own start. */
  private double fit() {
    double sxx = 0;
    double sxy = 0;
    int s = 0;
    for (int p = 0; p < pieces.size(); p++) {
      int n = fitted(p);
      double middle = stride * (n - 1L) / 2.0;
      double t0 = sampled[s];
      for (int k = 0; k < n && n > 1; k++) {
        double x = k * stride - middle;
        sxx += x * x;
        sxy += x * (sampled[s + k] - t0);
      }
      s += n;
    }
    double slope = sxy / sxx;
    uncertainty = 4 * Math.max(rounding / 3.5, scatter(slope)) / Math.sqrt(sxx);
    return slope;
  }

  /** Standard deviation of the rows about the fitted clock, s. */
  private double scatter(double slope) {
    double squares = 0;
    int s = 0;
    for (int p = 0; p < pieces.size(); p++) {
      int n = fitted(p);
      double t0 = sampled[s];
      double sum = 0;
      double sum2 = 0;
      for (int k = 0; k < n; k++) {
        double r = sampled[s + k] - t0 - k * stride * slope;
        sum += r;
        sum2 += r * r;
      }
      squares += Math.max(0, sum2 - sum * sum / n);
      s += n;
    }
    return Math.sqrt(squares / sampled.length);
  }

  /** The time of a row; rows that are asked for one soon after the other are fetched together. */
  private double at(long row) {
    boolean held = row >= nearFirst && row < nearFirst + nearCount;
    if (!held) {
      nearFirst = row;
      nearCount = (int) Math.min(near.length, times.count() - row);
      times.read(row, near, nearCount);
    }
    return near[(int) (row - nearFirst)];
  }

  private long end(int piece) {
    return piece + 1 < pieces.size() ? pieces.firsts.get(piece + 1) : times.count();
  }

  private double chosen(double fitted) {
    if (stated.isPresent()) {
      double drift = Math.abs(stated.getAsDouble() - fitted) * times.count();
      if (drift <= Math.max(rounding, NEGLIGIBLE * fitted)) {
        return stated.getAsDouble();
      }
    }
    OptionalDouble close = RoundNumber.interval(fitted, uncertainty, FEW_DIGITS);
    double near = Math.max(uncertainty, UNNOTICED_DRIFT * fitted / times.count());
    return close.orElse(RoundNumber.interval(fitted, near, MOST_DIGITS).orElse(fitted));
  }

  /**
   * Finds the start of each piece: the written time when it fits, else a round one near the mean.
   */
  private void place(double interval) {
    int s = 0;
    for (int p = 0; p < pieces.size(); p++) {
      int n = fitted(p);
      double written = sampled[s];
      double sum = 0;
      double farthest = 0;
      for (int k = 0; k < n; k++) {
        double off = sampled[s + k] - written - k * stride * interval;
        sum += off;
        farthest = Math.max(farthest, Math.abs(off));
      }
      s += n;
      double shift = sum / n;
      double doubt = 2 * rounding / Math.sqrt(n) + 1e-9 * interval;
      boolean writtenFits = farthest <= 0.501 * rounding + 1e-9 * interval;
      if (!writtenFits && Math.abs(shift) > doubt) {
        double start = RoundNumber.near(written + shift, doubt);
        pieces.times.add(p, start - written);
      }
    }
  }

  /** The largest distance of any row from the clock, s. */
  private double worst(double interval) {
    double worst = 0;
    for (int p = 0; p < pieces.size(); p++) {
      long first = pieces.firsts.get(p);
      double start = pieces.times.get(p);
      long row = first;
      while (row < end(p)) {
        long lineEnd = Math.min(end(p), times.lineEnd(row));
        if (lineEnd - row > 2) {
          worst = Math.max(worst, Math.abs(times.at(row) - start - (row - first) * interval));
          long last = lineEnd - 1;
          worst = Math.max(worst, Math.abs(times.at(last) - start - (last - first) * interval));
          row = lineEnd;
          continue;
        }
        int n = (int) Math.min(CHUNK, end(p) - row);
        times.read(row, chunk, n);
        for (int i = 0; i < n; i++) {
          double d = Math.abs(chunk[i] - (start + (row - first + i) * interval));
          worst = d > worst ? d : worst;
        }
        row += n;
      }
    }
    return worst;
  }
}
