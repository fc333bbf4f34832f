package toothmark.simulator;

/**
 * What recorded the signals.
 *
 * @param kind analogue samples, levels or edge times
 * @param sampleRateHz samples a second; of a list of edges the resolution of its clock
 * @param durationSeconds length of the capture
 * @param startSeconds time of the first sample; negative when triggered in mid-capture
 * @param front its input stage
 */
public record Recorder(
    Kind kind, double sampleRateHz, double durationSeconds, double startSeconds, Front front) {

  /** What it keeps. */
  public enum Kind {
    /** Voltages at even times. */
    OSCILLOSCOPE,
    /** Low or high at even times. */
    LOGIC_ANALYSER,
    /** The times of the crank's timing edges. */
    EDGE_LOGGER
  }

  /**
   * The input stage of an oscilloscope.
   *
   * @param bits of the converter; zero for no rounding at all
   * @param rangeVolts full scale of the crank channel in either direction; zero to choose one that
   *     holds the signal
   * @param noiseVolts standard deviation, from sample to sample
   * @param offsetVolts added to the crank channel
   * @param highPassHz corner of the AC coupling; zero for DC
   */
  public record Front(
      int bits, double rangeVolts, double noiseVolts, double offsetVolts, double highPassHz) {
    /** Twelve bits, DC coupled, 10 mV of noise. */
    public static final Front USUAL = new Front(12, 0.0, 0.010, 0.0, 0.0);

    /** Exact samples, for checks of the machine behind them. */
    public static final Front IDEAL = new Front(0, 0.0, 0.0, 0.0, 0.0);
  }

  /** Checks that there is something to record. */
  public Recorder {
    if (!(sampleRateHz > 0 && durationSeconds > 0)) {
      throw new IllegalArgumentException(
          "a recorder of " + sampleRateHz + " samples a second for " + durationSeconds + " s");
    }
  }

  /**
   * An oscilloscope with the usual input stage.
   *
   * @param sampleRateHz samples a second
   * @param durationSeconds length of the capture
   * @return a recorder that starts at time zero
   */
  public static Recorder oscilloscope(double sampleRateHz, double durationSeconds) {
    return new Recorder(Kind.OSCILLOSCOPE, sampleRateHz, durationSeconds, 0.0, Front.USUAL);
  }

  /**
   * The same with another input stage.
   *
   * @param other the input stage
   * @return a changed copy
   */
  public Recorder withFront(Front other) {
    return new Recorder(kind, sampleRateHz, durationSeconds, startSeconds, other);
  }

  /**
   * The same, triggered elsewhere.
   *
   * @param seconds time of the first sample
   * @return a changed copy
   */
  public Recorder withStart(double seconds) {
    return new Recorder(kind, sampleRateHz, durationSeconds, seconds, front);
  }

  /**
   * The same of another kind.
   *
   * @param other what it keeps
   * @return a changed copy
   */
  public Recorder ofKind(Kind other) {
    return new Recorder(other, sampleRateHz, durationSeconds, startSeconds, front);
  }

  /** How many samples a channel gets. */
  int samples() {
    return (int) Math.round(durationSeconds * sampleRateHz);
  }
}
