package toothmark.edges;

import java.util.Optional;

/**
 * Hum over a whole record, span by span, since the mains do not keep step for longer than some
 * seconds.
 */
final class HumTrack {

  private final long spanSamples;
  private final Harmonics[] spans;

  /** All spans quiet. */
  HumTrack(long spanSamples, int count) {
    this(spanSamples, new Harmonics[count]);
    java.util.Arrays.fill(spans, Harmonics.none());
  }

  private HumTrack(long spanSamples, Harmonics[] spans) {
    this.spanSamples = spanSamples;
    this.spans = spans;
  }

  int spans() {
    return spans.length;
  }

  Harmonics span(int i) {
    return spans[i];
  }

  long start(int i) {
    return i * spanSamples;
  }

  /** The last span goes on to the end of the record. */
  long end(int i) {
    return i + 1 < spans.length ? start(i + 1) : Long.MAX_VALUE;
  }

  HumTrack with(int i, Harmonics hum) {
    Harmonics[] changed = spans.clone();
    changed[i] = hum;
    return new HumTrack(spanSamples, changed);
  }

  boolean isNone() {
    return strongest().isNone();
  }

  private Harmonics strongest() {
    Harmonics best = Harmonics.none();
    for (Harmonics h : spans) {
      best = h.amplitude() > best.amplitude() ? h : best;
    }
    return best;
  }

  /** The strongest span in the terms of a result; empty when there is no hum. */
  Optional<Hum> asHum(double intervalSeconds) {
    Harmonics h = strongest();
    return h.isNone()
        ? Optional.empty()
        : Optional.of(new Hum(h.cyclesPerSample() / intervalSeconds, h.amplitude()));
  }

  /** Takes the hum away from samples {@code first} on. */
  void subtract(double[] v, int n, long first) {
    int from = 0;
    while (from < n) {
      int i = (int) Math.min(spans.length - 1, (first + from) / spanSamples);
      int to = (int) Math.min(n, end(i) - first);
      spans[i].subtract(v, from, to, first);
      from = to;
    }
  }
}
