package toothmark.simulator;

import java.util.List;

/** Something that gets onto the crank sensor's wires, or takes the signal off them. */
public sealed interface Disturbance {

  /**
   * Changes the voltage on the wires.
   *
   * @param bench what is going on around them
   * @param volts the samples, changed in place
   */
  void apply(Bench bench, double[] volts);

  /**
   * What a disturbance can follow.
   *
   * @param rateHz samples a second; the first sample is at time zero
   * @param crank motion of the crank
   * @param sparks those that came
   * @param restVolts what the recorder sees when the sensor is cut off
   * @param random numbers of its own
   */
  record Bench(
      double rateHz, CrankMotion crank, List<Spark> sparks, double restVolts, Randomness random) {}

  /**
   * A ringing burst at each spark.
   *
   * @param peakVolts at its start
   * @param ringHz of the ringing
   * @param decaySeconds time constant
   * @param delaySeconds after the spark
   */
  record SparkBursts(double peakVolts, double ringHz, double decaySeconds, double delaySeconds)
      implements Disturbance {
    @Override
    public void apply(Bench bench, double[] volts) {
      for (Spark spark : bench.sparks()) {
        double peak = peakVolts * bench.random().uniform(0.8, 1.2);
        double phase = bench.random().uniform(0.0, 2.0 * Math.PI);
        Burst burst = new Burst(spark.seconds() + delaySeconds, peak, ringHz, decaySeconds, phase);
        burst.addTo(volts, bench.rateHz());
      }
    }
  }

  /**
   * Spikes at random times.
   *
   * @param perSecond how many on average
   * @param peakVolts mean height, of either sign
   * @param widthSeconds time constant of their decay
   */
  record Spikes(double perSecond, double peakVolts, double widthSeconds) implements Disturbance {
    @Override
    public void apply(Bench bench, double[] volts) {
      Randomness random = bench.random();
      double end = volts.length / bench.rateHz();
      double t = random.exponential(1.0 / perSecond);
      while (t < end) {
        double sign = random.chance(0.5) ? 1.0 : -1.0;
        double peak = sign * peakVolts * random.logUniform(0.6, 1.6);
        double width = widthSeconds * random.logUniform(0.6, 1.6);
        Burst burst = new Burst(t, peak, 0.25 / width, width, 0.5 * Math.PI);
        burst.addTo(volts, bench.rateHz());
        t += random.exponential(1.0 / perSecond);
      }
    }
  }

  /**
   * Hum of a fixed frequency, as of the mains.
   *
   * @param frequencyHz of the fundamental
   * @param peakVolts of the fundamental
   * @param thirdShare height of the third harmonic beside it
   */
  record Hum(double frequencyHz, double peakVolts, double thirdShare) implements Disturbance {
    @Override
    public void apply(Bench bench, double[] volts) {
      double phase = bench.random().uniform(0.0, 2.0 * Math.PI);
      double turn = 2.0 * Math.PI * frequencyHz / bench.rateHz();
      for (int i = 0; i < volts.length; i++) {
        double angle = phase + turn * i;
        double third = thirdShare == 0.0 ? 0.0 : thirdShare * StrictMath.sin(3.0 * angle);
        volts[i] += peakVolts * (StrictMath.sin(angle) + third);
      }
    }
  }

  /**
   * Ripple of a generator that the crank drives.
   *
   * @param cyclesPerTurn ripples in a crank turn: pulley ratio times 36 for twelve poles and three
   *     phases
   * @param peakVolts of the ripple
   */
  record AlternatorRipple(double cyclesPerTurn, double peakVolts) implements Disturbance {
    @Override
    public void apply(Bench bench, double[] volts) {
      double phase = bench.random().uniform(0.0, 2.0 * Math.PI);
      CrankMotion.Cursor cursor = bench.crank().cursor();
      for (int i = 0; i < volts.length; i++) {
        cursor.moveTo(i / bench.rateHz());
        double angle = StrictMath.toRadians(cursor.angleDegrees() * cyclesPerTurn);
        volts[i] += peakVolts * StrictMath.sin(phase + angle);
      }
    }
  }

  /**
   * Crackle of the starter motor's brushes.
   *
   * @param untilSeconds when it lets go
   * @param barsPerSecond commutator bars that pass the brushes
   * @param peakVolts of one bar's spark
   */
  record StarterNoise(double untilSeconds, double barsPerSecond, double peakVolts)
      implements Disturbance {
    private static final double WIDTH_SECONDS = 15e-6;

    @Override
    public void apply(Bench bench, double[] volts) {
      Randomness random = bench.random();
      double end = Math.min(untilSeconds, volts.length / bench.rateHz());
      for (double t = 0.0; t < end; t += random.uniform(0.7, 1.3) / barsPerSecond) {
        double peak = peakVolts * random.gaussian();
        new Burst(t, peak, 20e3, WIDTH_SECONDS, 0.5 * Math.PI).addTo(volts, bench.rateHz());
      }
    }
  }

  /**
   * The zero of the signal moves with the current of the coils, by a ground that both share.
   *
   * @param volts at the end of a usual charge; negative for down
   * @param riseSeconds time constant of the current
   */
  record GroundShift(double volts, double riseSeconds) implements Disturbance {
    @Override
    public void apply(Bench bench, double[] volts) {
      for (Spark spark : bench.sparks()) {
        double start = spark.seconds() - spark.dwellSeconds();
        int from = Math.max(0, (int) Math.ceil(start * bench.rateHz()));
        int to = (int) Math.min(volts.length, spark.seconds() * bench.rateHz());
        for (int i = from; i < to; i++) {
          double charging = i / bench.rateHz() - start;
          volts[i] += this.volts * -StrictMath.expm1(-charging / riseSeconds);
        }
      }
    }
  }

  /**
   * Noise of all frequencies from the sensor's side.
   *
   * @param rmsVolts standard deviation of a sample
   */
  record WhiteNoise(double rmsVolts) implements Disturbance {
    @Override
    public void apply(Bench bench, double[] volts) {
      for (int i = 0; i < volts.length; i++) {
        volts[i] += rmsVolts * bench.random().gaussian();
      }
    }
  }

  /**
   * The wire is open for some time.
   *
   * @param windows when
   */
  record OpenCircuit(List<Window> windows) implements Disturbance {
    private static final double PICK_UP_VOLTS = 0.02;

    /** Copies the list. */
    public OpenCircuit {
      windows = List.copyOf(windows);
    }

    @Override
    public void apply(Bench bench, double[] volts) {
      for (Window window : windows) {
        int from = Math.max(0, (int) Math.ceil(window.fromSeconds() * bench.rateHz()));
        int to = (int) Math.min(volts.length, window.toSeconds() * bench.rateHz());
        for (int i = from; i < to; i++) {
          volts[i] = bench.restVolts() + PICK_UP_VOLTS * bench.random().gaussian();
        }
      }
    }
  }

  /**
   * A stretch of time.
   *
   * @param fromSeconds inclusive
   * @param toSeconds exclusive
   */
  record Window(double fromSeconds, double toSeconds) {
    boolean holds(double seconds) {
      return seconds >= fromSeconds && seconds < toSeconds;
    }
  }

  /** A decaying oscillation. */
  record Burst(double seconds, double peak, double ringHz, double decaySeconds, double phase) {
    private static final double GONE = 8.0;

    void addTo(double[] volts, double rateHz) {
      int from = Math.max(0, (int) Math.ceil(seconds * rateHz));
      int to = (int) Math.min(volts.length, (seconds + GONE * decaySeconds) * rateHz);
      for (int i = from; i < to; i++) {
        double t = i / rateHz - seconds;
        double ring = StrictMath.sin(phase + 2.0 * Math.PI * ringHz * t);
        volts[i] += peak * ring * StrictMath.exp(-t / decaySeconds);
      }
    }
  }
}
