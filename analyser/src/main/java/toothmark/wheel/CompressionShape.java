package toothmark.wheel;

import java.util.ArrayList;
import java.util.List;
import org.apache.commons.math3.complex.Complex;

/**
 * The course of the pace that compressions give: a row of peaks.
 *
 * <p>Gas that is pressed together and let go takes and gives back energy within some 40 degrees on
 * each side of top dead centre, a smooth curve, so the waves of the pace fall geometrically with
 * their order. They are in step, but for what the starter makes up on the way: each is a little
 * later. With w = exp(i (f degrees - phase)) and r a complex ratio, the pace is the real part of w
 * + r w² + r² w³ + ... (integrating a slider crank with polytropic cylinders and a starter whose
 * torque falls with speed gives ratios of 0.16 to 0.7 for 3 to 6 cylinders, each wave 0.16 to 0.27
 * rad later).
 */
final class CompressionShape {

  /** Strengths of the first wave, of the mean pace. */
  static final double[] STRENGTHS = {0.08, 0.15, 0.25, 0.4, 0.6};

  /** Over finer rows waves alone tell as much. */
  private static final int MOST_EDGES = 12;

  private static final int ORDERS = 12;

  /** What is left from one wave to the next, of what is usual at that firing order. */
  private static final double[] FALLS = {0.75, 1.2};

  /** How much later each wave is than the one before, rad. */
  private static final double LATER = 0.15;

  private static final int PHASES = 16;

  private CompressionShape() {}

  /** Whether rows of so many edges are so coarse that its shape says more than waves do. */
  static boolean suits(int edges) {
    return edges <= MOST_EDGES;
  }

  /**
   * What the pace adds to shares and widths, for a first wave of strength 1.
   *
   * @param degrees where the edges of a row stand, and its end
   * @param widths how many edges have a width, all or none
   * @param firings in the row
   * @param decay what is left of a wave from one order of the row to the next
   * @return one for each phase and ratio, shares first; none where the row is too fine or the
   *     firings do not fit into it
   */
  static List<double[]> of(double[] degrees, int widths, double firings, double decay) {
    List<double[]> all = new ArrayList<>();
    if (!suits(degrees.length - 1) || firings % 1 != 0) {
      return all;
    }
    for (double fall : FALLS) {
      Complex ratio = Complex.valueOf(0, LATER).exp().multiply(fall * Math.pow(decay, firings));
      for (int phase = 0; phase < PHASES; phase++) {
        all.add(shape(degrees, widths, firings, 2 * Math.PI * phase / PHASES, ratio));
      }
    }
    return all;
  }

  private static double[] shape(
      double[] degrees, int widths, double firings, double phase, Complex ratio) {
    int n = degrees.length - 1;
    double[] integrals = new double[n + 1];
    double[] shape = new double[n + widths];
    for (int k = 0; k <= n; k++) {
      Complex wave = Complex.valueOf(0, firings * Math.toRadians(degrees[k]) - phase).exp();
      Complex term = wave;
      for (int order = 1; order <= ORDERS; order++) {
        integrals[k] += term.getImaginary() / (2 * Math.PI * firings * order);
        if (k < widths) {
          shape[n + k] += term.getReal();
        }
        term = term.multiply(wave).multiply(ratio);
      }
    }
    for (int k = 0; k < n; k++) {
      shape[k] = integrals[k + 1] - integrals[k];
    }
    return shape;
  }
}
