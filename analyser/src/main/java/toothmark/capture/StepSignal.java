package toothmark.capture;

import toothmark.units.Interval;

/**
 * A level that is recorded only when it changes, as logic analysers and value change dumps do.
 *
 * <p>Each level holds from its time until the next. The recorder notices a change up to one
 * resolution late, so the change itself lies in (time - resolution, time].
 */
public final class StepSignal implements Signal {

  private final double[] times;
  private final double[] levels;
  private final double resolutionSeconds;
  private final double endSeconds;

  /**
   * Builds a step signal.
   *
   * @param times when each level began, s, rising; the first is the start of the record
   * @param levels the level from then on (0 and 1 for logic); as many as times
   * @param resolutionSeconds unit in which the times were written, s; 0 when not known. Where the
   *     times themselves show a longer step of the recorder's clock, that counts.
   * @param endSeconds end of the record, s; not before the last time
   */
  public StepSignal(double[] times, double[] levels, double resolutionSeconds, double endSeconds) {
    if (times.length == 0 || times.length != levels.length) {
      throw new IllegalArgumentException(
          "a step signal needs as many levels as times and at least one, got "
              + times.length
              + " times and "
              + levels.length
              + " levels");
    }
    this.times = times.clone();
    this.levels = levels.clone();
    this.resolutionSeconds = ClockStep.of(times, resolutionSeconds);
    this.endSeconds = endSeconds;
  }

  /**
   * How many levels were recorded, the first included.
   *
   * @return at least 1
   */
  public int size() {
    return times.length;
  }

  /**
   * When a level began.
   *
   * @param index from 0
   * @return seconds from the capture's own zero
   */
  public double time(int index) {
    return times[index];
  }

  /**
   * A level.
   *
   * @param index from 0
   * @return the level that holds from {@code time(index)}
   */
  public double level(int index) {
    return levels[index];
  }

  /**
   * Step of the recorder's clock.
   *
   * @return seconds; 0 when not known
   */
  public double resolutionSeconds() {
    return resolutionSeconds;
  }

  @Override
  public Interval span() {
    return new Interval(times[0], endSeconds);
  }
}
