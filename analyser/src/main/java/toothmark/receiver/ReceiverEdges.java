package toothmark.receiver;

import java.util.Arrays;

/** The edges that an input stage hands to its follower, in time order. */
public final class ReceiverEdges {

  private final double[] times;

  private ReceiverEdges(double[] times) {
    this.times = times;
  }

  /**
   * Wraps edge times.
   *
   * @param times s, in order
   * @return edges at those times
   */
  public static ReceiverEdges of(double... times) {
    return new ReceiverEdges(times.clone());
  }

  /**
   * How many edges there are.
   *
   * @return 0 or more
   */
  public int size() {
    return times.length;
  }

  /**
   * Time of an edge.
   *
   * @param index from 0
   * @return s
   */
  public double time(int index) {
    return times[index];
  }

  /**
   * All times.
   *
   * @return a copy, s
   */
  public double[] times() {
    return times.clone();
  }

  /** Collects times. */
  static final class Builder {

    private double[] times = new double[256];
    private int size;

    void add(double time) {
      if (size == times.length) {
        times = Arrays.copyOf(times, size * 2);
      }
      times[size++] = time;
    }

    ReceiverEdges build() {
      return new ReceiverEdges(Arrays.copyOf(times, size));
    }
  }
}
