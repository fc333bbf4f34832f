package toothmark.findings;

import java.util.Arrays;
import java.util.Optional;
import toothmark.receiver.SyncLoss;
import toothmark.units.Say;

/**
 * A steady line in the times of the teeth that does not keep step with the engine.
 *
 * <p>What is searched is how much each tooth comes early or late against its neighbours on both
 * sides, each tooth's own mean taken off. The line is Rayleigh's periodogram at its highest, with
 * the engine's own half orders left out.
 *
 * @param hertz its frequency
 * @param degrees how far it moves teeth each way
 * @param times how many times the usual height of the periodogram it stands out
 */
record ToothHum(double hertz, double degrees, double times) {

  private static final double LOWEST_HERTZ = 20;
  private static final int MOST_TEETH = 6000;
  private static final int MOST_STEPS = 4000;

  /** Steps to each side that show what is usual near a line. */
  private static final int BESIDE = 40;

  /** Chance of white noise to pass this in a thousand steps is under one in a million. */
  private static final double STANDS_OUT = 20;

  /** Above this spread of speed the engine's own frequencies smear out and are no lines. */
  private static final double STEADY = 0.05;

  private static final double WATCH_DEGREES = 0.08;

  void describe(Draft d) {
    d.saw(
        "Teeth come early and late by "
            + Say.degrees(degrees)
            + " in step with "
            + Say.scaled(hertz, "Hz")
            + " (or a frequency above half the teeth's that folds there), which is none of the"
            + " engine's own.");
  }

  static Optional<ToothHum> of(Turns turns) {
    Residuals r = Residuals.of(turns);
    if (r.times.length < 100) {
      return Optional.empty();
    }
    double seconds = r.times[r.times.length - 1] - r.times[0];
    double rev = r.turns / seconds;
    double top = 0.4 * r.times.length / seconds;
    double step = Math.max(0.5 / seconds, (top - LOWEST_HERTZ) / MOST_STEPS);
    int steps = (int) Math.max(0, (top - LOWEST_HERTZ) / step);
    double[] power = new double[steps];
    for (int k = 0; k < steps; k++) {
      double f = LOWEST_HERTZ + k * step;
      power[k] = engineOwn(f, rev, r.spread, 1 / seconds) ? 0 : r.power(f);
    }
    if (steps < 20) {
      return Optional.empty();
    }
    int best = 0;
    for (int k = 1; k < steps; k++) {
      best = power[k] > power[best] ? k : best;
    }
    double usual = usual(power, best);
    double f = LOWEST_HERTZ + best * step;
    double degrees = r.degrees(f, power[best], rev);
    boolean found = usual > 0 && power[best] > STANDS_OUT * usual && degrees > WATCH_DEGREES;
    return found ? Optional.of(new ToothHum(f, degrees, power[best] / usual)) : Optional.empty();
  }

  /** Mean of the periodogram around a line, by its median, which for noise is ln 2 of the mean. */
  private static double usual(double[] power, int best) {
    int from = Math.max(0, best - BESIDE);
    int to = Math.min(power.length, best + BESIDE + 1);
    double[] near = Arrays.stream(power, from, to).filter(p -> p > 0).sorted().toArray();
    return near.length == 0 ? 0 : near[near.length / 2] / Math.log(2);
  }

  /** Whether a frequency is a multiple of half that of the turns, as far as they are steady. */
  static boolean engineOwn(double f, double rev, double spread, double resolution) {
    if (spread > STEADY) {
      return false;
    }
    double half = rev / 2;
    double order = Math.rint(f / half);
    double away = Math.abs(f - order * half);
    return away < resolution * 1.5 + spread * f;
  }

  /** How late each tooth comes against the mean of its neighbours, degrees. */
  private static final class Residuals {

    private final double[] times;
    private final double[] late;
    private final double turns;
    private final double spread;
    private final double pitch;

    private Residuals(double[] times, double[] late, double turns, double spread, double pitch) {
      this.times = times;
      this.late = late;
      this.turns = turns;
      this.spread = spread;
      this.pitch = pitch;
    }

    static Residuals of(Turns turns) {
      int n = Math.min(MOST_TEETH, turns.teeth());
      double[] t = new double[n];
      double[] late = new double[n];
      double[] sum = new double[turns.pattern().teeth() + 1];
      int[] count = new int[sum.length];
      int[] number = new int[n];
      double pitch = turns.pattern().pitchDegrees();
      double slow = Double.POSITIVE_INFINITY;
      double fast = 0;
      int m = 0;
      for (int i = 1; i + 1 < n; i++) {
        double rpm = turns.rpmAt(turns.time(i));
        if (rpm < SyncLoss.CRANKING_BELOW_RPM || !whole(turns, i, pitch)) {
          continue;
        }
        double middle = (turns.time(i - 1) + turns.time(i + 1)) / 2;
        t[m] = turns.time(i);
        late[m] = (turns.time(i) - middle) * 6 * rpm;
        number[m] = turns.number(i);
        sum[number[m]] += late[m];
        count[number[m]]++;
        slow = Math.min(slow, rpm);
        fast = Math.max(fast, rpm);
        m++;
      }
      for (int i = 0; i < m; i++) {
        late[i] -= sum[number[i]] / count[number[i]];
      }
      double spread = m == 0 ? 0 : (fast - slow) / (fast + slow);
      double turned = m == 0 ? 0 : (turns.angleAt(t[m - 1]) - turns.angleAt(t[0])) / 360;
      return new Residuals(Arrays.copyOf(t, m), Arrays.copyOf(late, m), turned, spread, pitch);
    }

    private static boolean whole(Turns turns, int i, double pitch) {
      return turns.seen(i)
          && turns.seen(i - 1)
          && turns.seen(i + 1)
          && turns.angle(i + 1) - turns.angle(i - 1) < 2.5 * pitch;
    }

    double power(double f) {
      double c = 0;
      double s = 0;
      for (int i = 0; i < times.length; i++) {
        double a = 2 * Math.PI * f * times[i];
        c += late[i] * Math.cos(a);
        s += late[i] * Math.sin(a);
      }
      return (c * c + s * s) / times.length;
    }

    /** Amplitude of the movement itself: the neighbours' mean takes 1 - cos of it away. */
    double degrees(double f, double power, double rev) {
      double amplitude = 2 * Math.sqrt(power / times.length);
      double phase = 2 * Math.PI * f * pitch / 360 / rev;
      return amplitude / Math.max(0.02, Math.abs(1 - Math.cos(phase)));
    }
  }
}
