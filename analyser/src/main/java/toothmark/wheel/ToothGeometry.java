package toothmark.wheel;

import java.util.Arrays;

/**
 * What the turns together say of each tooth: how far it stands from its nominal place, and how
 * strong its signal is, both separated from speed.
 *
 * <p>Method after Resor, Trethewey and Maynard, J. Sound Vib. 286 (2005) 897-920, and Diamond,
 * Heyns and Oberholster, Mech. Syst. Signal Process. (2016).
 */
public final class ToothGeometry {

  private final double[] offsets;
  private final double[][] covariance;
  private final double[] amplitudes;
  private final double[] sway;
  private final int turns;

  /**
   * Builds a geometry of a wheel whose teeth err each by itself, on a crank that does not swing at
   * all speeds alike.
   *
   * @param offsetDegrees as below
   * @param uncertaintyDegrees standard uncertainty of each offset
   * @param amplitudes as below
   * @param turns as below
   */
  public ToothGeometry(
      double[] offsetDegrees, double[] uncertaintyDegrees, double[] amplitudes, int turns) {
    this(
        offsetDegrees,
        diagonal(uncertaintyDegrees),
        amplitudes,
        new double[offsetDegrees.length],
        turns);
  }

  /**
   * Builds a geometry; the arrays are copied.
   *
   * @param offsetDegrees how far each tooth passes after its nominal place, degrees, by tooth from
   *     1
   * @param covariance of the offsets, square degrees
   * @param amplitudes strength of each tooth's signal, 1 for the median tooth
   * @param swayDegrees see {@link #swayDegrees}
   * @param turns whole turns on which it rests; 0 when nothing was learned and all offsets are 0
   */
  public ToothGeometry(
      double[] offsetDegrees,
      double[][] covariance,
      double[] amplitudes,
      double[] swayDegrees,
      int turns) {
    this.sway = swayDegrees.clone();
    this.offsets = offsetDegrees.clone();
    this.covariance = Arrays.stream(covariance).map(double[]::clone).toArray(double[][]::new);
    this.amplitudes = amplitudes.clone();
    this.turns = turns;
  }

  private static double[][] diagonal(double[] uncertainties) {
    double[][] c = new double[uncertainties.length][uncertainties.length];
    for (int k = 0; k < c.length; k++) {
      c[k][k] = uncertainties[k] * uncertainties[k];
    }
    return c;
  }

  /**
   * How many teeth are described.
   *
   * @return teeth of the wheel
   */
  public int teeth() {
    return offsets.length;
  }

  /**
   * How far a tooth passes after its nominal place.
   *
   * @param tooth number from 1
   * @return degrees
   */
  public double offsetDegrees(int tooth) {
    return offsets[tooth - 1];
  }

  /**
   * What passes for a tooth's offset though it is taken for the crank's own motion: a wave twice a
   * turn, alike at all speeds, which the pistons' inertia makes, or an oval wheel.
   *
   * @param tooth number from 1
   * @return degrees, not in {@link #offsetDegrees}
   */
  public double swayDegrees(int tooth) {
    return sway[tooth - 1];
  }

  /**
   * Standard uncertainty of the offset.
   *
   * @param tooth number from 1
   * @return degrees
   */
  public double uncertaintyDegrees(int tooth) {
    return Math.sqrt(covariance[tooth - 1][tooth - 1]);
  }

  /**
   * Covariance of two sums over the teeth's offsets: the places of neighbours err alike.
   *
   * @param a what each tooth counts in the first, by tooth from 1
   * @param b in the second
   * @return in the product of their units
   */
  public double covariance(double[] a, double[] b) {
    double sum = 0;
    for (int j = 0; j < a.length; j++) {
      for (int k = 0; k < b.length; k++) {
        sum += a[j] * covariance[j][k] * b[k];
      }
    }
    return sum;
  }

  /**
   * Strength of a tooth's signal.
   *
   * @param tooth number from 1
   * @return 1 for the median tooth
   */
  public double amplitude(int tooth) {
    return amplitudes[tooth - 1];
  }

  /**
   * Whole turns on which this rests.
   *
   * @return 0 when nothing was learned
   */
  public int turns() {
    return turns;
  }
}
