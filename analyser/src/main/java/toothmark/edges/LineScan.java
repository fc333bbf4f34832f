package toothmark.edges;

/**
 * How much of the steps of flux a sine of each frequency explains.
 *
 * <p>A phasor for each end of each step is turned from one frequency to the next, so no sine is
 * taken inside the loop. A sine that keeps step with the teeth cannot be told from them and counts
 * as nothing.
 */
final class LineScan {

  /** More steps than this make a line no surer, only slower. */
  private static final int MOST_STEPS = 800;

  /** Share of its own square that a sine must keep beside the teeth. */
  private static final double APART = 0.6;

  private final int n;
  private final double[] residuals;
  private final double[] usual;
  private final double[] weights;
  private final double[] now;
  private final double[] turns;

  /**
   * Prepares a scan.
   *
   * @param s steps
   * @param from first frequency, cycles a sample
   * @param step between frequencies, cycles a sample
   */
  LineScan(FluxSteps s, double from, double step) {
    int[] chosen = FluxSteps.choose(s.size(), MOST_STEPS);
    double[] all = s.residuals();
    n = chosen.length;
    residuals = new double[n];
    usual = new double[n];
    weights = new double[n];
    now = new double[4 * n];
    turns = new double[4 * n];
    for (int k = 0; k < n; k++) {
      int i = chosen[k];
      residuals[k] = all[i];
      usual[k] = s.usual[i];
      weights[k] = s.weights[i];
      for (int end = 0; end < 2; end++) {
        double at = 2 * Math.PI * (end == 0 ? s.from[i] : s.to[i]);
        now[4 * k + 2 * end] = Math.cos(at * from);
        now[4 * k + 2 * end + 1] = Math.sin(at * from);
        turns[4 * k + 2 * end] = Math.cos(at * step);
        turns[4 * k + 2 * end + 1] = Math.sin(at * step);
      }
    }
  }

  /** Explained squares at so many more frequencies. */
  double[] explained(int count) {
    double[] out = new double[Math.max(0, count)];
    for (int k = 0; k < out.length; k++) {
      out[k] = next();
    }
    return out;
  }

  /** Explained squares at the next frequency, the first to begin with. */
  double next() {
    double explained = explained();
    turn();
    return explained;
  }

  private double explained() {
    double cc = 0;
    double cs = 0;
    double ss = 0;
    double rc = 0;
    double rs = 0;
    double pc = 0;
    double ps = 0;
    double pp = 0;
    for (int k = 0; k < n; k++) {
      double w = weights[k];
      double c = now[4 * k + 2] - now[4 * k];
      double s = now[4 * k + 3] - now[4 * k + 1];
      double p = usual[k];
      cc += w * c * c;
      cs += w * c * s;
      ss += w * s * s;
      rc += w * c * residuals[k];
      rs += w * s * residuals[k];
      pc += w * p * c;
      ps += w * p * s;
      pp += w * p * p;
    }
    double own = cc * ss;
    if (pp > 0) {
      cc -= pc * pc / pp;
      cs -= pc * ps / pp;
      ss -= ps * ps / pp;
    }
    double det = cc * ss - cs * cs;
    return det > APART * own ? (ss * rc * rc - 2 * cs * rc * rs + cc * rs * rs) / det : 0;
  }

  private void turn() {
    for (int j = 0; j < 4 * n; j += 2) {
      double c = now[j] * turns[j] - now[j + 1] * turns[j + 1];
      now[j + 1] = now[j] * turns[j + 1] + now[j + 1] * turns[j];
      now[j] = c;
    }
  }
}
