package toothmark.edges;

import java.util.Arrays;

/** Collects edges of one direction in time order. */
final class EdgeList {

  private int size;
  private double[] times;
  private double[] uncertainties;
  private float[] strengths;
  private float[] levels;
  private float[] swings;
  private float[] widths;

  EdgeList() {
    this(256);
  }

  /** Starts with room for so many. */
  EdgeList(int capacity) {
    times = new double[capacity];
    uncertainties = new double[capacity];
    strengths = new float[capacity];
    levels = new float[capacity];
    swings = new float[capacity];
    widths = new float[capacity];
  }

  /** Adds an edge of a signal that has no flux. */
  void add(double time, double uncertainty, double strength, double level) {
    add(time, uncertainty, strength, level, 0, 0);
  }

  /** Adds an edge; one that is not after the last is dropped, since it is the same edge again. */
  void add(
      double time, double uncertainty, double strength, double level, double swing, double width) {
    if (size > 0 && time <= times[size - 1]) {
      return;
    }
    if (size == times.length) {
      grow();
    }
    times[size] = time;
    uncertainties[size] = uncertainty;
    strengths[size] = (float) strength;
    levels[size] = (float) level;
    swings[size] = (float) swing;
    widths[size] = (float) width;
    size++;
  }

  private void grow() {
    int more = size + Math.max(256, size / 4);
    times = Arrays.copyOf(times, more);
    uncertainties = Arrays.copyOf(uncertainties, more);
    strengths = Arrays.copyOf(strengths, more);
    levels = Arrays.copyOf(levels, more);
    swings = Arrays.copyOf(swings, more);
    widths = Arrays.copyOf(widths, more);
  }

  /** The edges; nothing can be added afterwards. */
  EdgeTrain train() {
    return new EdgeTrain(this);
  }

  double[] times() {
    return cut(times);
  }

  double[] uncertainties() {
    return cut(uncertainties);
  }

  float[] strengths() {
    return cut(strengths);
  }

  float[] levels() {
    return cut(levels);
  }

  float[] swings() {
    return cut(swings);
  }

  float[] widths() {
    return cut(widths);
  }

  private double[] cut(double[] values) {
    return size == values.length ? values : Arrays.copyOf(values, size);
  }

  private float[] cut(float[] values) {
    return size == values.length ? values : Arrays.copyOf(values, size);
  }
}
