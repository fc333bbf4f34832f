package toothmark.simulator;

import java.util.OptionalDouble;

/**
 * Where a shaft is at every moment: angle and speed on an even grid of times, joined by cubic
 * Hermite pieces, so that the speed is exactly the derivative of the angle.
 *
 * <p>Before the grid the shaft has stood still at the first angle.
 */
final class CrankMotion {
  /** Gets every passing of a mark, in time order. */
  interface PassingConsumer {
    /**
     * One mark passes.
     *
     * @param mark index of the mark on its ring, counted on through the turns: turn = floor(mark /
     *     ring size)
     * @param seconds when
     * @param direction +1 in the direction of rotation, -1 against it
     */
    void accept(long mark, double seconds, int direction);
  }

  private static final double DEGREES_PER_SECOND_TO_RPM = 1.0 / 6.0;

  private final double startSeconds;
  private final double stepSeconds;
  private final double[] angleDegrees;
  private final double[] degreesPerSecond;

  CrankMotion(
      double startSeconds, double stepSeconds, double[] angleDegrees, double[] degreesPerSecond) {
    this.startSeconds = startSeconds;
    this.stepSeconds = stepSeconds;
    this.angleDegrees = angleDegrees;
    this.degreesPerSecond = degreesPerSecond;
  }

  double startSeconds() {
    return startSeconds;
  }

  double endSeconds() {
    return startSeconds + stepSeconds * (angleDegrees.length - 1);
  }

  /** The motion of a wheel on the crank: {@code ratio * (angle + offset - slip(t))}. */
  CrankMotion ofWheel(double ratio, double offsetDegrees, WheelSlip slip) {
    double[] angle = new double[angleDegrees.length];
    double[] speed = new double[angleDegrees.length];
    for (int i = 0; i < angle.length; i++) {
      double t = startSeconds + stepSeconds * i;
      angle[i] = ratio * (angleDegrees[i] + offsetDegrees - slip.degreesAt(t));
      speed[i] = ratio * (degreesPerSecond[i] - slip.degreesPerSecondAt(t));
    }
    return new CrankMotion(startSeconds, stepSeconds, angle, speed);
  }

  /** How a sensor shakes while this crank turns: the angle of its motion is what it moves by. */
  CrankMotion shaking(Vibration vibration, double firingDegrees, Randomness random) {
    Vibration.Course c = vibration.along(angleDegrees, stepSeconds, firingDegrees, random);
    return new CrankMotion(startSeconds, stepSeconds, c.degrees(), c.degreesPerSecond());
  }

  /** The motion of this shaft as seen by something that moves itself, on the same grid. */
  CrankMotion plus(CrankMotion other, double ratio) {
    double[] angle = angleDegrees.clone();
    double[] speed = degreesPerSecond.clone();
    for (int i = 0; i < angle.length; i++) {
      angle[i] += ratio * other.angleDegrees[i];
      speed[i] += ratio * other.degreesPerSecond[i];
    }
    return new CrankMotion(startSeconds, stepSeconds, angle, speed);
  }

  double angleAt(double seconds) {
    Cursor cursor = new Cursor();
    cursor.moveTo(seconds);
    return cursor.angleDegrees();
  }

  double rpmAt(double seconds) {
    Cursor cursor = new Cursor();
    cursor.moveTo(seconds);
    return cursor.degreesPerSecond() * DEGREES_PER_SECOND_TO_RPM;
  }

  Cursor cursor() {
    return new Cursor();
  }

  /** The first time not before a given one at which the shaft reaches an angle going forward. */
  OptionalDouble timeOf(double targetDegrees, double notBeforeSeconds) {
    int first = cell(notBeforeSeconds);
    for (int i = first; i < angleDegrees.length - 1; i++) {
      if (angleDegrees[i] <= targetDegrees && targetDegrees < angleDegrees[i + 1]) {
        double t = solve(i, targetDegrees);
        if (t >= notBeforeSeconds) {
          return OptionalDouble.of(t);
        }
      }
    }
    return OptionalDouble.empty();
  }

  /** Every passing of the marks of a ring between two times (end exclusive), in time order. */
  void passings(MarkRing ring, double fromSeconds, double toSeconds, PassingConsumer consumer) {
    int first = cell(fromSeconds);
    int last = Math.min(angleDegrees.length - 2, cell(toSeconds));
    long next = ring.firstAtOrAfter(angleDegrees[first]);
    for (int i = first; i <= last; i++) {
      double end = angleDegrees[i + 1];
      while (ring.degrees(next) < end) {
        report(consumer, next, solve(i, ring.degrees(next)), +1, fromSeconds, toSeconds);
        next++;
      }
      while (ring.degrees(next - 1) >= end) {
        next--;
        report(consumer, next, solve(i, ring.degrees(next)), -1, fromSeconds, toSeconds);
      }
    }
  }

  private static void report(
      PassingConsumer consumer, long mark, double t, int direction, double from, double to) {
    if (t >= from && t < to) {
      consumer.accept(mark, t, direction);
    }
  }

  private int cell(double seconds) {
    int index = (int) Math.floor((seconds - startSeconds) / stepSeconds);
    return Math.max(0, Math.min(angleDegrees.length - 2, index));
  }

  /** Bisection and Newton steps inside one cell whose ends lie on both sides of the target. */
  private double solve(int cell, double targetDegrees) {
    Cursor cursor = new Cursor();
    cursor.load(cell);
    double low = 0.0;
    double high = 1.0;
    boolean rising = angleDegrees[cell + 1] >= angleDegrees[cell];
    double s = 0.5;
    for (int i = 0; i < 60 && high - low > 1e-13; i++) {
      double miss = cursor.value(s) - targetDegrees;
      if (miss == 0.0) {
        break;
      }
      if (miss > 0.0 == rising) {
        high = s;
      } else {
        low = s;
      }
      double newton = s - miss / cursor.slope(s);
      s = newton > low && newton < high ? newton : 0.5 * (low + high);
      if (Math.abs(miss) < 1e-10) {
        break;
      }
    }
    return startSeconds + stepSeconds * (cell + s);
  }

  /** Reads the motion at one time after the other; fast when the times go up. */
  final class Cursor {
    private int cell = -1;
    private double a;
    private double b;
    private double c;
    private double d;
    private double angle;
    private double speed;

    /** Goes to a time. */
    void moveTo(double seconds) {
      double place = (seconds - startSeconds) / stepSeconds;
      int index = (int) place;
      if (place < 0.0 || index > angleDegrees.length - 2) {
        index = cell(seconds);
        place = Math.max(0.0, Math.min(place, angleDegrees.length - 1.0));
      }
      if (index != cell) {
        load(index);
      }
      double s = place - index;
      angle = value(s);
      speed = slope(s) / stepSeconds;
    }

    private void load(int index) {
      cell = index;
      double rise = angleDegrees[index + 1] - angleDegrees[index];
      double m0 = degreesPerSecond[index] * stepSeconds;
      double m1 = degreesPerSecond[index + 1] * stepSeconds;
      a = angleDegrees[index];
      b = m0;
      c = 3.0 * rise - 2.0 * m0 - m1;
      d = m0 + m1 - 2.0 * rise;
    }

    private double value(double s) {
      return a + s * (b + s * (c + s * d));
    }

    private double slope(double s) {
      return b + s * (2.0 * c + s * 3.0 * d);
    }

    double angleDegrees() {
      return angle;
    }

    double degreesPerSecond() {
      return speed;
    }
  }
}
