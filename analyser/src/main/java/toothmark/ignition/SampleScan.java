package toothmark.ignition;

import toothmark.capture.SampledSignal;

/** Reads a sampled signal block by block. */
final class SampleScan {

  private static final int BLOCK = 1 << 14;

  private SampleScan() {}

  /** What to do with a sample. */
  interface Visitor {
    /**
     * Takes a sample.
     *
     * @param index from 0
     * @param value in the channel's unit
     */
    void visit(long index, double value);
  }

  /**
   * Visits every sample in order.
   *
   * @param signal what to read
   * @param visitor what takes the samples
   */
  static void each(SampledSignal signal, Visitor visitor) {
    double[] block = new double[BLOCK];
    for (long at = 0; at < signal.size(); at += BLOCK) {
      int n = (int) Math.min(BLOCK, signal.size() - at);
      signal.read(at, block, n);
      for (int i = 0; i < n; i++) {
        visitor.visit(at + i, block[i]);
      }
    }
  }
}
