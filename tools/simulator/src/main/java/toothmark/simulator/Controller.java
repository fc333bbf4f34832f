package toothmark.simulator;

/**
 * The ignition controller.
 *
 * @param nominalTooth1BtdcDegrees where it has been told that tooth 1 is
 * @param advance what it commands
 * @param dwell how long it charges
 * @param timing how well it keeps to what it commands
 * @param limiter what it does at too high a speed
 */
public record Controller(
    double nominalTooth1BtdcDegrees,
    AdvanceMap advance,
    Dwell dwell,
    Timing timing,
    Limiter limiter) {

  /**
   * Commanded advance: fixed, or a straight rise with speed between two speeds.
   *
   * @param baseDegrees up to {@code fromRpm}
   * @param fromRpm where the rise begins
   * @param toRpm where it ends
   * @param topDegrees from there up
   */
  public record AdvanceMap(double baseDegrees, double fromRpm, double toRpm, double topDegrees) {
    /**
     * One advance at all speeds.
     *
     * @param degrees crank degrees
     * @return the map or controller
     */
    public static AdvanceMap fixed(double degrees) {
      return new AdvanceMap(degrees, 0.0, 1.0, degrees);
    }

    /**
     * True when the advance is the same at all speeds.
     *
     * @return whether it is
     */
    public boolean isFixed() {
      return baseDegrees == topDegrees;
    }

    /**
     * The advance at a speed.
     *
     * @param rpm rev/min
     * @return crank degrees
     */
    public double degreesAt(double rpm) {
      double share = Math.max(0.0, Math.min(1.0, (rpm - fromRpm) / (toRpm - fromRpm)));
      return baseDegrees + share * (topDegrees - baseDegrees);
    }
  }

  /**
   * Charging.
   *
   * @param seconds how long at the usual supply
   * @param scatterSeconds standard deviation from one spark to the next
   * @param greatestShare the largest share of the time between two sparks of a coil
   */
  public record Dwell(double seconds, double scatterSeconds, double greatestShare) {
    /** 3 ms, at most 80 % of the time. */
    public static final Dwell USUAL = new Dwell(3.0e-3, 8e-6, 0.8);
  }

  /**
   * How a spark misses the crank angle at which it was commanded.
   *
   * @param delaySeconds how late every spark is, the sensor's lag included
   * @param scatterSeconds standard deviation in time
   * @param scatterDegrees standard deviation in angle
   * @param predictDegrees how far ahead the controller turns the angle into a time, with the speed
   *     of the tooth pitch just passed; zero for a controller that counts teeth to the end
   */
  public record Timing(
      double delaySeconds, double scatterSeconds, double scatterDegrees, double predictDegrees) {
    /** A good one. */
    public static final Timing USUAL = new Timing(0.0, 1.5e-6, 0.02, 0.0);

    /**
     * The same, later.
     *
     * @param seconds how long, seconds
     * @return a changed copy
     */
    public Timing withDelaySeconds(double seconds) {
      return new Timing(seconds, scatterSeconds, scatterDegrees, predictDegrees);
    }
  }

  /**
   * A usual one with fixed timing.
   *
   * @param nominalTooth1BtdcDegrees where tooth 1 is said to be
   * @param advanceDegrees fixed advance
   * @return the map or controller
   */
  public static Controller fixed(double nominalTooth1BtdcDegrees, double advanceDegrees) {
    return new Controller(
        nominalTooth1BtdcDegrees,
        AdvanceMap.fixed(advanceDegrees),
        Dwell.USUAL,
        Timing.USUAL,
        Limiter.NONE);
  }

  /**
   * The same with another map.
   *
   * @param other what takes its place
   * @return a changed copy
   */
  public Controller withAdvance(AdvanceMap other) {
    return new Controller(nominalTooth1BtdcDegrees, other, dwell, timing, limiter);
  }

  /**
   * The same, told another place of tooth 1.
   *
   * @param degrees crank degrees
   * @return a changed copy
   */
  public Controller withNominal(double degrees) {
    return new Controller(degrees, advance, dwell, timing, limiter);
  }

  /**
   * The same with another dwell.
   *
   * @param other what takes its place
   * @return a changed copy
   */
  public Controller withDwell(Dwell other) {
    return new Controller(nominalTooth1BtdcDegrees, advance, other, timing, limiter);
  }

  /**
   * The same with other timing faults.
   *
   * @param other what takes its place
   * @return a changed copy
   */
  public Controller withTiming(Timing other) {
    return new Controller(nominalTooth1BtdcDegrees, advance, dwell, other, limiter);
  }

  /**
   * The same with another limiter.
   *
   * @param other what takes its place
   * @return a changed copy
   */
  public Controller withLimiter(Limiter other) {
    return new Controller(nominalTooth1BtdcDegrees, advance, dwell, timing, other);
  }
}
