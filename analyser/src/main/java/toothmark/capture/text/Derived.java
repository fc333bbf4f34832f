package toothmark.capture.text;

import java.io.Closeable;
import java.io.IOException;
import java.util.function.DoubleUnaryOperator;
import toothmark.capture.SampledSignal;

/** A signal made sample by sample from another, on the same clock. */
final class Derived extends SampledSignal implements Closeable {

  private final SampledSignal base;
  private final DoubleUnaryOperator operator;

  private Derived(SampledSignal base, DoubleUnaryOperator operator, double[] times, long[] firsts) {
    super(times, firsts, base.intervalSeconds(), base.size());
    this.base = base;
    this.operator = operator;
  }

  /** A signal whose samples are those of another, changed one by one. */
  static Derived of(SampledSignal base, DoubleUnaryOperator operator) {
    long[] firsts = new long[base.segments()];
    double[] times = new double[firsts.length];
    for (int s = 0; s < firsts.length; s++) {
      firsts[s] = base.segmentStart(s);
      times[s] = base.timeOf(firsts[s]);
    }
    return new Derived(base, operator, times, firsts);
  }

  /** A signal times a factor plus an offset. */
  static Derived scaled(SampledSignal counts, double factor, double offset) {
    return of(counts, v -> v * factor + offset);
  }

  /** One bit of the words of a bus. */
  static Derived bit(SampledSignal words, int bit) {
    return of(words, v -> Bits.of(v, bit));
  }

  @Override
  public void read(long first, double[] into, int count) {
    base.read(first, into, count);
    for (int i = 0; i < count; i++) {
      into[i] = operator.applyAsDouble(into[i]);
    }
  }

  @Override
  public void close() throws IOException {
    if (base instanceof Closeable held) {
      held.close();
    }
  }
}
