package toothmark.timing;

import java.util.Arrays;
import java.util.List;
import java.util.stream.IntStream;
import org.apache.commons.math3.distribution.TDistribution;
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

  /** Stands for the wheel, of which a light knows nothing; it scales a filter's lag only. */
  private static final double USUAL_PITCH_DEGREES = 10;

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
  public record Reading(double rpm, double readDegrees, double commandedDegrees) {}

  /**
   * What the readings say.
   *
   * @param offsetDegrees gap at standstill, degrees
   * @param delaySeconds how late the spark is, the light's own delay included, s
   * @param correlation of both, -1 to 1
   */
  public record Result(Measured offsetDegrees, Measured delaySeconds, double correlation) {}

  /**
   * Fits the readings.
   *
   * @return offset and delay
   */
  public Result fit() {
    double[][] rows =
        readings.stream()
            .map(r -> new double[] {1, -Line.DEGREES * r.rpm()})
            .toArray(double[][]::new);
    double[] gaps =
        readings.stream().mapToDouble(r -> r.readDegrees() - r.commandedDegrees()).toArray();
    double[] unit = new double[gaps.length];
    Arrays.fill(unit, 1);
    LinearFit fit = LinearFit.of(rows, gaps, unit);
    double u = uncertainty(fit, gaps.length - 2);
    double a = Math.sqrt(fit.covariance(0, 0));
    double b = Math.sqrt(fit.covariance(1, 1));
    return new Result(
        new Measured(fit.coefficient(0), u * a),
        new Measured(fit.coefficient(1), u * b).times(1e-6),
        fit.covariance(0, 1) / (a * b));
  }

  /**
   * What the gap does with speed.
   *
   * @return constant, a delay or another shape where the readings tell; else that they do not
   */
  public Shape shape() {
    Result result = fit();
    GapReadings gaps =
        new GapReadings(
            IntStream.range(0, readings.size())
                .mapToObj(this::asGap)
                .toArray(GapReadings.Reading[]::new));
    ShapeChoice.Choice choice =
        ShapeChoice.choose(
            gaps, USUAL_PITCH_DEGREES, 0, result.delaySeconds().standardUncertainty() * 1e6);
    return new Shape(choice.verdict(), choice.shapes().get(0).shape());
  }

  /**
   * What the gap does with speed.
   *
   * @param verdict what can be said
   * @param likeliest the shape that fits best, named or not
   */
  public record Shape(GapFit.Verdict verdict, GapShape likeliest) {}

  private GapReadings.Reading asGap(int i) {
    Reading r = readings.get(i);
    double gap = r.readDegrees() - r.commandedDegrees();
    return new GapReadings.Reading(i, r.rpm(), 0, gap, readingUncertaintyDegrees, 0, 0);
  }

  /** Of one reading: as stated, or by the scatter, enlarged by Student's t for few readings. */
  private double uncertainty(LinearFit fit, int dof) {
    if (dof < 1) {
      return readingUncertaintyDegrees;
    }
    double t = new TDistribution(dof).inverseCumulativeProbability(0.975) / NORMAL_95;
    double scatter = Math.sqrt(fit.weightedSquares() / dof);
    return scatter > readingUncertaintyDegrees ? scatter * t : readingUncertaintyDegrees;
  }
}
