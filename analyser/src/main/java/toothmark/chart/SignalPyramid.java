package toothmark.chart;

import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.CancellationException;
import java.util.function.BooleanSupplier;
import org.jfree.data.Range;
import toothmark.capture.SampledSignal;

/**
 * A sampled signal as a curve that costs what the picture's width costs, however long the signal.
 *
 * <p>Smallest and largest value are kept of every 64 samples, of every 4 such blocks, and so on, so
 * that a single odd sample stays visible at any fineness; the samples themselves stay where they
 * are and are read again where the picture shows few of them. 100 million samples take 16 MiB.
 */
public final class SignalPyramid implements Curve {

  private static final int BASE = 64;
  private static final int FAN = 4;

  /** Columns from which extremes are taken: the more there are, the fewer samples are read anew. */
  private static final int FINE = 1000;

  private static final int READ = 1 << 16;

  private final SampledSignal signal;
  private final Curve closeUp;
  private final List<Level> levels = new ArrayList<>();

  private volatile long filled;

  private SignalPyramid(SampledSignal signal) {
    this.signal = signal;
    this.closeUp = SignalCurve.of(signal).orElseThrow();
    long samples = BASE;
    int blocks = blocks(signal.size(), samples);
    levels.add(new Level(samples, blocks));
    while (blocks > FAN) {
      samples *= FAN;
      blocks = blocks(signal.size(), samples);
      levels.add(new Level(samples, blocks));
    }
  }

  private static int blocks(long size, long samples) {
    return Math.toIntExact((size + samples - 1) / samples);
  }

  /**
   * Reads a signal once and keeps its extremes.
   *
   * @param signal what was recorded
   * @param cancelled asked between blocks; true to stop
   * @return the curve
   * @throws CancellationException if asked to stop
   */
  public static SignalPyramid of(SampledSignal signal, BooleanSupplier cancelled) {
    SignalPyramid pyramid = growing(signal);
    while (pyramid.grow()) {
      if (cancelled.getAsBoolean()) {
        throw new CancellationException("the picture of the signal was not finished");
      }
    }
    return pyramid;
  }

  /**
   * A curve that is empty from afar until {@link #grow} was called often enough.
   *
   * @param signal what was recorded
   * @return the curve; may be drawn on one thread while it grows on another
   */
  public static SignalPyramid growing(SampledSignal signal) {
    return new SignalPyramid(signal);
  }

  /**
   * Reads on a little.
   *
   * @return false when there is nothing left
   */
  public boolean grow() {
    long at = filled;
    int n = (int) Math.min(READ, signal.size() - at);
    if (n > 0) {
      double[] block = new double[n];
      signal.read(at, block, n);
      Level base = levels.get(0);
      for (int i = 0; i < n; i += BASE) {
        base.put((int) ((at + i) / BASE), block, i, Math.min(n, i + BASE));
      }
      for (int k = 1; k < levels.size(); k++) {
        levels.get(k).take(levels.get(k - 1), at, at + n - 1);
      }
      filled = at + n;
    }
    return filled < signal.size();
  }

  /**
   * How much of the signal is drawn from afar.
   *
   * @return 0 to 1
   */
  public double grown() {
    return signal.size() == 0 ? 1 : (double) filled / signal.size();
  }

  @Override
  public Range across() {
    return closeUp.across();
  }

  @Override
  public Range up(double from, double to) {
    Extremes ends = new Extremes();
    trace(from, to, FINE, ends);
    return ends.range();
  }

  @Override
  public void trace(double from, double to, int columns, Line line) {
    double perColumn = (to - from) / signal.intervalSeconds() / columns;
    if (perColumn <= BASE) {
      closeUp.trace(from, to, columns, line);
      return;
    }
    int k = 0;
    while (k + 1 < levels.size() && levels.get(k + 1).samples * 2L <= perColumn) {
      k++;
    }
    long end = filled;
    Thinner thinner = new Thinner(from, (to - from) / columns, line);
    for (int s = 0; s < signal.segments(); s++) {
      long first = signal.segmentStart(s);
      long last = signal.segmentStart(s + 1) - 1;
      double t = signal.timeOf(first);
      double dt = signal.intervalSeconds();
      long a = first + (long) Math.max(0, Math.floor((from - t) / dt));
      long b = first + (long) Math.min(last - first, Math.ceil((to - t) / dt));
      if (a <= Math.min(b, end - 1)) {
        walk(levels.get(k), a, Math.min(b, end - 1), end, thinner);
      }
      thinner.interrupt();
    }
  }

  /**
   * Whole blocks between two samples of one segment, single samples at its ends; the last block of
   * what has grown counts as whole.
   */
  private void walk(Level level, long first, long last, long end, Thinner thinner) {
    long blockFrom = (first + level.samples - 1) / level.samples;
    long blockTo = (last + 1 == end ? end + level.samples - 1 : last + 1) / level.samples;
    if (blockFrom >= blockTo) {
      samples(first, last, thinner);
      return;
    }
    samples(first, blockFrom * level.samples - 1, thinner);
    for (long b = blockFrom; b < blockTo; b++) {
      double middle = signal.timeOf(Math.min((b + 0.5) * level.samples, last));
      thinner.add(middle, level.low[(int) b]);
      thinner.add(middle, level.high[(int) b]);
    }
    samples(blockTo * level.samples, last, thinner);
  }

  private void samples(long first, long last, Thinner thinner) {
    double[] block = new double[(int) Math.min(READ, Math.max(0, last - first + 1))];
    for (long at = first; at <= last; at += READ) {
      int n = (int) Math.min(READ, last - at + 1);
      signal.read(at, block, n);
      for (int i = 0; i < n; i++) {
        thinner.add(signal.timeOf(at + i), block[i]);
      }
    }
  }

  /** Extremes of equal blocks of samples. */
  private static final class Level {

    private final long samples;
    private final float[] low;
    private final float[] high;

    Level(long samples, int blocks) {
      this.samples = samples;
      this.low = new float[blocks];
      this.high = new float[blocks];
    }

    void put(int block, double[] values, int from, int to) {
      double least = values[from];
      double most = values[from];
      for (int i = from + 1; i < to; i++) {
        least = Math.min(least, values[i]);
        most = Math.max(most, values[i]);
      }
      low[block] = (float) least;
      high[block] = (float) most;
    }

    /** Takes the extremes of the finer blocks over a run of samples that was put into them. */
    void take(Level finer, long firstSample, long lastSample) {
      for (int b = (int) (firstSample / samples); b <= lastSample / samples; b++) {
        int from = b * FAN;
        int to = (int) Math.min(lastSample / finer.samples + 1, from + FAN);
        float least = finer.low[from];
        float most = finer.high[from];
        for (int i = from + 1; i < to; i++) {
          least = Math.min(least, finer.low[i]);
          most = Math.max(most, finer.high[i]);
        }
        low[b] = least;
        high[b] = most;
      }
    }
  }

  /** Keeps the ends of a line. */
  private static final class Extremes implements Line {

    private double least = Double.POSITIVE_INFINITY;
    private double most = Double.NEGATIVE_INFINITY;

    @Override
    public void moveTo(double x, double y) {
      least = Math.min(least, y);
      most = Math.max(most, y);
    }

    @Override
    public void lineTo(double x, double y) {
      moveTo(x, y);
    }

    Range range() {
      return least <= most ? new Range(least, most) : new Range(0, 0);
    }
  }
}
