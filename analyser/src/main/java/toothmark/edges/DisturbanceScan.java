package toothmark.edges;

import java.util.Arrays;
import toothmark.capture.SampledSignal;
import toothmark.capture.Signal;

/**
 * Looks for disturbances in a wave by its fourth difference.
 *
 * <p>The fourth difference of a tooth with n samples falls as n to the power of -4, that of a burst
 * or spike of a few samples does not: a difference of order 2m annihilates polynomials of degree 2m
 * - 1 (Gasser, Sroka and Jennen-Steinmetz, Biometrika 73 (1986) 625-633, on such differences as
 * measures of what is not smooth). What stands out is judged against the median and an upper
 * quantile of its own neighbourhood, so that the wave's own curvature, which grows with speed, is
 * no disturbance.
 */
public final class DisturbanceScan {

  /** A neighbourhood holds some teeth and few bursts, s; no fewer samples than this. */
  private static final double NEIGHBOURHOOD_SECONDS = 0.02;

  private static final int LEAST_BLOCK = 1024;
  private static final int LARGEST_BLOCK = 1 << 16;

  /** Every so many samples of a block are enough for its quantiles. */
  private static final int STRIDE = 8;

  /** Samples on each side that the fourth difference needs. */
  private static final int REACH = 2;

  private static final double TIMES_MEDIAN = 14;
  private static final double TIMES_UPPER = 3;

  /** A few bursts of some tens of microseconds lie above this share of a neighbourhood. */
  private static final double UPPER = 0.97;

  /** Standard deviation of the fourth difference of white noise: root of 1 + 16 + 36 + 16 + 1. */
  private static final double OF_NOISE = Math.sqrt(70);

  /** Noise passes eight standard deviations less than once in 10^15. */
  private static final double TIMES_NOISE = 8;

  /** Fewer samples a tooth leave nothing between a tooth and a burst. */
  private static final double FEWEST_SAMPLES = 12;

  /** Excursions nearer than this are one disturbance, s: a burst rings for tens of microseconds. */
  private static final double ONE = 0.3e-3;

  private final SampledSignal signal;
  private final double floor;
  private final double lowRail;
  private final double highRail;
  private double[] times = new double[16];
  private double[] heights = new double[16];
  private int size;
  private double last = Double.NEGATIVE_INFINITY;

  private DisturbanceScan(SampledSignal signal, SignalQuality quality) {
    this.signal = signal;
    this.floor = TIMES_NOISE * OF_NOISE * quality.noise();
    double margin = 0.01 * (quality.high() - quality.low());
    boolean clipped = quality.clippedShare() > 0;
    this.lowRail = clipped ? quality.low() + margin : Double.NEGATIVE_INFINITY;
    this.highRail = clipped ? quality.high() - margin : Double.POSITIVE_INFINITY;
  }

  /**
   * Looks through a crank channel.
   *
   * @param signal as recorded
   * @param edges found in it
   * @return what was found; none where the signal is no wave or has too few samples a tooth
   */
  public static Disturbances of(Signal signal, CrankEdges edges) {
    boolean wave = edges.kind() == SensorKind.VARIABLE_RELUCTANCE;
    if (!wave
        || edges.quality().samplesPerEdge() < FEWEST_SAMPLES
        || !(signal instanceof SampledSignal samples)) {
      return Disturbances.NONE;
    }
    return new DisturbanceScan(samples, edges.quality()).run();
  }

  private Disturbances run() {
    long wanted = Math.round(NEIGHBOURHOOD_SECONDS / signal.intervalSeconds());
    int block = (int) Math.max(LEAST_BLOCK, Math.min(LARGEST_BLOCK, wanted));
    double[] v = new double[block + 2 * REACH];
    for (int s = 0; s < signal.segments(); s++) {
      long end = signal.segmentStart(s + 1) - REACH;
      for (long first = signal.segmentStart(s) + REACH; first < end; first += block) {
        int n = (int) Math.min(block, end - first);
        signal.read(first - REACH, v, n + 2 * REACH);
        search(first, v, n);
      }
    }
    return new Disturbances(Arrays.copyOf(times, size), Arrays.copyOf(heights, size));
  }

  /** What stands out first in a difference is its latest sample: there a disturbance begins. */
  private void search(long first, double[] v, int n) {
    double limit = limit(v, n);
    for (int i = 0; i < n; i++) {
      if (Math.abs(fourth(v, i)) > limit && !atRail(v, i)) {
        note(signal.timeOf(first + i + REACH), span(v, i));
      }
    }
  }

  private static double fourth(double[] v, int i) {
    return v[i] - 4 * v[i + 1] + 6 * v[i + 2] - 4 * v[i + 3] + v[i + 4];
  }

  private double limit(double[] v, int n) {
    double[] sample = new double[(n + STRIDE - 1) / STRIDE];
    for (int i = 0; i < sample.length; i++) {
      sample[i] = Math.abs(fourth(v, i * STRIDE));
    }
    Arrays.sort(sample);
    double median = sample[sample.length / 2];
    double upper = sample[(int) (UPPER * (sample.length - 1))];
    return Math.max(floor, Math.max(TIMES_MEDIAN * median, TIMES_UPPER * upper));
  }

  /** A wave cut off has corners of its own. */
  private boolean atRail(double[] v, int i) {
    for (int j = i; j <= i + 2 * REACH; j++) {
      if (v[j] <= lowRail || v[j] >= highRail) {
        return true;
      }
    }
    return false;
  }

  private static double span(double[] v, int i) {
    double low = v[i];
    double high = v[i];
    for (int j = i + 1; j <= i + 2 * REACH; j++) {
      low = Math.min(low, v[j]);
      high = Math.max(high, v[j]);
    }
    return high - low;
  }

  private void note(double time, double height) {
    if (time - last > ONE) {
      if (size == times.length) {
        times = Arrays.copyOf(times, 2 * size);
        heights = Arrays.copyOf(heights, 2 * size);
      }
      times[size] = time;
      heights[size++] = height;
    } else {
      heights[size - 1] = Math.max(heights[size - 1], height);
    }
    last = time;
  }
}
