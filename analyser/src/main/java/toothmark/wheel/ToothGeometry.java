package toothmark.wheel;

import org.apache.commons.math3.linear.MatrixUtils;
import org.apache.commons.math3.linear.RealMatrix;

/**
 * What the turns together say of each tooth: how far it stands from its nominal place, and how
 * strong its signal is, both separated from speed.
 *
 * <p>Method after Resor, Trethewey and Maynard, J. Sound Vib. 286 (2005) 897-920, and Diamond,
 * Heyns and Oberholster, Mech. Syst. Signal Process. (2016).
 */
public final class ToothGeometry {

  private final double[] offsets;
  private final RealMatrix covariance;
  private final double[] amplitudes;
  private final int turns;

  /**
   * Builds a geometry; arrays and matrix are copied.
   *
   * @param offsetDegrees how far each tooth passes after its nominal place, degrees, by tooth from
   *     1
   * @param covariance of the offsets, square degrees
   * @param amplitudes strength of each tooth's signal, 1 for the median tooth
   * @param turns whole turns on which it rests; 0 when nothing was learned and all offsets are 0
   */
  public ToothGeometry(
      double[] offsetDegrees, RealMatrix covariance, double[] amplitudes, int turns) {
    this.offsets = offsetDegrees.clone();
    this.covariance = covariance.copy();
    this.amplitudes = amplitudes.clone();
    this.turns = turns;
  }

  /**
   * A geometry whose teeth are each off by themselves.
   *
   * @param offsetDegrees as above
   * @param uncertaintyDegrees standard uncertainty of each tooth's place
   * @param amplitudes as above
   * @param turns as above
   * @return the geometry
   */
  public static ToothGeometry independent(
      double[] offsetDegrees, double uncertaintyDegrees, double[] amplitudes, int turns) {
    RealMatrix covariance =
        MatrixUtils.createRealIdentityMatrix(offsetDegrees.length)
            .scalarMultiply(uncertaintyDegrees * uncertaintyDegrees);
    return new ToothGeometry(offsetDegrees, covariance, amplitudes, turns);
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
   * Standard uncertainty of the offset.
   *
   * @param tooth number from 1
   * @return degrees
   */
  public double uncertaintyDegrees(int tooth) {
    return Math.sqrt(covarianceDegrees(tooth, tooth));
  }

  /**
   * Covariance of two offsets: what leaves one open often leaves its neighbours open alike.
   *
   * @param tooth number from 1
   * @param other number from 1
   * @return square degrees
   */
  public double covarianceDegrees(int tooth, int other) {
    return covariance.getEntry(tooth - 1, other - 1);
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
