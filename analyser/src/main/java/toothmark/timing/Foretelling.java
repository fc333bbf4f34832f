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

  /**
   * Where the crank is at the spark is taken from so far to either side, beyond the teeth next to
   * the spark: an error of those would move spark and foretelling alike.
   */
  private static final double[] ASIDE_DEGREES = {-35, -25, -15, 15, 25, 35};

  /** Of the polynomial through the six, which follows waves of firing to 0.1 %. */
  private static final double[] ASIDE_WEIGHTS = {
    0.1171875, -0.57421875, 0.95703125, 0.95703125, -0.57421875, 0.1171875
  };

  private static final int STEPS = 3;

  /**
   * How far a spark is moved.
   *
   * @param timeSeconds when it came
   * @param timeline the crank's angle
   * @return degrees of advance, positive early; empty where the angle around is not known
   */
  OptionalDouble degreesAt(double timeSeconds, AngleTimeline timeline) {
    double secondsADegree = 1 / (6 * timeline.rpmAt(timeSeconds));
    double place = 0;
    for (int k = 0; k < ASIDE_DEGREES.length; k++) {
      double time = timeSeconds + ASIDE_DEGREES[k] * secondsADegree;
      if (!timeline.covers(time)) {
        return OptionalDouble.empty();
      }
      place += ASIDE_WEIGHTS[k] * timeline.degreesAt(time);
    }
    double from = timeAt(place - aheadDegrees, timeSeconds, timeline);
    double speed = timeAt(place - aheadDegrees - STRETCH_DEGREES, timeSeconds, timeline);
    double arrives = from + (from - speed) * aheadDegrees / STRETCH_DEGREES;
    if (!timeline.covers(speed) || !timeline.covers(arrives)) {
      return OptionalDouble.empty();
    }
    return OptionalDouble.of(timeline.degreesAt(timeSeconds) - timeline.degreesAt(arrives));
  }

  /**
   * How an error of each tooth's place moves what is read of a spark's shift: the places where the
   * speed is taken are the same at every turn, and the way from there enlarges their errors; what
   * moves all teeth alike moves no shift.
   */
  double[] teeth(WheelSetting wheel, double degreesAfterTooth1) {
    double[] from = wheel.teethBeside(degreesAfterTooth1 - aheadDegrees);
    double[] speed = wheel.teethBeside(degreesAfterTooth1 - aheadDegrees - STRETCH_DEGREES);
    double enlarged = aheadDegrees / STRETCH_DEGREES;
    double[] teeth =
        MathArrays.ebeSubtract(
            MathArrays.scale(1 + enlarged, from), MathArrays.scale(enlarged, speed));
    for (int k = 0; k < ASIDE_DEGREES.length; k++) {
      double[] aside = wheel.teethBeside(degreesAfterTooth1 + ASIDE_DEGREES[k]);
      teeth = MathArrays.ebeSubtract(teeth, MathArrays.scale(ASIDE_WEIGHTS[k], aside));
    }
    return teeth;
  }

  /** When the crank was at a place before where it is at an instant. */
  private static double timeAt(double place, double later, AngleTimeline timeline) {
    double time = later - (timeline.degreesAt(later) - place) / (6 * timeline.rpmAt(later));
    for (int i = 0; i < STEPS && timeline.covers(time); i++) {
      time += (place - timeline.degreesAt(time)) / (6 * timeline.rpmAt(time));
    }
    return time;
  }
}
