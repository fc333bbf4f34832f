package toothmark.timing;

import java.util.List;
import java.util.Optional;
import toothmark.units.Measured;

/**
 * The gap between actual and commanded advance as a function of speed.
 *
 * <p>gap(n) = offset - 6 n delay, with the gap and the offset in degrees, n in rev/min and the
 * delay in seconds.
 *
 * @param offsetDegrees gap at standstill, degrees; where the speed hardly varies the mean gap at
 *     that speed
 * @param delaySeconds how late sparks are, s; empty where the speed varies by less than 30 % or
 *     changes too fast
 * @param correlation of offset and delay, -1 to 1; 0 without a delay
 * @param fromRpm lowest speed of a spark fitted, rev/min
 * @param toRpm highest speed of a spark fitted, rev/min
 * @param fitted sparks that the fit rests on
 * @param rejected sparks left out because they stray
 * @param foretoldDegrees how far the spark that is moved most is moved by the change of speed, as a
 *     controller moves it that foretells the spark's time, degrees, positive early; held apart from
 *     offset and delay; empty where it does not show plainly
 * @param scatterDegrees standard deviation of the residuals, degrees
 * @param verdict what can be said of the shape
 * @param shapes the shapes tried, best first
 */
public record GapFit(
    Measured offsetDegrees,
    Optional<Measured> delaySeconds,
    double correlation,
    double fromRpm,
    double toRpm,
    int fitted,
    int rejected,
    Optional<Measured> foretoldDegrees,
    double scatterDegrees,
    Verdict verdict,
    List<ShapeScore> shapes) {

  /** A change with speed of less is none that matters, degrees. */
  public static final double NO_CHANGE_DEGREES = 0.3;

  /** Copies the list. */
  public GapFit {
    shapes = List.copyOf(shapes);
  }

  /** What can be said of the way in which the gap changes with speed. */
  public enum Verdict {
    /** One shape is clearly better than the others. */
    NAMED,
    /** No change with speed larger than {@link #NO_CHANGE_DEGREES}. */
    NO_CHANGE,
    /** Several shapes fit alike, or the capture cannot show a change. */
    CANNOT_TELL
  }

  /**
   * How well a shape fits.
   *
   * @param shape the shape
   * @param excessAicc corrected Akaike criterion above that of the best, 0 for the best
   */
  public record ShapeScore(GapShape shape, double excessAicc) {}

  /**
   * The fitted gap at a speed, with its uncertainty from the full covariance.
   *
   * @param rpm speed, rev/min
   * @return degrees
   */
  public Measured gapAt(double rpm) {
    if (delaySeconds.isEmpty()) {
      return offsetDegrees;
    }
    return at(offsetDegrees, delaySeconds.get(), correlation, rpm);
  }

  /** Offset and delay at a speed, with the uncertainty of both together. */
  static Measured at(Measured offset, Measured delay, double correlation, double rpm) {
    double factor = -6.0 * rpm;
    double ua = offset.standardUncertainty();
    double ub = factor * delay.standardUncertainty();
    double variance = ua * ua + ub * ub + 2 * correlation * ua * ub;
    return new Measured(offset.value() + factor * delay.value(), Math.sqrt(Math.max(0, variance)));
  }
}
