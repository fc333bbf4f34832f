package toothmark.timing;

import java.util.List;
import java.util.OptionalDouble;
import org.apache.commons.math3.util.MathArrays;
import toothmark.rotation.AngleTimeline;

/**
 * How far a spark is moved by a controller that foretells its time from some way before it.
 *
 * <p>It takes the speed over the last teeth there, and lets the time pass that the rest of the way
 * takes at that speed. What the crank does meanwhile, speeding up or slowed by compression, moves
 * the spark: at a steady acceleration a, rev/min each second, from A degrees before it by a A² /
 * (12 n²) degrees (constant acceleration; elementary).
 *
 * @param aheadDegrees way from where it foretells to the spark
 */
record Foretelling(double aheadDegrees) {

  /**
   * From the last teeth before the spark to half a firing interval of four cylinders (common
   * practice); ways between move sparks by what lies between.
   */
  static final List<Foretelling> WAYS =
      List.of(new Foretelling(30), new Foretelling(60), new Foretelling(90));

  /** The speed is taken over so much before: a tooth, or two of a fine wheel. */
  private static final double STRETCH_DEGREES = 10;

  private static final int STEPS = 3;

  /**
   * How far a spark is moved.
   *
   * @param timeSeconds when it came
   * @param timeline the crank's angle
   * @return degrees of advance, positive early; empty where the angle before is not known
   */
  OptionalDouble degreesAt(double timeSeconds, AngleTimeline timeline) {
    double from = before(aheadDegrees, timeSeconds, timeline);
    double speed = before(aheadDegrees + STRETCH_DEGREES, timeSeconds, timeline);
    double arrives = from + (from - speed) * aheadDegrees / STRETCH_DEGREES;
    if (!timeline.covers(speed) || !timeline.covers(arrives)) {
      return OptionalDouble.empty();
    }
    return OptionalDouble.of(timeline.degreesAt(timeSeconds) - timeline.degreesAt(arrives));
  }

  /**
   * How an error of each tooth's place moves what is read of a spark's shift: the places where the
   * speed is taken are the same at every turn, and the way from there enlarges their errors.
   */
  double[] teeth(WheelSetting wheel, double degreesAfterTooth1) {
    double[] from = wheel.teethBeside(degreesAfterTooth1 - aheadDegrees);
    double[] speed = wheel.teethBeside(degreesAfterTooth1 - aheadDegrees - STRETCH_DEGREES);
    double enlarged = aheadDegrees / STRETCH_DEGREES;
    return MathArrays.ebeSubtract(
        MathArrays.scale(1 + enlarged, from), MathArrays.scale(enlarged, speed));
  }

  /** When the crank was some way before where it is at an instant. */
  private static double before(double degrees, double timeSeconds, AngleTimeline timeline) {
    double place = timeline.degreesAt(timeSeconds) - degrees;
    double time = timeSeconds - degrees / (6 * timeline.rpmAt(timeSeconds));
    for (int i = 0; i < STEPS && timeline.covers(time); i++) {
      time += (place - timeline.degreesAt(time)) / (6 * timeline.rpmAt(time));
    }
    return time;
  }
}
