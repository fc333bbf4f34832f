package toothmark.findings;

import java.util.Arrays;
import java.util.Comparator;
import java.util.Optional;
import java.util.stream.IntStream;
import toothmark.edges.EdgeTrain;
import toothmark.units.Measured;
import toothmark.wheel.WheelPattern;

/**
 * How strong the sensor's signal is, as the swing of flux from slot to tooth, which does not depend
 * on speed: over all, by tooth, and from the beginning of the record to its end.
 */
final class ToothSwings {

  private static final int FEWEST = 40;
  private static final int FEWEST_TEETH = 8;

  /** The strength of one tooth is known no better than to this share. */
  private static final double STEADY_SHARE = 0.005;

  /** A rim off centre by 0.2 mm swings the strength by 3 % even where slots are 40 mm apart. */
  static final double LEAST_WAVE = 0.02;

  /** Wide teeth and deep slots depart from the law for a fine pattern by a fifth or so. */
  private static final double LAW = 0.2;

  private final double median;
  private final double change;
  private final double[] byTooth;

  private ToothSwings(double median, double change, double[] byTooth) {
    this.median = median;
    this.change = change;
    this.byTooth = byTooth;
  }

  /** The swings; empty for a signal that has no flux. */
  static Optional<ToothSwings> of(Turns turns, EdgeTrain train) {
    double[] swing = new double[turns.teeth()];
    int[] number = new int[swing.length];
    int n = 0;
    for (int i = 0; i < swing.length; i++) {
      int edge = turns.seen(i) ? edgeAt(train, turns.time(i)) : -1;
      if (edge >= 0 && train.swing(edge) > 0) {
        number[n] = turns.number(i);
        swing[n++] = train.swing(edge);
      }
    }
    if (n < FEWEST) {
      return Optional.empty();
    }
    double median = median(swing, 0, n);
    double change = median(swing, n - n / 4, n) / median(swing, 0, n / 4);
    return Optional.of(
        new ToothSwings(median, change, byTooth(swing, number, n, turns.pattern().teeth())));
  }

  /** Each tooth over the middle of the turn around it, so that a drift is no tooth's. */
  private static double[] byTooth(double[] swing, int[] number, int n, int teeth) {
    double[] sum = new double[teeth];
    int[] count = new int[teeth];
    int half = teeth / 2;
    for (int from = 0; from + teeth <= n; from += Math.max(1, half)) {
      double local = median(swing, from, from + teeth);
      for (int i = from; i < from + teeth; i++) {
        sum[number[i] - 1] += swing[i] / local;
        count[number[i] - 1]++;
      }
    }
    double[] mean = new double[teeth];
    for (int k = 0; k < teeth; k++) {
      mean[k] = count[k] == 0 ? 1 : sum[k] / count[k];
    }
    return mean;
  }

  private static double median(double[] x, int from, int to) {
    double[] s = Arrays.copyOfRange(x, from, to);
    Arrays.sort(s);
    return s[s.length / 2];
  }

  static int edgeAt(EdgeTrain train, double time) {
    int low = 0;
    int high = train.size() - 1;
    while (low <= high) {
      int middle = (low + high) >>> 1;
      if (train.time(middle) < time) {
        low = middle + 1;
      } else if (train.time(middle) > time) {
        high = middle - 1;
      } else {
        return middle;
      }
    }
    return -1;
  }

  /** Peak-to-peak voltage at a speed: of a sine of frequency f and swing S it is 2 pi f S. */
  double peakToPeakVolts(int slots, double rpm) {
    return 2 * Math.PI * slots * rpm / 60 * median;
  }

  /** Last quarter of the record over the first. */
  double change() {
    return change;
  }

  /** The wave of one a turn in the teeth's strength. */
  Waves waves(WheelPattern pattern) {
    return Waves.fit(pattern, byTooth, STEADY_SHARE);
  }

  /**
   * How far the wheel runs out by the strength of its teeth alone, as the amplitude of its teeth's
   * places, degrees.
   *
   * <p>The field falls by exp(-2 pi g / l) with the air gap g, where l is the distance from tooth
   * to tooth (Wallace, Bell Syst. Tech. J. 30 (1951) 1145-1173). With N slots on a circle of radius
   * R a rim off centre by e swings the strength by N e/R each way, and moves the teeth by e/R.
   *
   * @return empty where the wheel has too few teeth to show a wave
   */
  Optional<Measured> runOut(WheelPattern pattern) {
    if (byTooth.length < FEWEST_TEETH) {
      return Optional.empty();
    }
    double share = waves(pattern).amplitude(1);
    double u = Math.hypot(LAW * share, LEAST_WAVE / 2);
    return Optional.of(
        new Measured(Math.toDegrees(share) / pattern.slots(), Math.toDegrees(u) / pattern.slots()));
  }

  /**
   * The tooth that is weakest beside its neighbours, of those that stand evenly among others:
   * beside a gap the field is another.
   *
   * @return from 1
   */
  int weakest(WheelPattern pattern) {
    return IntStream.rangeClosed(1, byTooth.length)
        .filter(k -> !RimForm.besideUneven(pattern, k))
        .boxed()
        .min(Comparator.comparingDouble(k -> besideNeighbours(pattern, k)))
        .orElse(1);
  }

  /**
   * Swing of a tooth over that of the two teeth before and after, which run-out and an oval rim
   * weaken as well. Teeth beside a gap, where the field is another, are passed over.
   */
  double besideNeighbours(WheelPattern pattern, int tooth) {
    double[] near = new double[4];
    int at = tooth;
    for (int k = 0; k < near.length; k++) {
      at = nextAmongOthers(pattern, k == 2 ? tooth : at, k < 2 ? -1 : 1, tooth);
      near[k] = byTooth[at - 1];
    }
    Arrays.sort(near);
    return 2 * byTooth[tooth - 1] / (near[1] + near[2]);
  }

  /** The next tooth that does not stand beside a gap; the last one to go to at any rate. */
  private static int nextAmongOthers(WheelPattern pattern, int from, int way, int last) {
    int at = from;
    do {
      at = Math.floorMod(at - 1 + way, pattern.teeth()) + 1;
    } while (at != last && RimForm.besideUneven(pattern, at));
    return at;
  }

  /** Swing of a tooth over that of the middle tooth; 1 where it was never seen. */
  double of(int tooth) {
    return byTooth[tooth - 1];
  }
}
