package toothmark.timing;

import java.util.List;
import org.apache.commons.math3.linear.ArrayRealVector;
import org.apache.commons.math3.linear.CholeskyDecomposition;
import org.apache.commons.math3.linear.DecompositionSolver;
import org.apache.commons.math3.linear.MatrixUtils;
import org.apache.commons.math3.linear.RealMatrix;
import org.apache.commons.math3.linear.RealVector;
import toothmark.units.Measured;

/**
 * The tooth 1 angle where no channel marks top dead centre: from what was read by hand.
 *
 * <p>A piston stop shows it at standstill. A timing light shows the wheel's error and the
 * controller's gap together: what the capture itself shows of commanded and actual advance, counted
 * from the angle that the controller is told, is taken off,
 *
 * <pre>seen - commanded - gap(n) = error + pointer - 6 n (light's delay + sensor's lag)</pre>
 *
 * by generalised least squares over all readings with what they share: the pointer's zero, the
 * capture's gap and both times (JCGM 100:2008, 5.2).
 */
final class AlignmentByHand {

  /** Delay of a timing light, microseconds: some to hundreds (common practice). */
  private static final Measured LIGHT_DELAY = new Measured(50, 50);

  /**
   * What a controller's delay may be where the capture's one speed does not show it, microseconds.
   */
  private static final double OPEN_DELAY_MICROSECONDS = 100;

  private final WheelSetting wheel;
  private final Measured lag;

  AlignmentByHand(WheelSetting wheel) {
    this.wheel = wheel;
    this.lag = AlignmentFit.usualLag(wheel.sensor());
  }

  /** By a piston stop. */
  AlignedWheel byStop(Measured tooth1) {
    double u = tooth1.standardUncertainty();
    return aligned(TdcSource.PISTON_STOP, line(0, tooth1.value(), u * u));
  }

  /**
   * By a timing light.
   *
   * @param readings with light readings
   * @param gap of the capture, against the nominal setting
   */
  AlignedWheel byLight(TdcReadings readings, GapFit gap) {
    List<StrobeWorksheet.Reading> light = readings.light().orElseThrow().readings();
    Measured top = readings.readingAtTop();
    double each = readings.readingUncertaintyDegrees();
    double late = LIGHT_DELAY.value() + lag.value();
    double lateVariance =
        square(LIGHT_DELAY.standardUncertainty()) + square(lag.standardUncertainty());
    int n = light.size();
    RealVector error = new ArrayRealVector(n);
    RealMatrix v = MatrixUtils.createRealMatrix(n, n);
    for (int i = 0; i < n; i++) {
      double turned = Line.DEGREES * light.get(i).rpm();
      double of = light.get(i).gapDegrees() - gap.gapAt(light.get(i).rpm()).value();
      error.setEntry(i, of - top.value() + turned * late);
      for (int j = 0; j < n; j++) {
        double shared =
            square(top.standardUncertainty())
                + covariance(gap, light.get(i).rpm(), light.get(j).rpm())
                + turned * Line.DEGREES * light.get(j).rpm() * lateVariance;
        v.setEntry(i, j, shared + (i == j ? each * each : 0));
      }
    }
    DecompositionSolver inverse = new CholeskyDecomposition(v).getSolver();
    RealVector ones = new ArrayRealVector(n, 1);
    RealVector weights = inverse.solve(ones);
    double sum = weights.dotProduct(ones);
    double mean = weights.dotProduct(error) / sum;
    RealVector rest = error.subtract(ones.mapMultiply(mean));
    double disagree = n < 2 ? 1 : Math.max(1, rest.dotProduct(inverse.solve(rest)) / (n - 1));
    double rpm = 0;
    for (int i = 0; i < n; i++) {
      rpm += weights.getEntry(i) / sum * light.get(i).rpm();
    }
    double nominal = wheel.nominalTooth1BtdcDegrees().orElseThrow();
    return aligned(TdcSource.TIMING_LIGHT, line(rpm, nominal + mean, disagree / sum));
  }

  /** Of the gap at two speeds, square degrees. */
  private static double covariance(GapFit gap, double rpm, double other) {
    double ua = gap.offsetDegrees().standardUncertainty();
    if (gap.delaySeconds().isEmpty()) {
      double centre = (gap.fromRpm() + gap.toRpm()) / 2;
      double ub = Line.DEGREES * OPEN_DELAY_MICROSECONDS;
      return ua * ua + (rpm - centre) * (other - centre) * ub * ub;
    }
    double ub = Line.DEGREES * 1e6 * gap.delaySeconds().get().standardUncertainty();
    return ua * ua + rpm * other * ub * ub - (rpm + other) * gap.correlation() * ua * ub;
  }

  /** The angle at standstill, which took off the lag of some speed, and with it its doubt. */
  private Line line(double lagTakenOffRpm, double degrees, double variance) {
    double lagVariance = square(lag.standardUncertainty());
    double covariance = Line.DEGREES * lagTakenOffRpm * lagVariance;
    return new Line(0, degrees, lag.value(), variance, lagVariance, covariance);
  }

  private AlignedWheel aligned(TdcSource source, Line still) {
    SensorLag sensorLag = new SensorLag(lag.times(1e-6), SensorLag.KnownFrom.USUAL_FOR_SENSOR);
    return AlignmentFit.described(source, still, sensorLag, wheel);
  }

  private static double square(double x) {
    return x * x;
  }
}
