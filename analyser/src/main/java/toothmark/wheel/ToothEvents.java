package toothmark.wheel;

import java.util.Arrays;

/**
 * Teeth seen, teeth missing and strays, in time order.
 *
 * <p>Revolutions count from 0 at the first tooth 1 of the record; teeth before it are in revolution
 * -1. A stray has tooth 0 and the revolution in which it falls. Confidence is kept in single
 * precision, since a record may hold a million teeth.
 */
public final class ToothEvents {

  private final double[] times;
  private final double[] uncertainties;
  private final ToothKind[] kinds;
  private final int[] teeth;
  private final int[] revolutions;
  private final float[] confidences;
  private final double[] strengths;

  private ToothEvents(Builder b) {
    int n = b.size;
    times = Arrays.copyOf(b.times, n);
    uncertainties = Arrays.copyOf(b.uncertainties, n);
    kinds = Arrays.copyOf(b.kinds, n);
    teeth = Arrays.copyOf(b.teeth, n);
    revolutions = Arrays.copyOf(b.revolutions, n);
    confidences = Arrays.copyOf(b.confidences, n);
    strengths = Arrays.copyOf(b.strengths, n);
  }

  /**
   * How many events there are.
   *
   * @return 0 or more
   */
  public int size() {
    return times.length;
  }

  /**
   * How many events of a kind there are.
   *
   * @param kind which
   * @return 0 or more
   */
  public int count(ToothKind kind) {
    int n = 0;
    for (ToothKind k : kinds) {
      n += k == kind ? 1 : 0;
    }
    return n;
  }

  /**
   * Time of an event.
   *
   * @param index from 0
   * @return s
   */
  public double time(int index) {
    return times[index];
  }

  /**
   * Standard uncertainty of the time.
   *
   * @param index from 0
   * @return s
   */
  public double uncertainty(int index) {
    return uncertainties[index];
  }

  /**
   * What the event is.
   *
   * @param index from 0
   * @return its kind
   */
  public ToothKind kind(int index) {
    return kinds[index];
  }

  /**
   * Which tooth it is.
   *
   * @param index from 0
   * @return number from 1; 0 for a stray
   */
  public int tooth(int index) {
    return teeth[index];
  }

  /**
   * In which revolution it falls.
   *
   * @param index from 0
   * @return see the class comment
   */
  public int revolution(int index) {
    return revolutions[index];
  }

  /**
   * Posterior probability that the label is right.
   *
   * @param index from 0
   * @return 0 to 1
   */
  public double confidence(int index) {
    return confidences[index];
  }

  /**
   * Strength of the edge, see {@link toothmark.edges.EdgeTrain}.
   *
   * @param index from 0
   * @return 0 for a missing tooth
   */
  public double strength(int index) {
    return strengths[index];
  }

  /**
   * All of an event.
   *
   * @param index from 0
   * @return the event
   */
  public ToothEvent event(int index) {
    return new ToothEvent(
        times[index],
        uncertainties[index],
        kinds[index],
        teeth[index],
        revolutions[index],
        confidences[index],
        strengths[index]);
  }

  /** Collects events in time order. */
  public static final class Builder {

    private int size;
    private double[] times = new double[256];
    private double[] uncertainties = new double[256];
    private ToothKind[] kinds = new ToothKind[256];
    private int[] teeth = new int[256];
    private int[] revolutions = new int[256];
    private float[] confidences = new float[256];
    private double[] strengths = new double[256];

    /** Starts empty. */
    public Builder() {}

    /**
     * Adds an event.
     *
     * @param event not before the one added last
     * @return this
     */
    public Builder add(ToothEvent event) {
      if (size > 0 && event.timeSeconds() < times[size - 1]) {
        throw new IllegalArgumentException("tooth events must be added in time order");
      }
      if (size == times.length) {
        grow();
      }
      times[size] = event.timeSeconds();
      uncertainties[size] = event.uncertaintySeconds();
      kinds[size] = event.kind();
      teeth[size] = event.tooth();
      revolutions[size] = event.revolution();
      confidences[size] = (float) event.confidence();
      strengths[size] = event.strength();
      size++;
      return this;
    }

    private void grow() {
      int n = size + size / 4;
      times = Arrays.copyOf(times, n);
      uncertainties = Arrays.copyOf(uncertainties, n);
      kinds = Arrays.copyOf(kinds, n);
      teeth = Arrays.copyOf(teeth, n);
      revolutions = Arrays.copyOf(revolutions, n);
      confidences = Arrays.copyOf(confidences, n);
      strengths = Arrays.copyOf(strengths, n);
    }

    /**
     * Freezes what was added.
     *
     * @return the events
     */
    public ToothEvents build() {
      return new ToothEvents(this);
    }
  }
}
