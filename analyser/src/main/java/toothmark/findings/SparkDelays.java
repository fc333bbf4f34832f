package toothmark.findings;

import java.util.Arrays;

/**
 * How densely interference from sparks strews strays.
 *
 * <p>Half of it lies in even windows behind each spark, from 0.1 to 2 ms, each as likely; the other
 * half in a normal peak at the delay at which these strays crowd, for one installation's bursts
 * reach its sensor in one way.
 */
final class SparkDelays {

  private static final double[] WINDOWS = {0.1e-3, 0.3e-3, 1e-3, 2e-3};

  /** Widths tried for the peak, s, from a burst that is seen at once to one that rings. */
  private static final double[] WIDTHS = {15e-6, 40e-6, 120e-6};

  /** A spark's own time is known to this, s: its burst may come a sample before. */
  static final double EARLY = 30e-6;

  private static final double LONGEST = WINDOWS[WINDOWS.length - 1];

  /** Odds against before anything was measured: the most common of all disturbances. */
  private static final double ODDS_AGAINST = 10;

  private final double[] sparks;
  private final double[] delays;
  private double peak;
  private double width = WIDTHS[WIDTHS.length - 1];

  private SparkDelays(double[] times, double[] sparks) {
    this.sparks = sparks;
    this.delays = Arrays.stream(times).map(t -> delay(t, sparks)).toArray();
    findPeak();
  }

  /**
   * The source.
   *
   * @param times of strays, s
   * @param sparks times of sparks, s, rising
   */
  static Mixture.Source source(double[] times, double[] sparks) {
    SparkDelays d = new SparkDelays(times, sparks);
    double price = Math.log(ODDS_AGAINST) + Math.log(LONGEST / d.width);
    return new Mixture.Source(StraySources.IGNITION, price, d::density);
  }

  /** Time since the last spark, s; a little before 0 where a stray comes just ahead of one. */
  static double delay(double time, double[] sparks) {
    int i = Arrays.binarySearch(sparks, time + EARLY);
    int last = i >= 0 ? i : -i - 2;
    return last < 0 ? Double.POSITIVE_INFINITY : time - sparks[last];
  }

  private void findPeak() {
    double best = 0;
    for (double w : WIDTHS) {
      for (double at : delays) {
        double score = at < LONGEST ? crowd(at, w) * Math.log(LONGEST / w) : 0;
        if (score > best) {
          best = score;
          peak = at;
          width = w;
        }
      }
    }
  }

  private double crowd(double at, double w) {
    double sum = 0;
    for (double d : delays) {
      double z = (d - at) / w;
      sum += Math.exp(-0.5 * z * z);
    }
    return sum;
  }

  private double density(int e) {
    double d = delays[e];
    if (d > LONGEST) {
      return 0;
    }
    double even = 0;
    for (double window : WINDOWS) {
      even += d <= window ? 1 / (window + EARLY) / WINDOWS.length : 0;
    }
    double z = (d - peak) / width;
    double normal = Math.exp(-0.5 * z * z) / (width * Math.sqrt(2 * Math.PI));
    return (even + normal) / 2 / sparks.length;
  }
}
