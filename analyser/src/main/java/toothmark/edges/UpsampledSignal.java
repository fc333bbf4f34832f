package toothmark.edges;

import java.util.Arrays;
import toothmark.capture.SampledSignal;

/**
 * A band-limited signal at eight times its sampling rate.
 *
 * <p>Each sample between is a sum of its 40 neighbours with a sinc under a Kaiser window, which
 * passes up to 0.455 of the sampling rate and stops images by 60 dB (Kaiser's design formula, in
 * Oppenheim and Schafer, Discrete-Time Signal Processing, ch. 7). It brings out what 2.2 samples a
 * tooth still hold, and cannot bring back what was folded when they were taken.
 */
final class UpsampledSignal extends SampledSignal {

  static final int FACTOR = 8;

  private static final int TAPS_EACH_SIDE = 20;
  private static final int TAPS = 2 * TAPS_EACH_SIDE;
  private static final double KAISER_BETA = 5.65;
  private static final int CHUNK = 4096;
  private static final double[][] PHASES = phases();

  private final SampledSignal source;

  UpsampledSignal(SampledSignal source) {
    super(source.timeOf(0), source.intervalSeconds() / FACTOR, (source.size() - 1) * FACTOR + 1);
    this.source = source;
  }

  private static double[][] phases() {
    double[][] phases = new double[FACTOR][TAPS];
    for (int p = 0; p < FACTOR; p++) {
      double sum = 0;
      for (int k = 0; k < TAPS; k++) {
        double x = k - TAPS_EACH_SIDE + 1 - (double) p / FACTOR;
        double u = x / TAPS_EACH_SIDE;
        double window = bessel(KAISER_BETA * Math.sqrt(Math.max(0, 1 - u * u)));
        phases[p][k] = (x == 0 ? 1 : Math.sin(Math.PI * x) / (Math.PI * x)) * window;
        sum += phases[p][k];
      }
      for (int k = 0; k < TAPS; k++) {
        phases[p][k] /= sum;
      }
    }
    return phases;
  }

  /** Modified Bessel function of the first kind and order 0 by its series. */
  private static double bessel(double x) {
    double term = 1;
    double sum = 1;
    for (int k = 1; k < 40; k++) {
      term *= x / (2 * k) * (x / (2 * k));
      sum += term;
    }
    return sum;
  }

  @Override
  public void read(long first, double[] into, int count) {
    int done = 0;
    while (done < count) {
      long from = first + done;
      long source0 = from / FACTOR;
      int n = (int) Math.min(count - done, (long) CHUNK * FACTOR - from % FACTOR);
      int spans = (int) ((from + n - 1) / FACTOR - source0) + 1;
      double[] neighbours = neighbours(source0 - TAPS_EACH_SIDE + 1, spans + TAPS);
      for (int i = 0; i < n; i++) {
        long at = from + i;
        into[done + i] =
            sum(neighbours, (int) (at / FACTOR - source0), PHASES[(int) (at % FACTOR)]);
      }
      done += n;
    }
  }

  private static double sum(double[] neighbours, int offset, double[] phase) {
    double sum = 0;
    for (int k = 0; k < TAPS; k++) {
      sum += phase[k] * neighbours[offset + k];
    }
    return sum;
  }

  /** Beyond the record its first and last samples go on. */
  private double[] neighbours(long first, int count) {
    int before = (int) Math.max(0, Math.min(count, -first));
    long from = Math.max(0, first);
    int inside = (int) Math.max(0, Math.min(count - before, source.size() - from));
    double[] block = new double[inside];
    source.read(from, block, inside);
    double[] neighbours = new double[count];
    System.arraycopy(block, 0, neighbours, before, inside);
    Arrays.fill(neighbours, 0, before, block[0]);
    Arrays.fill(neighbours, before + inside, count, block[inside - 1]);
    return neighbours;
  }
}
