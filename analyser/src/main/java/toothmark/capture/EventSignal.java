package toothmark.capture;

import toothmark.units.Interval;

/** Bare instants: a list of edge times, or a list of tooth periods added up. */
public final class EventSignal implements Signal {

  private final double[] times;
  private final double resolutionSeconds;

  /**
   * Builds an event signal.
   *
   * @param times instants, s, rising; at least one
   * @param resolutionSeconds step in which the instants were written, s; 0 when not known
   */
  public EventSignal(double[] times, double resolutionSeconds) {
    if (times.length == 0) {
      throw new IllegalArgumentException("an event signal needs at least one instant");
    }
    this.times = times.clone();
    this.resolutionSeconds = resolutionSeconds;
  }

  /**
   * How many instants there are.
   *
   * @return at least 1
   */
  public int size() {
    return times.length;
  }

  /**
   * An instant.
   *
   * @param index from 0
   * @return seconds from the capture's own zero
   */
  public double time(int index) {
    return times[index];
  }

  /**
   * Step in which the instants were written.
   *
   * @return seconds; 0 when not known
   */
  public double resolutionSeconds() {
    return resolutionSeconds;
  }

  @Override
  public Interval span() {
    return new Interval(times[0], times[times.length - 1]);
  }
}
