package toothmark.edges;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.function.DoubleUnaryOperator;
import toothmark.capture.SampledSignal;

/**
 * A variable-reluctance wave in closed form, with its zero crossings.
 *
 * <p>Flux is a sum of bell curves, one for each tooth, over the crank's angle; the voltage is its
 * derivative in time. Speed is a ramp with a sine of given order on it, so the angle at a time is
 * exact and crossings are found by bisection on the noise-free voltage. Everything after that
 * (noise, hum, offset, clipping, steps of the converter) is laid over the samples only.
 */
final class AnalyticWave {

  private final int slots;
  private final int missing;
  private double blur = 0.24;
  private double startRpm = 900;
  private double rpmPerSecond;
  private double rippleShare;
  private double rippleOrder = 2;
  private double rate = 100_000;
  private double seconds = 1;
  private double voltsPer1000Rpm = 2.5;
  private double noise;
  private long seed = 1;
  private DoubleUnaryOperator added = t -> 0;
  private DoubleUnaryOperator gain = t -> 1;
  private double lowLimit = Double.NEGATIVE_INFINITY;
  private double highLimit = Double.POSITIVE_INFINITY;
  private double step;

  AnalyticWave(int slots, int missing) {
    this.slots = slots;
    this.missing = missing;
  }

  AnalyticWave blur(double pitches) {
    blur = pitches;
    return this;
  }

  AnalyticWave speed(double rpm, double rpmEachSecond) {
    startRpm = rpm;
    rpmPerSecond = rpmEachSecond;
    return this;
  }

  /** Ripple of the speed, as a share of it, with that many waves a turn at the start's speed. */
  AnalyticWave ripple(double share, double order) {
    rippleShare = share;
    rippleOrder = order;
    return this;
  }

  AnalyticWave sampled(double hertz, double forSeconds) {
    rate = hertz;
    seconds = forSeconds;
    return this;
  }

  AnalyticWave volts(double per1000Rpm) {
    voltsPer1000Rpm = per1000Rpm;
    return this;
  }

  AnalyticWave noise(double volts, long withSeed) {
    noise = volts;
    seed = withSeed;
    return this;
  }

  /** Something laid over the voltage, such as hum. */
  AnalyticWave plus(DoubleUnaryOperator voltsAtTime) {
    DoubleUnaryOperator before = added;
    added = t -> before.applyAsDouble(t) + voltsAtTime.applyAsDouble(t);
    return this;
  }

  /** A factor on the sensor's voltage, such as 0 while a contact is open. */
  AnalyticWave times(DoubleUnaryOperator factorAtTime) {
    gain = factorAtTime;
    return this;
  }

  AnalyticWave limited(double low, double high) {
    lowLimit = low;
    highLimit = high;
    return this;
  }

  AnalyticWave steps(double volts) {
    step = volts;
    return this;
  }

  /** Crank angle in degrees; tooth 1 stands at 30. */
  double angle(double t) {
    double w = 2 * Math.PI * rippleOrder * startRpm / 60;
    double ripple = rippleShare == 0 ? 0 : rippleShare * startRpm * (1 - Math.cos(w * t)) / w;
    return 6 * (startRpm * t + rpmPerSecond * t * t / 2 + ripple);
  }

  double rpm(double t) {
    double w = 2 * Math.PI * rippleOrder * startRpm / 60;
    return startRpm + rpmPerSecond * t + rippleShare * startRpm * Math.sin(w * t);
  }

  /** Slope of flux by angle, 1 at the steepest of an ordinary tooth, positive as one approaches. */
  double shape(double degrees) {
    double pitch = 360.0 / slots;
    double x = (degrees - 30) / pitch;
    int reach = (int) Math.ceil(7 * blur);
    int near = (int) Math.floor(x);
    double sum = 0;
    for (int k = near - reach; k <= near + reach + 1; k++) {
      if (Math.floorMod(k, slots) < slots - missing) {
        double u = (x - k) / blur;
        sum -= u * Math.exp(-u * u / 2);
      }
    }
    return sum / Math.exp(-0.5);
  }

  double clean(double t) {
    return gain.applyAsDouble(t) * voltsPer1000Rpm * rpm(t) / 1000 * shape(angle(t));
  }

  SampledSignal signal() {
    Random random = new Random(seed);
    double[] v = new double[(int) Math.round(rate * seconds)];
    for (int i = 0; i < v.length; i++) {
      double t = i / rate;
      double s = clean(t) + added.applyAsDouble(t) + noise * random.nextGaussian();
      s = Math.min(highLimit, Math.max(lowLimit, s));
      v[i] = step > 0 ? Math.round(s / step) * step : s;
    }
    return SampledSignal.of(0, 1 / rate, v);
  }

  /** Times at which the clean voltage falls through zero at a tooth. */
  double[] teeth() {
    List<Double> times = new ArrayList<>();
    double pitch = 360.0 / slots;
    for (int k = 0; ; k++) {
      double degrees = 30 + k * pitch;
      if (degrees + pitch > angle(seconds)) {
        break;
      }
      if (k % slots < slots - missing) {
        times.add(crossing(timeOf(degrees - pitch / 4), timeOf(degrees + pitch / 4)));
      }
    }
    return times.stream().mapToDouble(Double::doubleValue).toArray();
  }

  private double timeOf(double degrees) {
    double low = 0;
    double high = seconds * 2;
    for (int i = 0; i < 60; i++) {
      double middle = (low + high) / 2;
      if (angle(middle) < degrees) {
        low = middle;
      } else {
        high = middle;
      }
    }
    return low;
  }

  private double crossing(double from, double to) {
    double low = from;
    double high = to;
    for (int i = 0; i < 60; i++) {
      double middle = (low + high) / 2;
      if (shape(angle(middle)) > 0) {
        low = middle;
      } else {
        high = middle;
      }
    }
    return low;
  }

  /** The bound of Cramér and Rao for one crossing, the samples of one pitch around it known. */
  double bound(double crossing) {
    double pitchSeconds = 60 / (slots * rpm(crossing));
    double sum = 0;
    double dt = 1 / rate;
    for (double t = crossing - pitchSeconds / 2; t < crossing + pitchSeconds / 2; t += dt) {
      double slope = (clean(t + dt / 100) - clean(t - dt / 100)) / (dt / 50);
      sum += slope * slope;
    }
    return noise / Math.sqrt(sum);
  }
}
