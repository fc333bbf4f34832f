package toothmark.findings;

import java.util.Arrays;
import java.util.Optional;
import toothmark.receiver.SyncLoss;
import toothmark.units.Say;

/**
 * A steady line in the times of the teeth that does not keep step with the engine.
 *
 * <p>What is searched is how much each tooth comes early or late against the mean of its neighbours
 * on both sides, each tooth's own mean taken off. A line must stand out of what is usual at the
 * frequencies beside it.
 *
 * @param hertz its frequency
 * @param degrees how far it moves teeth each way
 */
record ToothHum(double hertz, double degrees) {

  private static final double LOWEST_HERTZ = 20;

  /** Highest frequency searched, as a share of that of the teeth. */
  private static final double HIGHEST_SHARE = 0.4;

  private static final int FEWEST_TEETH = 100;
  private static final int FEWEST_LINES = 40;

  /** Lines to each side that show what is usual near one. */
  private static final int BESIDE = 60;

  /** Chance of white noise to pass this in a thousand lines is under one in a million. */
  private static final double STANDS_OUT = 20;

  /** Above this spread of speed the engine's own frequencies wander over all others. */
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
    if (r.times.length < FEWEST_TEETH || r.spread > STEADY) {
      return Optional.empty();
    }
    double seconds = r.times[r.times.length - 1] - r.times[0];
    double rev = r.turns / seconds;
    Periodogram p = Periodogram.of(r.times, r.late, HIGHEST_SHARE * r.times.length / seconds);
    double[] power = new double[p.lines()];
    int best = 0;
    for (int k = (int) Math.ceil(LOWEST_HERTZ / p.stepHertz()); k < power.length; k++) {
      power[k] = engineOwn(p.hertz(k), rev, r.spread, 1 / seconds) ? 0 : p.power(k);
      best = power[k] > power[best] ? k : best;
    }
    double usual = usual(power, best);
    if (power.length < FEWEST_LINES || usual <= 0 || power[best] < STANDS_OUT * usual) {
      return Optional.empty();
    }
    double degrees = r.degrees(p.hertz(best), power[best], rev);
    return degrees < WATCH_DEGREES
        ? Optional.empty()
        : Optional.of(new ToothHum(p.hertz(best), degrees));
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

    private Residuals(double[] times, double[] late, Turns turns) {
      this.times = times;
      this.late = late;
      this.spread = turns.spread();
      this.pitch = turns.pattern().pitchDegrees();
      this.turns =
          times.length == 0
              ? 0
              : (turns.angleAt(times[times.length - 1]) - turns.angleAt(times[0])) / 360;
    }

    static Residuals of(Turns turns) {
      double[] t = new double[turns.teeth()];
      double[] late = new double[t.length];
      int[] number = new int[t.length];
      double[] sum = new double[turns.pattern().teeth() + 1];
      int[] count = new int[sum.length];
      int m = 0;
      for (int i = 1; i + 1 < t.length; i++) {
        double rpm = turns.rpmAt(turns.time(i));
        if (rpm >= SyncLoss.CRANKING_BELOW_RPM && whole(turns, i)) {
          double middle = (turns.time(i - 1) + turns.time(i + 1)) / 2;
          t[m] = turns.time(i);
          late[m] = (turns.time(i) - middle) * 6 * rpm;
          number[m] = turns.number(i);
          sum[number[m]] += late[m];
          count[number[m]]++;
          m++;
        }
      }
      for (int i = 0; i < m; i++) {
        late[i] -= sum[number[i]] / count[number[i]];
      }
      return new Residuals(Arrays.copyOf(t, m), Arrays.copyOf(late, m), turns);
    }

    private static boolean whole(Turns turns, int i) {
      double two = turns.angle(i + 1) - turns.angle(i - 1);
      return turns.seen(i)
          && turns.seen(i - 1)
          && turns.seen(i + 1)
          && two < 2.5 * turns.pattern().pitchDegrees();
    }

    /** Amplitude of the movement itself: the neighbours' mean takes 1 - cos of it away. */
    double degrees(double f, double power, double rev) {
      double amplitude = 2 * Math.sqrt(power / times.length);
      double phase = 2 * Math.PI * f * pitch / 360 / rev;
      return amplitude / Math.max(0.02, Math.abs(1 - Math.cos(phase)));
    }
  }
}
