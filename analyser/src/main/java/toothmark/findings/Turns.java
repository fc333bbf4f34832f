package toothmark.findings;

import java.util.Arrays;
import toothmark.rotation.DecodedCrank;
import toothmark.units.CrankAngle;
import toothmark.units.Interval;
import toothmark.wheel.ToothEvents;
import toothmark.wheel.ToothKind;
import toothmark.wheel.WheelPattern;

/** The decoding, ready for questions of place and speed: teeth in order, seen and missing. */
final class Turns {

  private final DecodedCrank crank;
  private final WheelPattern pattern;
  private final int[] events;
  private final double[] times;
  private final double[] angles;

  Turns(DecodedCrank crank) {
    this.crank = crank;
    this.pattern = crank.wheel().pattern();
    ToothEvents all = crank.wheel().events();
    events = new int[all.count(ToothKind.SEEN) + all.count(ToothKind.MISSING)];
    int n = 0;
    for (int i = 0; i < all.size(); i++) {
      if (all.kind(i) != ToothKind.STRAY && crank.angle().covers(all.time(i))) {
        events[n++] = i;
      }
    }
    times = new double[n];
    angles = new double[n];
    for (int i = 0; i < n; i++) {
      times[i] = all.time(events[i]);
      angles[i] = crank.angle().degreesAt(times[i]);
    }
  }

  DecodedCrank crank() {
    return crank;
  }

  WheelPattern pattern() {
    return pattern;
  }

  int teeth() {
    return times.length;
  }

  double time(int i) {
    return times[i];
  }

  double angle(int i) {
    return angles[i];
  }

  int number(int i) {
    return crank.wheel().events().tooth(events[i]);
  }

  int revolution(int i) {
    return crank.wheel().events().revolution(events[i]);
  }

  boolean seen(int i) {
    return crank.wheel().events().kind(events[i]) == ToothKind.SEEN;
  }

  Interval span() {
    return crank.angle().span();
  }

  /** Turns of the crank in the part that was decoded. */
  double turned() {
    return teeth() < 2 ? 0 : (angles[angles.length - 1] - angles[0]) / CrankAngle.REVOLUTION;
  }

  boolean covers(double time) {
    return crank.angle().covers(time);
  }

  double angleAt(double time) {
    return crank.angle().degreesAt(time);
  }

  /** When the crank stands at an angle, s; the ends of the record for angles beyond it. */
  double timeAt(double angle) {
    int i = Arrays.binarySearch(angles, angle);
    int before = i >= 0 ? i : -i - 2;
    if (before < 0) {
      return times[0];
    }
    if (before >= angles.length - 1) {
      return times[angles.length - 1];
    }
    double share = (angle - angles[before]) / (angles[before + 1] - angles[before]);
    return times[before] + share * (times[before + 1] - times[before]);
  }

  double rpmAt(double time) {
    return crank.angle().rpmAt(time);
  }

  /** Time of one pitch at the speed of an instant, s. */
  double pitchSeconds(double time) {
    return pattern.pitchDegrees() / (6.0 * Math.max(1.0, rpmAt(time)));
  }

  /** Slots that pass in a second, at the mean speed, Hz. */
  double teethHertz() {
    return turned() * pattern.slots() / Math.max(1e-9, span().seconds());
  }

  /** Half the range of speed over the middle of it, as a share. */
  double spread() {
    double slow = Double.POSITIVE_INFINITY;
    double fast = 0;
    for (double t : times) {
      slow = Math.min(slow, rpmAt(t));
      fast = Math.max(fast, rpmAt(t));
    }
    return fast > 0 ? (fast - slow) / (fast + slow) : 0;
  }

  /** The last tooth at or before an instant; -1 before the first. */
  int toothBefore(double time) {
    int i = Arrays.binarySearch(times, time);
    return i >= 0 ? i : -i - 2;
  }

  /** Whether the crank comes to rest within an angle after a tooth, degrees. */
  boolean runsDown(int tooth, double within) {
    double to = timeAt(angles[tooth] + within);
    return crank.wheel().standstills().stream()
        .anyMatch(s -> times[tooth] < s.endExclusive() && s.startInclusive() <= to);
  }

  /** The tooth nearest to an angle. */
  int toothNear(double angle) {
    int i = Arrays.binarySearch(angles, angle);
    if (i >= 0) {
      return i;
    }
    int after = Math.min(-i - 1, angles.length - 1);
    int before = Math.max(0, after - 1);
    return angle - angles[before] < angles[after] - angle ? before : after;
  }

  /** Angle from a tooth to the one after it, by the wheel's design, degrees. */
  double spaceAfter(int number) {
    double from = pattern.degreesAfterTooth1(number);
    double to =
        number == pattern.teeth() ? CrankAngle.REVOLUTION : pattern.degreesAfterTooth1(number + 1);
    return to - from;
  }

  /** Whether a tooth stands before a gap of the wheel. */
  boolean beforeGap(int number) {
    return spaceAfter(number) > 1.5 * pattern.pitchDegrees();
  }
}
