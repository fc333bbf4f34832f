package toothmark.capture.text;

import toothmark.capture.SampledSignal;

/** One bit of a logic bus. */
final class Bits extends SampledSignal implements AutoCloseable {

  private final SampledSignal words;
  private final int bit;

  private Bits(SampledSignal words, int bit, double[] times, long[] firsts) {
    super(times, firsts, words.intervalSeconds(), words.size());
    this.words = words;
    this.bit = bit;
  }

  /** A bit of sampled words, on their clock. */
  static Bits of(SampledSignal words, int bit) {
    long[] firsts = new long[words.segments()];
    double[] times = new double[firsts.length];
    for (int s = 0; s < firsts.length; s++) {
      firsts[s] = words.segmentStart(s);
      times[s] = words.timeOf(firsts[s]);
    }
    return new Bits(words, bit, times, firsts);
  }

  /** How many bits the largest word needs, at least 1. */
  static int count(double largest) {
    return Math.max(1, 64 - Long.numberOfLeadingZeros((long) largest));
  }

  static double of(double word, int bit) {
    return (long) word >> bit & 1;
  }

  @Override
  public void read(long first, double[] into, int count) {
    words.read(first, into, count);
    for (int i = 0; i < count; i++) {
      into[i] = of(into[i], bit);
    }
  }

  @Override
  public void close() throws Exception {
    if (words instanceof AutoCloseable held) {
      held.close();
    }
  }
}
