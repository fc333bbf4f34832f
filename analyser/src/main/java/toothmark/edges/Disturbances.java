package toothmark.edges;

/** Short, fast excursions of a wave that no tooth makes: bursts and spikes, in time order. */
public final class Disturbances {

  /** None: the signal has two levels or is a list, or nothing was found. */
  public static final Disturbances NONE = new Disturbances(new double[0], new double[0]);

  private final double[] times;
  private final double[] heights;

  /**
   * Holds what was found; the arrays are copied.
   *
   * @param timeSeconds when each begins, s, rising
   * @param height from its lowest to its highest sample, in the channel's unit; as many
   */
  public Disturbances(double[] timeSeconds, double[] height) {
    if (timeSeconds.length != height.length) {
      throw new IllegalArgumentException("disturbances need as many heights as times");
    }
    this.times = timeSeconds.clone();
    this.heights = height.clone();
  }

  /**
   * How many there are.
   *
   * @return 0 or more
   */
  public int size() {
    return times.length;
  }

  /**
   * When one begins.
   *
   * @param index from 0
   * @return s
   */
  public double time(int index) {
    return times[index];
  }

  /**
   * How high one is.
   *
   * @param index from 0
   * @return from its lowest to its highest sample, in the channel's unit
   */
  public double height(int index) {
    return heights[index];
  }
}
