package toothmark.edges;

import toothmark.capture.SampledSignal;

/** A signal with hum taken away. */
final class HumFreeSignal extends SampledSignal {

  private final SampledSignal source;
  private final HumTrack hum;

  HumFreeSignal(SampledSignal source, HumTrack hum) {
    super(source.timeOf(0), source.intervalSeconds(), source.size());
    this.source = source;
    this.hum = hum;
  }

  @Override
  public void read(long first, double[] into, int count) {
    source.read(first, into, count);
    hum.subtract(into, count, first);
  }
}
