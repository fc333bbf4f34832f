package toothmark.timing;

import java.util.Arrays;
import java.util.DoubleSummaryStatistics;
import java.util.List;
import org.apache.commons.math3.distribution.TDistribution;
import toothmark.units.CrankAngle;
import toothmark.units.Measured;

/**
 * Readings with a timing light at several speeds, parted into an angle and a delay.
 *
 * <p>gap(n) = offset - 6 n delay by ordinary least squares; the uncertainty is that of the stated
 * reading or of the scatter about the line, whichever is larger. The light's own delay, some to
 * hundreds of microseconds, looks like the controller's: compare two lights.
 *
 * @param readings at two different speeds or more
 * @param readingUncertaintyDegrees standard uncertainty of one reading, degrees
 */
public record StrobeWorksheet(List<Reading> readings, double readingUncertaintyDegrees) {

  /** Scatter about the line from which it is none, in uncertainties of a reading. */
  private static final double NOT_A_LINE_UNCERTAINTIES = 2;

  /** A smaller change is none by eye, degrees. */
  private static final double NO_CHANGE_DEGREES = 1;

  private static final double NORMAL_95 = 1.959964;

  /** Speeds nearer to each other than this are one speed, rev/min. */
  private static final double LEAST_SPAN_RPM = 100;

  /**
   * Copies the list.
   *
   * @throws IllegalArgumentException if the readings do not span 100 rev/min or the uncertainty is
   *     negative
   */
  public StrobeWorksheet {
    readings = List.copyOf(readings);
    double low = readings.stream().mapToDouble(Reading::rpm).min().orElse(0);
    double high = readings.stream().mapToDouble(Reading::rpm).max().orElse(0);
    if (!(high - low >= LEAST_SPAN_RPM) || !(readingUncertaintyDegrees >= 0)) {
      throw new IllegalArgumentException(
          "a worksheet needs readings at two speeds 100 rev/min apart or more, got "
              + readings.size()
              + " readings from "
              + low
              + " to "
              + high
              + " rev/min");
    }
  }

  /**
   * One reading.
   *
   * @param rpm speed, rev/min
   * @param readDegrees advance by the light, degrees BTDC
   * @param commandedDegrees advance commanded, degrees BTDC
   */
  public record Reading(double rpm, double readDegrees, double commandedDegrees) {

    /**
     * How far the reading is from what was commanded.
     *
     * @return degrees, positive when further advanced
     */
    public double gapDegrees() {
      return readDegrees - commandedDegrees;
    }
  }

  /**
   * What the readings say.
   *
   * @param offsetDegrees gap at standstill, degrees
   * @param delaySeconds how late the spark is, the light's own delay included, s
   * @param correlation of both, -1 to 1
   */
  public record Result(Measured offsetDegrees, Measured delaySeconds, double correlation) {

    /**
     * The gap at a speed.
     *
     * @param rpm speed, rev/min
     * @return actual less commanded advance, degrees
     */
    public Measured gapAt(double rpm) {
      return GapFit.at(offsetDegrees, delaySeconds, correlation, rpm);
    }
  }

  /**
   * Fits the readings.
   *
   * @return offset and delay
   */
  public Result fit() {
    LinearFit fit = line();
    double u = uncertainty(fit, readings.size() - 2);
    double a = Math.sqrt(fit.covariance(0, 0));
    double b = Math.sqrt(fit.covariance(1, 1));
    return new Result(
        new Measured(fit.coefficient(0), u * a),
        new Measured(fit.coefficient(1), u * b).times(1e-6),
        fit.covariance(0, 1) / (a * b));
  }

  /** What the readings say of the gap's change with speed. */
  public enum Change {
    /** A change of more than one degree over the speeds read is excluded. */
    NONE,
    /** It grows as a fixed delay's does, beyond the readings' uncertainty. */
    DELAY,
    /** The readings lie further from a line than they are uncertain. */
    NOT_A_LINE,
    /** The readings are too few or too near to each other. */
    CANNOT_TELL
  }

  /**
   * How the gap changes with speed, as far as readings by eye can tell.
   *
   * @return see the words
   */
  public Change change() {
    int dof = readings.size() - 2;
    if (dof > 1 && scatter(line(), dof) > NOT_A_LINE_UNCERTAINTIES * readingUncertaintyDegrees) {
      return Change.NOT_A_LINE;
    }
    Measured delay = fit().delaySeconds();
    double bound = NORMAL_95 * delay.standardUncertainty();
    if (Math.abs(delay.value()) > bound) {
      return Change.DELAY;
    }
    double largest = CrankAngle.turned(span(readings), Math.abs(delay.value()) + bound);
    return largest < NO_CHANGE_DEGREES ? Change.NONE : Change.CANNOT_TELL;
  }

  private static double span(List<Reading> readings) {
    DoubleSummaryStatistics rpm = readings.stream().mapToDouble(Reading::rpm).summaryStatistics();
    return rpm.getMax() - rpm.getMin();
  }

  private LinearFit line() {
    double[][] rows =
        readings.stream()
            .map(r -> new double[] {1, -Line.DEGREES * r.rpm()})
            .toArray(double[][]::new);
    double[] gaps = readings.stream().mapToDouble(Reading::gapDegrees).toArray();
    double[] unit = new double[gaps.length];
    Arrays.fill(unit, 1);
    return LinearFit.of(rows, gaps, unit);
  }

  private static double scatter(LinearFit line, int dof) {
    return Math.sqrt(line.weightedSquares() / dof);
  }

  /** Of one reading: as stated, or by the scatter, enlarged by Student's t for few readings. */
  private double uncertainty(LinearFit fit, int dof) {
    if (dof < 1) {
      return readingUncertaintyDegrees;
    }
    double t = new TDistribution(dof).inverseCumulativeProbability(0.975) / NORMAL_95;
    double scatter = scatter(fit, dof);
    return scatter > readingUncertaintyDegrees ? scatter * t : readingUncertaintyDegrees;
  }
}
