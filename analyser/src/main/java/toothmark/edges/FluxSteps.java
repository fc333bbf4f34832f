package toothmark.edges;

import java.util.Arrays;
import java.util.SplittableRandom;
import toothmark.capture.SampledSignal;

/**
 * Steps of flux between positions, and what a wheel alone would make of each.
 *
 * <p>At an extremum flux does not feel a small shift in time, so there the flux of a hum simply
 * adds to that of the teeth. A step from one extremum to the next is then the usual swing, plus
 * offset times time, plus the change of the hum's flux. Differences are used, since noise walks in
 * flux and stays apart in its steps. Wild steps, as at a gap, are weighted down (bisquare).
 */
final class FluxSteps {

  private static final double BISQUARE = 4.685;
  private static final double MAD_TO_SIGMA = 1.4826;
  private static final int ROUNDS = 4;
  private static final double BLOCK_SECONDS = 1e-3;
  private static final long MOST_BLOCKS = 20_000;

  /** More swings than this make a hum no surer, only slower. */
  private static final int MOST_SWINGS = 4000;

  /** Where each step starts, samples. */
  final double[] from;

  /** Where each step ends, samples. */
  final double[] to;

  final double[] steps;

  /** The step that teeth alone make, signed. */
  final double[] usual;

  final double[] weights;
  private final double unit;

  private FluxSteps(double[] from, double[] to, double[] steps, double[] usual) {
    this.from = from;
    this.to = to;
    this.steps = steps;
    this.usual = usual;
    this.weights = new double[steps.length];
    Arrays.fill(weights, 1);
    double[] magnitude = new double[steps.length];
    for (int i = 0; i < magnitude.length; i++) {
      magnitude[i] = Math.abs(steps[i]);
    }
    this.unit = Math.max(SwingScale.quantile(magnitude, 0.5), Double.MIN_NORMAL);
  }

  /** Steps from extremum to extremum. */
  static FluxSteps of(Extrema e) {
    int[] chosen = choose(e.size() - 1, MOST_SWINGS);
    int n = chosen.length;
    double[] scale = SwingScale.fromSwings(e);
    double[] from = new double[n];
    double[] to = new double[n];
    double[] steps = new double[n];
    double[] usual = new double[n];
    for (int k = 0; k < n; k++) {
      int i = chosen[k];
      from[k] = e.position(i) + 0.5;
      to[k] = e.position(i + 1) + 0.5;
      steps[k] = e.flux(i + 1) - e.flux(i);
      usual[k] = e.isMaximum(i) ? -scale[i] : scale[i];
    }
    FluxSteps s = new FluxSteps(from, to, steps, usual);
    s.weighDownWild();
    return s;
  }

  /** Steps over even blocks of a millisecond, where there may be no teeth to go by. */
  static FluxSteps ofBlocks(Wave wave, long from, long to) {
    SampledSignal signal = wave.signal();
    int block = (int) Math.max(1, Math.round(BLOCK_SECONDS / signal.intervalSeconds()));
    long samples = Math.max(0, Math.min(to, signal.size()) - from);
    int n = (int) Math.min(MOST_BLOCKS, samples / block);
    double[] starts = new double[n];
    double[] ends = new double[n];
    double[] steps = new double[n];
    double[] v = new double[block];
    for (int i = 0; i < n; i++) {
      signal.read(from + (long) i * block, v, block);
      for (int j = 0; j < block; j++) {
        steps[i] += wave.push(v[j]);
      }
      starts[i] = from + (double) i * block - 0.5;
      ends[i] = starts[i] + block;
    }
    return new FluxSteps(starts, ends, steps, new double[n]);
  }

  /**
   * Chooses some of many, spread evenly but not in step: teeth come regularly, and every so manyth
   * of them would show lines that are not there.
   *
   * @param size how many there are
   * @param most about how many to take
   * @return indices in order; always the same for the same numbers
   */
  static int[] choose(int size, int most) {
    int stride = 1 + Math.max(0, size) / most;
    SplittableRandom random = new SplittableRandom(size);
    int[] chosen = new int[Math.max(0, size) / stride];
    for (int k = 0; k < chosen.length; k++) {
      chosen[k] = k * stride + random.nextInt(stride);
    }
    return chosen;
  }

  /** The same steps, weighed as they are, with a hum's flux on them again. */
  FluxSteps plus(Harmonics hum) {
    double[] more = steps.clone();
    for (int i = 0; i < more.length; i++) {
      more[i] += hum.flux(to[i]) - hum.flux(from[i]);
    }
    FluxSteps s = new FluxSteps(from, to, more, usual);
    System.arraycopy(weights, 0, s.weights, 0, weights.length);
    return s;
  }

  /** From the first position to the last, samples. */
  double samples() {
    return size() == 0 ? 0 : to[size() - 1] - from[0];
  }

  int size() {
    return steps.length;
  }

  /** Usual size of a step, to scale by. */
  double unit() {
    return unit;
  }

  /** Steps less what teeth alone make, by one common factor. */
  double[] residuals() {
    double up = 0;
    double pp = 0;
    for (int i = 0; i < steps.length; i++) {
      up += weights[i] * usual[i] * steps[i];
      pp += weights[i] * usual[i] * usual[i];
    }
    double[] r = new double[steps.length];
    for (int i = 0; i < r.length; i++) {
      r[i] = steps[i] - (pp > 0 ? up / pp * usual[i] : 0);
    }
    return r;
  }

  /** Spread of the steps about what teeth alone make, as a share of it (median magnitude). */
  double scatter() {
    double[] r = residuals();
    for (int i = 0; i < r.length; i++) {
      r[i] = Math.abs(r[i] / usual[i]);
    }
    return SwingScale.quantile(r, 0.5);
  }

  /** Sum of the squares of all steps. */
  double squares() {
    double sum = 0;
    for (double s : steps) {
      sum += s * s;
    }
    return sum;
  }

  private void weighDownWild() {
    double[] magnitude = new double[steps.length];
    for (int round = 0; round < ROUNDS; round++) {
      double[] r = residuals();
      for (int i = 0; i < r.length; i++) {
        magnitude[i] = Math.abs(r[i] / usual[i]);
      }
      double reach = BISQUARE * MAD_TO_SIGMA * SwingScale.quantile(magnitude.clone(), 0.5);
      for (int i = 0; i < r.length; i++) {
        double u = reach > 0 ? Math.abs(r[i] / usual[i]) / reach : 0;
        weights[i] = u < 1 ? (1 - u * u) * (1 - u * u) : 0;
      }
    }
  }
}
