package toothmark.rotation;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import toothmark.units.CrankAngle;
import toothmark.units.Interval;
import toothmark.wheel.DecodedWheel;
import toothmark.wheel.ToothEvents;
import toothmark.wheel.ToothKind;
import toothmark.wheel.WheelIdentification;

/**
 * Turns named teeth into the crank's angle and speed over time.
 *
 * <p>Teeth stand at their learned places. The angle, in degrees after tooth 1 of revolution 0, runs
 * through them as a monotone cubic (Fritsch and Carlson, SIAM J. Numer. Anal. 17 (1980) 238-246,
 * doi:10.1137/0717021); teeth that gave no edge help to bridge a loss. Speed, in rev/min, is the
 * mean between neighbouring teeth that were seen. See {@code docs/methods/decoding.md}.
 */
public final class RotationMeasurement {

  private static final double DEGREES_PER_SECOND_TO_RPM = 1.0 / 6.0;

  private RotationMeasurement() {}

  /**
   * Measures angle and speed.
   *
   * @param identification the wheel found
   * @param wheel its teeth, named
   * @return the decoded crank; empty when fewer than three teeth were seen
   */
  public static Optional<DecodedCrank> measure(
      WheelIdentification identification, DecodedWheel wheel) {
    Knots all = Knots.of(wheel, true);
    Knots seen = Knots.of(wheel, false);
    if (seen.size < 3) {
      return Optional.empty();
    }
    AngleTimeline angle =
        new AngleTimeline(
            all.times(), all.degrees(), all.slopes(wheel.undecided()), wheel.undecided());
    return Optional.of(
        new DecodedCrank(identification, wheel, angle, speed(seen, wheel.undecided())));
  }

  private static SpeedTrace speed(Knots knots, List<Interval> undecided) {
    double[] times = new double[knots.size - 1];
    double[] rpm = new double[knots.size - 1];
    int n = 0;
    double turned = 0;
    double taken = 0;
    for (int i = 1; i < knots.size; i++) {
      double dt = knots.time[i] - knots.time[i - 1];
      double da = knots.degree[i] - knots.degree[i - 1];
      if (!inside(undecided, 0.5 * (knots.time[i] + knots.time[i - 1]))) {
        times[n] = 0.5 * (knots.time[i] + knots.time[i - 1]);
        rpm[n++] = da / dt * DEGREES_PER_SECOND_TO_RPM;
        turned += da;
        taken += dt;
      }
    }
    return new SpeedTrace(
        Arrays.copyOf(times, n), Arrays.copyOf(rpm, n), turned / taken * DEGREES_PER_SECOND_TO_RPM);
  }

  private static boolean inside(List<Interval> spans, double time) {
    for (Interval i : spans) {
      if (i.contains(time)) {
        return true;
      }
    }
    return false;
  }

  /** Instants at which the crank's angle is known, both rising. */
  private static final class Knots {

    private final double[] time;
    private final double[] degree;
    private int size;

    private Knots(int most) {
      time = new double[most];
      degree = new double[most];
    }

    /** Teeth as knots; teeth that gave no edge help to bridge a loss, but say nothing of speed. */
    static Knots of(DecodedWheel wheel, boolean missingToo) {
      ToothEvents e = wheel.events();
      Knots k = new Knots(e.size());
      for (int i = 0; i < e.size(); i++) {
        if (e.kind(i) == ToothKind.SEEN || (missingToo && e.kind(i) == ToothKind.MISSING)) {
          int tooth = e.tooth(i);
          k.add(
              e.time(i),
              CrankAngle.REVOLUTION * e.revolution(i)
                  + wheel.pattern().degreesAfterTooth1(tooth)
                  + wheel.geometry().offsetDegrees(tooth));
        }
      }
      return k;
    }

    private void add(double t, double a) {
      if (size == 0 || (t > time[size - 1] && a > degree[size - 1])) {
        time[size] = t;
        degree[size++] = a;
      }
    }

    double[] times() {
      return Arrays.copyOf(time, size);
    }

    double[] degrees() {
      return Arrays.copyOf(degree, size);
    }

    /**
     * Slopes of the parabola through each knot and its neighbours, held to three times the smaller
     * secant so that the curve between knots keeps rising.
     */
    double[] slopes(List<Interval> undecided) {
      double[] s = new double[size];
      for (int i = 0; i < size; i++) {
        boolean before = i > 0 && !inside(undecided, 0.5 * (time[i] + time[i - 1]));
        boolean after = i + 1 < size && !inside(undecided, 0.5 * (time[i] + time[i + 1]));
        double left = before ? secant(i - 1) : after ? secant(i) : secant(Math.max(0, i - 1));
        double right = after ? secant(i) : left;
        double hl = before ? time[i] - time[i - 1] : 1;
        double hr = after ? time[i + 1] - time[i] : 1;
        s[i] = Math.min((left * hr + right * hl) / (hl + hr), 3 * Math.min(left, right));
      }
      return s;
    }

    private double secant(int i) {
      return (degree[i + 1] - degree[i]) / (time[i + 1] - time[i]);
    }
  }
}
