package toothmark.capture.text;

import java.io.Closeable;
import java.io.IOException;
import java.util.List;
import toothmark.capture.SampledSignal;
import toothmark.capture.store.SampleStore;
import toothmark.capture.store.StoredColumn;

/**
 * Rows at uneven times, brought to a steady clock by straight lines between them. A tick that falls
 * on a row takes its value as it is.
 */
final class Resampled extends SampledSignal implements Closeable {

  private static final int CHUNK = 4096;

  private final Times times;
  private final StoredColumn column;
  private final List<Stretch> stretches;
  private final double sameSeconds;
  private final SampleStore store;

  /**
   * Makes the signal.
   *
   * @param stretches the segments, in order
   * @param interval of the clock, s
   * @param sameSeconds a row this near to a tick is on it
   */
  Resampled(
      Times times,
      StoredColumn column,
      List<Stretch> stretches,
      double interval,
      double sameSeconds,
      SampleStore store) {
    super(starts(stretches), firsts(stretches), interval, ticks(stretches));
    this.times = times;
    this.column = column;
    this.stretches = stretches;
    this.sameSeconds = sameSeconds;
    this.store = store;
  }

  static double[] starts(List<Stretch> stretches) {
    double[] starts = new double[stretches.size()];
    for (int i = 0; i < starts.length; i++) {
      starts[i] = stretches.get(i).start();
    }
    return starts;
  }

  static long[] firsts(List<Stretch> stretches) {
    long[] firsts = new long[stretches.size()];
    for (int i = 1; i < firsts.length; i++) {
      firsts[i] = firsts[i - 1] + stretches.get(i - 1).ticks();
    }
    return firsts;
  }

  static long ticks(List<Stretch> stretches) {
    long sum = 0;
    for (Stretch s : stretches) {
      sum += s.ticks();
    }
    return sum;
  }

  @Override
  public void read(long first, double[] into, int count) {
    int segment = 0;
    while (segment + 1 < segments() && segmentStart(segment + 1) <= first) {
      segment++;
    }
    int done = 0;
    while (done < count) {
      long tick = first + done - segmentStart(segment);
      int n = (int) Math.min(count - done, stretches.get(segment).ticks() - tick);
      new Cursor(stretches.get(segment)).read(tick, into, done, n);
      done += n;
      segment++;
    }
  }

  @Override
  public void close() throws IOException {
    store.close();
  }

  /** Walks along the rows of one segment. */
  private final class Cursor {
    private final Stretch stretch;
    private final double[] t = new double[CHUNK];
    private final double[] v = new double[CHUNK];
    private long loaded;
    private int size;

    Cursor(Stretch stretch) {
      this.stretch = stretch;
    }

    void read(long tick, double[] into, int offset, int n) {
      load(lastRowNotAfter(stretch.writtenStart() + tick * intervalSeconds()));
      int i = 0;
      for (int k = 0; k < n; k++) {
        double time = stretch.writtenStart() + (tick + k) * intervalSeconds();
        while (!isBefore(time, i)) {
          if (i + 2 < size) {
            i++;
          } else if (loaded + size < stretch.endRow()) {
            load(loaded + i);
            i = 0;
          } else {
            break;
          }
        }
        into[offset + k] = value(time, i);
      }
    }

    /** Whether a time lies before the row after i. */
    private boolean isBefore(double time, int i) {
      return i + 1 < size && time < t[i + 1] - sameSeconds;
    }

    private double value(double time, int i) {
      if (i + 1 >= size || time <= t[i] + sameSeconds) {
        return v[i];
      }
      if (time >= t[i + 1] - sameSeconds) {
        return v[i + 1];
      }
      return v[i] + (v[i + 1] - v[i]) * (time - t[i]) / (t[i + 1] - t[i]);
    }

    private void load(long row) {
      loaded = row;
      size = (int) Math.min(CHUNK, stretch.endRow() - row);
      times.read(row, t, size);
      column.read(row, v, 0, size);
    }

    private long lastRowNotAfter(double time) {
      long low = stretch.firstRow();
      long high = stretch.endRow();
      while (high - low > 1) {
        long middle = (low + high) >>> 1;
        if (times.at(middle) <= time + sameSeconds) {
          low = middle;
        } else {
          high = middle;
        }
      }
      return low;
    }
  }
}
