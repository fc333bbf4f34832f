package toothmark.edges;

import toothmark.capture.SampledSignal;

/**
 * A sliding view of the samples for stages that look forwards in order with a bounded look-back.
 */
final class SampleWindow {

  private final SampledSignal signal;
  private final double[] buffer;
  private long first;
  private int held;

  SampleWindow(SampledSignal signal, int capacity) {
    this.signal = signal;
    this.buffer = new double[(int) Math.min(capacity, signal.size())];
  }

  /** How many samples can be had at once. */
  int capacity() {
    return buffer.length;
  }

  /** Makes samples from (inclusive) to (exclusive) available; at most the capacity. */
  void hold(long from, long to) {
    if (holds(from, to)) {
      return;
    }
    if (to - from > buffer.length) {
      throw new IllegalArgumentException("a window of " + (to - from) + " samples is too long");
    }
    // Keep half of the spare room as look-back and fill the rest ahead, to read seldom.
    first = Math.max(0, from - (buffer.length - (to - from)) / 4);
    held = (int) Math.min(buffer.length, signal.size() - first);
    signal.read(first, buffer, held);
  }

  /** Whether samples from (inclusive) to (exclusive) are available now. */
  boolean holds(long from, long to) {
    return from >= first && to <= first + held;
  }

  double at(long index) {
    return buffer[(int) (index - first)];
  }
}
