package toothmark.ignition;

import java.util.Arrays;
import org.apache.commons.math3.stat.descriptive.rank.Median;
import toothmark.capture.SampledSignal;
import toothmark.edges.EdgeTrain;

/**
 * Firings of an inductive clamp on a plug lead: one burst of ringing is one spark.
 *
 * <p>The spark on the exhaust stroke of a wasted-spark pair needs 2 to 3 kV against 8 to 12 kV
 * (Halderman and Linder, Automotive Engine Performance, p. 361), so a burst an eighth as high as
 * the usual one still counts.
 */
final class BurstFirings {

  private static final double NOISE_FACTOR = 6;
  private static final double PEAK_SHARE = 0.12;

  /** Ringing and the end of the burn lie within this time of the spark (common practice). */
  private static final double QUIET_SECONDS = 1.5e-3;

  private static final double QUARTILES_TO_SIGMA = 1.349;

  private final SampledSignal signal;
  private final double rest;
  private final double threshold;
  private double[] starts = new double[64];
  private double[] peaks = new double[64];
  private int size;
  private double lastAbove = Double.NEGATIVE_INFINITY;

  private BurstFirings(SampledSignal signal) {
    this.signal = signal;
    Histogram levels = Histogram.of(signal);
    rest = levels.commonest();
    double sigma = (levels.quantile(0.75) - levels.quantile(0.25)) / QUARTILES_TO_SIGMA;
    threshold = NOISE_FACTOR * Math.max(sigma, levels.binWidth());
  }

  static Firings read(SampledSignal signal) {
    BurstFirings reader = new BurstFirings(signal);
    SampleScan.each(signal, reader::visit);
    return reader.firings();
  }

  /** Firings of a clamp that a logic channel recorded: the first rise of each group. */
  static Firings read(EdgeTrain rising) {
    Firings out = new Firings(ChargingLevel.HIGH);
    double last = Double.NEGATIVE_INFINITY;
    for (int i = 0; i < rising.size(); i++) {
      if (rising.time(i) - last > QUIET_SECONDS) {
        out.add(Double.NaN, rising.time(i), rising.uncertainty(i));
        last = rising.time(i);
      }
    }
    return out;
  }

  private void visit(long index, double value) {
    double away = Math.abs(value - rest);
    if (away < threshold) {
      return;
    }
    double time = signal.timeOf(index);
    if (time - lastAbove > QUIET_SECONDS) {
      start(signal.timeOf(index - 0.5));
    }
    lastAbove = time;
    peaks[size - 1] = Math.max(peaks[size - 1], away);
  }

  private void start(double time) {
    if (size == starts.length) {
      starts = Arrays.copyOf(starts, 2 * size);
      peaks = Arrays.copyOf(peaks, 2 * size);
    }
    starts[size++] = time;
  }

  private Firings firings() {
    double[] sorted = Arrays.copyOf(peaks, size);
    Arrays.sort(sorted);
    double usual = size == 0 ? 0 : new Median().evaluate(sorted, size / 2, size - size / 2);
    Firings out = new Firings(ChargingLevel.HIGH);
    for (int i = 0; i < size; i++) {
      if (peaks[i] >= PEAK_SHARE * usual) {
        out.add(Double.NaN, starts[i], signal.intervalSeconds() / Math.sqrt(12));
      }
    }
    return out;
  }
}
