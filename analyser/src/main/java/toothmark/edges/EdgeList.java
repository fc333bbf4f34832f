package toothmark.edges;

import java.util.Arrays;

/** Collects edges of one direction in time order. */
final class EdgeList {

  private int size;
  private double[] times = new double[256];
  private double[] uncertainties = new double[256];
  private double[] strengths = new double[256];
  private double[] levels = new double[256];
  private double[] swings = new double[256];

  /** Adds an edge of a signal that has no flux. */
  void add(double time, double uncertainty, double strength, double level) {
    add(time, uncertainty, strength, level, 0);
  }

  /** Adds an edge; one that is not after the last is dropped, since it is the same edge again. */
  void add(double time, double uncertainty, double strength, double level, double swing) {
    if (size > 0 && time <= times[size - 1]) {
      return;
    }
    if (size == times.length) {
      grow();
    }
    times[size] = time;
    uncertainties[size] = uncertainty;
    strengths[size] = strength;
    levels[size] = level;
    swings[size] = swing;
    size++;
  }

  private void grow() {
    times = Arrays.copyOf(times, size * 2);
    uncertainties = Arrays.copyOf(uncertainties, size * 2);
    strengths = Arrays.copyOf(strengths, size * 2);
    levels = Arrays.copyOf(levels, size * 2);
    swings = Arrays.copyOf(swings, size * 2);
  }

  EdgeTrain train() {
    return new EdgeTrain(
        Arrays.copyOf(times, size),
        Arrays.copyOf(uncertainties, size),
        Arrays.copyOf(strengths, size),
        Arrays.copyOf(levels, size),
        Arrays.copyOf(swings, size));
  }
}
