package toothmark.simulator;

import java.util.List;

/**
 * Low side of an ignition coil's primary: supply at rest, near zero while charging, a flyback of a
 * few hundred volts that rings at the spark, the burn line, and the ringing when the spark goes
 * out.
 *
 * <p>Levels are common practice; the burn lasts 0.8 to 1.6 ms.
 */
final class PrimaryVoltage {
  /** Range of a recorder that sees it through an attenuating probe. */
  static final double RANGE_VOLTS = 400.0;

  private static final double SUPPLY_VOLTS = 13.8;
  private static final double SWITCH_VOLTS = 0.6;
  private static final double SWITCH_RISE_VOLTS_PER_SECOND = 300.0;
  private static final double FLYBACK_VOLTS = 330.0;
  private static final double FLYBACK_RING_HZ = 25e3;
  private static final double FLYBACK_DECAY_SECONDS = 40e-6;
  private static final double BURN_VOLTS = 28.0;
  private static final double REST_RING_HZ = 3.0e3;
  private static final double REST_RING_DECAY_SECONDS = 0.35e-3;

  private final Randomness random;

  PrimaryVoltage(Randomness random) {
    this.random = random;
  }

  /** Adds the voltage of a coil with these sparks, in time order. */
  void render(List<Spark> sparks, double rateHz, double[] volts) {
    for (int i = 0; i < volts.length; i++) {
      volts[i] += SUPPLY_VOLTS;
    }
    double last = Double.NEGATIVE_INFINITY;
    for (Spark spark : sparks) {
      double from = Math.max(last, spark.seconds() - spark.dwellSeconds());
      for (int i = at(from, rateHz); i < Math.min(volts.length, at(spark.seconds(), rateHz)); i++) {
        double charged = i / rateHz - from;
        volts[i] = SWITCH_VOLTS + SWITCH_RISE_VOLTS_PER_SECOND * charged;
      }
      discharge(spark.seconds(), rateHz, volts);
      last = spark.seconds();
    }
  }

  private void discharge(double seconds, double rateHz, double[] volts) {
    double burn = random.uniform(0.8e-3, 1.6e-3);
    double flyback = FLYBACK_VOLTS * random.uniform(0.85, 1.1);
    double end = seconds + burn + 8.0 * REST_RING_DECAY_SECONDS;
    for (int i = at(seconds, rateHz); i < Math.min(volts.length, at(end, rateHz)); i++) {
      double t = i / rateHz - seconds;
      double decay = StrictMath.exp(-t / FLYBACK_DECAY_SECONDS);
      double ring = StrictMath.cos(2.0 * Math.PI * FLYBACK_RING_HZ * t);
      double burning = SUPPLY_VOLTS + BURN_VOLTS + flyback * decay * ring;
      double out = t - burn;
      double fading = StrictMath.exp(-out / REST_RING_DECAY_SECONDS);
      double resting =
          SUPPLY_VOLTS + BURN_VOLTS * fading * StrictMath.cos(2.0 * Math.PI * REST_RING_HZ * out);
      volts[i] = out < 0.0 ? burning : resting;
    }
  }

  private static int at(double seconds, double rateHz) {
    return (int) Math.max(0.0, Math.ceil(seconds * rateHz));
  }
}
