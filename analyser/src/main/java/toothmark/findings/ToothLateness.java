package toothmark.findings;

import java.util.Arrays;
import toothmark.receiver.SyncLoss;
import toothmark.units.CrankAngle;

/**
 * How late each tooth of the running engine comes against the mean of its neighbours on both sides,
 * each tooth's own mean taken off, degrees. Teeth beside a gap, or beside a lost one, have none.
 */
final class ToothLateness {

  /** What the neighbours' mean leaves of slow movements is known no better than to this. */
  private static final double LEAST_GAIN = 0.02;

  private final Turns turns;
  private final int[] teeth;
  private final double[] times;
  private final double[] late;
  private final double[] places;

  private ToothLateness(Turns turns, int[] teeth, double[] times, double[] late) {
    this.turns = turns;
    this.teeth = teeth;
    this.times = times;
    this.late = late;
    this.places =
        Arrays.stream(teeth).mapToDouble(i -> turns.angle(i) / CrankAngle.REVOLUTION).toArray();
  }

  static ToothLateness of(Turns turns) {
    int[] tooth = new int[turns.teeth()];
    double[] t = new double[tooth.length];
    double[] late = new double[tooth.length];
    double[] sum = new double[turns.pattern().teeth() + 1];
    int[] count = new int[sum.length];
    int m = 0;
    for (int i = 1; i + 1 < t.length; i++) {
      double rpm = turns.rpmAt(turns.time(i));
      if (rpm >= SyncLoss.CRANKING_BELOW_RPM && whole(turns, i)) {
        double middle = (turns.time(i - 1) + turns.time(i + 1)) / 2;
        tooth[m] = i;
        t[m] = turns.time(i);
        late[m] = (turns.time(i) - middle) * 6 * rpm;
        sum[turns.number(i)] += late[m];
        count[turns.number(i)]++;
        m++;
      }
    }
    for (int i = 0; i < m; i++) {
      late[i] -= sum[turns.number(tooth[i])] / count[turns.number(tooth[i])];
    }
    return new ToothLateness(
        turns, Arrays.copyOf(tooth, m), Arrays.copyOf(t, m), Arrays.copyOf(late, m));
  }

  private static boolean whole(Turns turns, int i) {
    double two = turns.angle(i + 1) - turns.angle(i - 1);
    return turns.seen(i)
        && turns.seen(i - 1)
        && turns.seen(i + 1)
        && two < 2.5 * turns.pattern().pitchDegrees();
  }

  int size() {
    return times.length;
  }

  /** Which tooth of the turns a value is of. */
  int tooth(int i) {
    return teeth[i];
  }

  /** When the teeth pass, s. */
  double[] times() {
    return times;
  }

  /** How late they are, degrees. */
  double[] degrees() {
    return late;
  }

  /** Where they are, turns of the crank. */
  double[] places() {
    return places;
  }

  /** What the neighbours' mean leaves of a movement of so many cycles a turn: 1 - cos of it. */
  double gain(double cycles) {
    double phase = 2 * Math.PI * cycles * turns.pattern().pitchDegrees() / CrankAngle.REVOLUTION;
    return Math.max(LEAST_GAIN, 1 - Math.cos(phase));
  }
}
