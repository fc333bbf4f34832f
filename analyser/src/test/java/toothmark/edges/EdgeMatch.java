package toothmark.edges;

import java.util.Arrays;

/** How a train compares with the teeth of an analytic wave. */
record EdgeMatch(
    int missed,
    int strongStrays,
    double rmsDegrees,
    double worstDegrees,
    double rmsOverBound,
    double rmsOverUncertainty) {

  private static final double STRONG = 0.75;

  /**
   * Teeth within the first and last pitch do not count: their flux does not swing on both sides.
   */
  static EdgeMatch of(AnalyticWave wave, EdgeTrain train) {
    double[] teeth = wave.teeth();
    double[] found = train.times();
    boolean[] taken = new boolean[found.length];
    int missed = 0;
    double squares = 0;
    double worst = 0;
    double overBound = 0;
    int bounds = 0;
    double overUncertainty = 0;
    for (int i = 1; i < teeth.length - 1; i++) {
      double reach = 0.3 * Math.min(teeth[i] - teeth[i - 1], teeth[i + 1] - teeth[i]);
      int j = nearest(found, teeth[i]);
      if (j < 0 || Math.abs(found[j] - teeth[i]) > reach) {
        missed++;
        continue;
      }
      taken[j] = true;
      double seconds = found[j] - teeth[i];
      double degrees = 6 * wave.rpm(teeth[i]) * seconds;
      squares += degrees * degrees;
      worst = Math.max(worst, Math.abs(degrees));
      if (i % 8 == 0) {
        overBound += square(seconds / wave.bound(teeth[i]));
        bounds++;
      }
      overUncertainty += square(seconds / train.uncertainty(j));
    }
    int n = Math.max(1, teeth.length - 2 - missed);
    int strays = 0;
    for (int j = 0; j < found.length; j++) {
      boolean inside = found[j] > teeth[1] - 1e-9 && found[j] < teeth[teeth.length - 2] + 1e-9;
      strays += inside && !taken[j] && train.strength(j) > STRONG ? 1 : 0;
    }
    return new EdgeMatch(
        missed,
        strays,
        Math.sqrt(squares / n),
        worst,
        Math.sqrt(overBound / Math.max(1, bounds)),
        Math.sqrt(overUncertainty / n));
  }

  private static int nearest(double[] sorted, double value) {
    int j = Arrays.binarySearch(sorted, value);
    if (j < 0) {
      j = -j - 1;
      if (j == sorted.length || j > 0 && value - sorted[j - 1] < sorted[j] - value) {
        j--;
      }
    }
    return j;
  }

  private static double square(double x) {
    return x * x;
  }
}
