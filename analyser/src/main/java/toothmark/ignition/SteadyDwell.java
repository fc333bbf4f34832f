package toothmark.ignition;

import java.util.Arrays;
import org.apache.commons.math3.stat.StatUtils;

/**
 * Uses a steady dwell to place sparks between samples.
 *
 * <p>A step is known to lie between two samples, and no better. But where a controller charges its
 * coil for the same time at every spark, the start of charging, which falls between two samples of
 * its own, says the same a second time: the spark lies in both spans, and the middle of what they
 * share is nearer. With a charge of a whole number of samples nothing is gained, with half a sample
 * more the scatter is halved.
 */
final class SteadyDwell {

  private static final int LEAST_CHARGES = 20;
  private static final double SPARED = 0.02;

  /** A dwell that varies by less than this share of a sample cannot be told from a steady one. */
  private static final double HIDDEN_SHARE = 0.1;

  private SteadyDwell() {}

  /**
   * Sharpens firings whose dwells take two neighbouring whole numbers of samples and no other.
   *
   * @param firings steps placed midway between samples
   * @param interval sampling interval, s
   * @return the same firings, placed better; unchanged where the dwell is not steady
   */
  static Firings sharpen(Firings firings, double interval) {
    double[] dwells = new double[firings.size()];
    int n = 0;
    for (int i = 0; i < firings.size(); i++) {
      if (!Double.isNaN(firings.dwell(i))) {
        dwells[n++] = firings.dwell(i);
      }
    }
    double[] sorted = Arrays.copyOf(dwells, n);
    Arrays.sort(sorted);
    int spared = (int) (SPARED * n);
    if (n < LEAST_CHARGES || sorted[n - 1 - spared] - sorted[spared] > 1.1 * interval) {
      return firings;
    }
    double steady = StatUtils.mean(sorted, spared, n - 2 * spared);
    Firings out = new Firings(firings.level());
    for (int i = 0; i < firings.size(); i++) {
      double off = firings.dwell(i) - steady;
      if (Math.abs(off) < interval) {
        double u = Math.hypot(interval - Math.abs(off), HIDDEN_SHARE * interval) / Math.sqrt(12);
        out.add(firings.chargeStart(i) + off / 2, firings.spark(i) - off / 2, u);
      } else {
        out.add(firings.chargeStart(i), firings.spark(i), firings.uncertainty(i));
      }
    }
    return out;
  }
}
