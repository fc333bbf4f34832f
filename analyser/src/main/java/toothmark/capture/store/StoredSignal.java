package toothmark.capture.store;

import java.io.Closeable;
import java.io.IOException;
import toothmark.capture.SampledSignal;

/** Samples of a stored column on a clock. */
public final class StoredSignal extends SampledSignal implements Closeable {

  private final StoredColumn column;
  private final SampleStore store;

  /**
   * Puts samples on a clock.
   *
   * @param column whose first numbers are the samples
   * @param store holds the column; closed with this signal
   * @param ticks when the samples were taken
   */
  public StoredSignal(StoredColumn column, SampleStore store, Ticks ticks) {
    super(ticks.times(), ticks.firsts(), ticks.intervalSeconds(), ticks.count());
    this.column = column;
    this.store = store;
  }

  @Override
  public void read(long first, double[] into, int count) {
    column.read(first, into, 0, count);
  }

  @Override
  public void close() throws IOException {
    store.close();
  }
}
