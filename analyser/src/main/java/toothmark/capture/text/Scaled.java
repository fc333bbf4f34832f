package toothmark.capture.text;

import toothmark.capture.SampledSignal;

/** A signal times a factor plus an offset. */
final class Scaled extends SampledSignal implements AutoCloseable {

  private final SampledSignal counts;
  private final double factor;
  private final double offset;

  private Scaled(
      SampledSignal counts, double factor, double offset, double[] times, long[] firsts) {
    super(times, firsts, counts.intervalSeconds(), counts.size());
    this.counts = counts;
    this.factor = factor;
    this.offset = offset;
  }

  static Scaled of(SampledSignal counts, double factor, double offset) {
    long[] firsts = new long[counts.segments()];
    double[] times = new double[firsts.length];
    for (int s = 0; s < firsts.length; s++) {
      firsts[s] = counts.segmentStart(s);
      times[s] = counts.timeOf(firsts[s]);
    }
    return new Scaled(counts, factor, offset, times, firsts);
  }

  @Override
  public void read(long first, double[] into, int count) {
    counts.read(first, into, count);
    for (int i = 0; i < count; i++) {
      into[i] = into[i] * factor + offset;
    }
  }

  @Override
  public void close() throws Exception {
    if (counts instanceof AutoCloseable held) {
      held.close();
    }
  }
}
