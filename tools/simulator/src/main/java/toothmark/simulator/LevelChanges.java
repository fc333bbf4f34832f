package toothmark.simulator;

import java.util.Arrays;

/** A two-level signal: its first level and the times at which it changes. */
public final class LevelChanges {
  /** The level at the start. */
  public enum Level {
    /** Near zero. */
    LOW,
    /** Near the supply. */
    HIGH
  }

  private final Level first;
  private final double[] seconds;

  /**
   * A signal that changes at each of these times.
   *
   * @param first level before the first change
   * @param seconds the times, rising
   */
  LevelChanges(Level first, double... seconds) {
    this.first = first;
    this.seconds = seconds.clone();
  }

  /**
   * The level before the first change.
   *
   * @return low or high
   */
  public Level first() {
    return first;
  }

  /**
   * How often the signal changes.
   *
   * @return number of changes
   */
  public int count() {
    return seconds.length;
  }

  /**
   * When a change comes.
   *
   * @param index of the change
   * @return its time, seconds
   */
  public double seconds(int index) {
    return seconds[index];
  }

  /**
   * The level after a change.
   *
   * @param index of the change
   * @return low or high
   */
  public Level after(int index) {
    boolean even = index % 2 == 0;
    return even == (first == Level.LOW) ? Level.HIGH : Level.LOW;
  }

  /** What a sampler sees: changes at the next tick, none of a pulse that falls between two. */
  LevelChanges sampled(double rateHz, double fromSeconds, int samples) {
    double[] kept = new double[seconds.length];
    int n = 0;
    Level start = first;
    boolean begun = false;
    for (int i = 0; i < seconds.length; i++) {
      long tick = (long) Math.ceil((seconds[i] - fromSeconds) * rateHz);
      if (tick <= 0) {
        start = after(i);
        continue;
      }
      if (tick >= samples) {
        break;
      }
      double t = fromSeconds + tick / rateHz;
      if (begun && n > 0 && kept[n - 1] == t) {
        n--;
      } else {
        kept[n++] = t;
      }
      begun = true;
    }
    return new LevelChanges(start, Arrays.copyOf(kept, n));
  }

  /** The same, later by a time. */
  LevelChanges moved(double bySeconds) {
    double[] later = new double[seconds.length];
    for (int i = 0; i < later.length; i++) {
      later[i] = seconds[i] + bySeconds;
    }
    return new LevelChanges(first, later);
  }
}
