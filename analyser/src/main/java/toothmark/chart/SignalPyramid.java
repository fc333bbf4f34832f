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
 * <p>Smallest and largest value are kept of every 64 samples, of every 8 such blocks, and so on, so
 * that a single odd sample stays visible at any fineness; the samples themselves stay where they
 * are and are read again where the picture shows few of them. 100 million samples take 14 MiB.
 */
public final class SignalPyramid implements Curve {

  private static final int BASE = 64;
  private static final int FAN = 8;
  private static final int READ = 1 << 16;

  private final SampledSignal signal;
  private final Curve closeUp;
  private final List<Level> levels = new ArrayList<>();

  private SignalPyramid(SampledSignal signal) {
    this.signal = signal;
    this.closeUp = SignalCurve.of(signal).orElseThrow();
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
    SignalPyramid pyramid = new SignalPyramid(signal);
    Level level = pyramid.base(cancelled);
    pyramid.levels.add(level);
    while (level.low.length > FAN) {
      level = level.coarser();
      pyramid.levels.add(level);
    }
    return pyramid;
  }

  private Level base(BooleanSupplier cancelled) {
    Level level = new Level(BASE, Math.toIntExact((signal.size() + BASE - 1) / BASE));
    double[] block = new double[READ];
    for (long at = 0; at < signal.size(); at += READ) {
      if (cancelled.getAsBoolean()) {
        throw new CancellationException("the picture of the signal was not finished");
      }
      int n = (int) Math.min(READ, signal.size() - at);
      signal.read(at, block, n);
      for (int i = 0; i < n; i += BASE) {
        level.put((int) ((at + i) / BASE), block, i, Math.min(n, i + BASE));
      }
    }
    return level;
  }

  @Override
  public Range across() {
    return closeUp.across();
  }

  @Override
  public Range up(double from, double to) {
    Extremes ends = new Extremes();
    trace(from, to, 1, ends);
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
    Thinner thinner = new Thinner(from, (to - from) / columns, line);
    for (int s = 0; s < signal.segments(); s++) {
      long first = signal.segmentStart(s);
      long last = signal.segmentStart(s + 1) - 1;
      double t = signal.timeOf(first);
      double dt = signal.intervalSeconds();
      long a = first + (long) Math.max(0, Math.floor((from - t) / dt));
      long b = first + (long) Math.min(last - first, Math.ceil((to - t) / dt));
      if (a <= b) {
        walk(levels.get(k), a, b, thinner);
      }
      thinner.interrupt();
    }
  }

  /** Whole blocks between two samples of one segment, single samples at its ends. */
  private void walk(Level level, long first, long last, Thinner thinner) {
    long blockFrom = (first + level.samples - 1) / level.samples;
    long blockTo = (last + 1) / level.samples;
    if (blockFrom >= blockTo) {
      samples(first, last, thinner);
      return;
    }
    samples(first, blockFrom * level.samples - 1, thinner);
    for (long b = blockFrom; b < blockTo; b++) {
      double middle = signal.timeOf((b + 0.5) * level.samples);
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

    Level coarser() {
      Level next = new Level(samples * FAN, (low.length + FAN - 1) / FAN);
      for (int b = 0; b < next.low.length; b++) {
        float least = low[b * FAN];
        float most = high[b * FAN];
        for (int i = b * FAN + 1; i < Math.min(low.length, (b + 1) * FAN); i++) {
          least = Math.min(least, low[i]);
          most = Math.max(most, high[i]);
        }
        next.low[b] = least;
        next.high[b] = most;
      }
      return next;
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
