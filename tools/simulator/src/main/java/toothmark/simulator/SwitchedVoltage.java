package toothmark.simulator;

import toothmark.simulator.LevelChanges.Level;

/**
 * A two-level output as a voltage. A charging or discharging time constant rounds each change.
 *
 * @param lowVolts at rest low
 * @param highVolts at rest high
 * @param riseSeconds time constant upwards, as of a pull-up and its cable
 * @param fallSeconds time constant downwards
 */
record SwitchedVoltage(double lowVolts, double highVolts, double riseSeconds, double fallSeconds) {
  private static final double SETTLED = 12.0;

  /** Adds the voltage to the samples. */
  void render(LevelChanges changes, double fromSeconds, double rateHz, double[] volts) {
    int next = 0;
    double rest = changes.first() == Level.HIGH ? highVolts : lowVolts;
    double swing = 0.0;
    double since = 0.0;
    double tau = 0.0;
    for (int i = 0; i < volts.length; i++) {
      double t = fromSeconds + i / rateHz;
      while (next < changes.count() && changes.seconds(next) <= t) {
        double at = changes.seconds(next);
        double before = rest + decayed(swing, at - since, tau);
        boolean high = changes.after(next) == Level.HIGH;
        rest = high ? highVolts : lowVolts;
        tau = high ? riseSeconds : fallSeconds;
        swing = before - rest;
        since = at;
        next++;
      }
      if (swing != 0.0) {
        double left = decayed(swing, t - since, tau);
        volts[i] += rest + left;
        swing = left == 0.0 ? 0.0 : swing;
      } else {
        volts[i] += rest;
      }
    }
  }

  private static double decayed(double swing, double seconds, double tau) {
    if (swing == 0.0 || seconds > SETTLED * tau) {
      return 0.0;
    }
    return swing * StrictMath.exp(-seconds / tau);
  }
}
