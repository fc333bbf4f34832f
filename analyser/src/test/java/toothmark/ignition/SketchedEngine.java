package toothmark.ignition;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.function.DoubleUnaryOperator;
import toothmark.capture.StepSignal;
import toothmark.rotation.AngleTimeline;

/**
 * An engine whose crank angle is known exactly, for tests: speed is a function of time, the angle
 * its integral by Simpson's rule on a fine grid.
 */
public final class SketchedEngine {

  private static final double STEP = 1e-4;

  private final double[] degrees;
  private final double seconds;
  private final DoubleUnaryOperator rpm;

  public SketchedEngine(double seconds, DoubleUnaryOperator rpm) {
    this.seconds = seconds;
    this.rpm = rpm;
    int n = (int) Math.ceil(seconds / STEP) + 2;
    degrees = new double[n];
    for (int i = 1; i < n; i++) {
      double t = (i - 1) * STEP;
      double mean =
          (rpm.applyAsDouble(t) + 4 * rpm.applyAsDouble(t + STEP / 2) + rpm.applyAsDouble(t + STEP))
              / 6;
      degrees[i] = degrees[i - 1] + 6 * mean * STEP;
    }
  }

  /** Speed rising and falling between two values, once. */
  public static SketchedEngine sweep(double seconds, double from, double to) {
    return new SketchedEngine(
        seconds, t -> from + (to - from) * (1 - Math.cos(2 * Math.PI * t / seconds)) / 2);
  }

  public static SketchedEngine steady(double seconds, double rpm) {
    return new SketchedEngine(seconds, t -> rpm);
  }

  public double seconds() {
    return seconds;
  }

  public double rpmAt(double time) {
    return rpm.applyAsDouble(time);
  }

  /** Unrolled angle after tooth 1, true. */
  public double degreesAt(double time) {
    int i = (int) (time / STEP);
    double u = time / STEP - i;
    return degrees[i] + u * (degrees[i + 1] - degrees[i]);
  }

  public double timeAt(double angle) {
    int i = Arrays.binarySearch(degrees, angle);
    i = i < 0 ? -i - 2 : i;
    return (i + (angle - degrees[i]) / (degrees[i + 1] - degrees[i])) * STEP;
  }

  public double lastDegrees() {
    return degreesAt(seconds);
  }

  /** As decoded from a wheel whose sensor is late. */
  public AngleTimeline timeline(double pitch, double lagSeconds) {
    int n = (int) Math.floor(lastDegrees() / pitch);
    double[] t = new double[n];
    double[] a = new double[n];
    double[] r = new double[n];
    for (int i = 0; i < n; i++) {
      a[i] = i * pitch;
      t[i] = timeAt(a[i]);
      r[i] = 6 * rpmAt(t[i]);
      t[i] += lagSeconds;
    }
    return new AngleTimeline(t, a, r);
  }

  /** Times of an angle within each stretch of some degrees: {@code phase}, phase + every, ... */
  public double[] passings(double phase, double every) {
    List<Double> out = new ArrayList<>();
    for (double a = phase - every * Math.floor(phase / every); a < lastDegrees(); a += every) {
      out.add(timeAt(a));
    }
    return out.stream().mapToDouble(Double::doubleValue).toArray();
  }

  /** A channel that is high for a time before each instant, as a recorder with a clock notes it. */
  public StepSignal pulses(double[] ends, double length, double resolution) {
    return pulses(ends, length, resolution, 1);
  }

  public StepSignal pulses(double[] ends, double length, double resolution, double high) {
    double[] t = new double[2 * ends.length + 1];
    double[] v = new double[t.length];
    int n = 0;
    v[n++] = 1 - high;
    for (double end : ends) {
      double start = noted(end - length, resolution);
      double stop = noted(end, resolution);
      if (start > t[n - 1] && stop < seconds) {
        t[n] = start;
        v[n++] = high;
        t[n] = stop;
        v[n++] = 1 - high;
      }
    }
    return new StepSignal(Arrays.copyOf(t, n), Arrays.copyOf(v, n), resolution, seconds);
  }

  private static double noted(double time, double resolution) {
    return resolution == 0 ? time : Math.ceil(time / resolution) * resolution;
  }
}
