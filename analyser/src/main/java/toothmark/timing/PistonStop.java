package toothmark.timing;

import java.util.List;
import org.apache.commons.math3.distribution.TDistribution;
import org.apache.commons.math3.stat.StatUtils;
import toothmark.units.Measured;

/**
 * Two touches of a piston stop, which find top dead centre where the piston hardly moves.
 *
 * <p>A stop in the plug hole is touched turning forwards, then turning back; true top dead centre
 * lies midway. Turn by hand, with the plugs out and the battery off, never on the starter. Common
 * workshop practice; a wrist pin that is offset moves the middle by less than 0.05 degrees while
 * the stop stands within 20 mm of the top.
 *
 * @param beforeDegrees what the pointer reads at the touch turning forwards, degrees BTDC
 * @param afterDegrees what it reads at the touch turning back, degrees ATDC
 * @param readingUncertaintyDegrees standard uncertainty of one reading, degrees
 */
public record PistonStop(
    double beforeDegrees, double afterDegrees, double readingUncertaintyDegrees) {

  /** Nearer to the top than this the piston moves too little to find the touch, degrees. */
  public static final double LEAST_EACH_SIDE_DEGREES = 15;

  private static final double NORMAL_95 = 1.959964;

  /** Further than this a touch is on one side of the top, or none at all, degrees. */
  private static final double LARGEST_EACH_SIDE_DEGREES = 90;

  /** Whether two touches can be trusted. */
  public enum Standing {
    /** The touches are far enough apart. */
    GOOD,
    /** They are too near to the top: use a longer stop. */
    TOO_NEAR_THE_TOP
  }

  /**
   * Checks that the touches lie on both sides.
   *
   * @throws IllegalArgumentException if they do not, or the uncertainty is negative
   */
  public PistonStop {
    double half = (beforeDegrees + afterDegrees) / 2;
    if (!(half > 0 && half < LARGEST_EACH_SIDE_DEGREES) || !(readingUncertaintyDegrees >= 0)) {
      throw new IllegalArgumentException(
          "a piston stop needs one touch before and one after top dead centre, got "
              + beforeDegrees
              + " degrees before and "
              + afterDegrees
              + " degrees after");
    }
  }

  /**
   * How far each touch is from true top dead centre.
   *
   * @return degrees
   */
  public double eachSideDegrees() {
    return (beforeDegrees + afterDegrees) / 2;
  }

  /**
   * What the pointer reads at true top dead centre; what the marks are off.
   *
   * @return degrees BTDC; take it off each later reading
   */
  public Measured readingAtTopDegrees() {
    return new Measured(
        (beforeDegrees - afterDegrees) / 2, readingUncertaintyDegrees / Math.sqrt(2));
  }

  /**
   * Whether the touches are far enough from the top.
   *
   * @return see the words
   */
  public Standing standing() {
    return eachSideDegrees() >= LEAST_EACH_SIDE_DEGREES ? Standing.GOOD : Standing.TOO_NEAR_THE_TOP;
  }

  /**
   * What the pointer reads at true top dead centre, from several pairs of touches.
   *
   * @param stops at least one
   * @return mean, degrees BTDC; its uncertainty is that of the readings, or of their scatter where
   *     that is larger, enlarged by Student's t for few pairs
   */
  public static Measured readingAtTopDegrees(List<PistonStop> stops) {
    double[] tops = stops.stream().mapToDouble(s -> s.readingAtTopDegrees().value()).toArray();
    return repeated(tops, stops.get(0).readingAtTopDegrees().standardUncertainty());
  }

  /** Mean of readings of one thing, each as uncertain as stated or as they scatter. */
  static Measured repeated(double[] readings, double stated) {
    int n = readings.length;
    double t = n < 2 ? 0 : new TDistribution(n - 1).inverseCumulativeProbability(0.975) / NORMAL_95;
    double scatter = Math.sqrt(StatUtils.variance(readings));
    double one = scatter > stated ? t * scatter : stated;
    return new Measured(StatUtils.mean(readings), one / Math.sqrt(n));
  }
}
