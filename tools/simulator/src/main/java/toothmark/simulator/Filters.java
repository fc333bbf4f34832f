package toothmark.simulator;

/** First-order filters on even samples, exact for a signal that is straight between samples. */
final class Filters {
  private Filters() {}

  /** Low pass with a time constant; starts at rest at the first sample. */
  static void lag(double[] samples, double rateHz, double tauSeconds) {
    if (tauSeconds <= 0.0 || samples.length == 0) {
      return;
    }
    double x = 1.0 / (rateHz * tauSeconds);
    double keep = StrictMath.exp(-x);
    double fresh = 1.0 - (1.0 - keep) / x;
    double old = (1.0 - keep) / x - keep;
    double state = samples[0];
    double before = samples[0];
    for (int i = 1; i < samples.length; i++) {
      double now = samples[i];
      state = keep * state + fresh * now + old * before;
      before = now;
      samples[i] = state;
    }
  }

  /** High pass with a corner frequency, settled before the first sample. */
  static void highPass(double[] samples, double rateHz, double cornerHz) {
    if (cornerHz <= 0.0 || samples.length == 0) {
      return;
    }
    double[] slow = samples.clone();
    lag(slow, rateHz, 1.0 / (2.0 * Math.PI * cornerHz));
    for (int i = 0; i < samples.length; i++) {
      samples[i] -= slow[i];
    }
  }
}
