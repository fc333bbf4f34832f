package toothmark.ignition;

import java.util.Optional;
import org.apache.commons.math3.analysis.UnivariateFunction;
import org.apache.commons.math3.distribution.FDistribution;
import org.apache.commons.math3.optim.MaxEval;
import org.apache.commons.math3.optim.nonlinear.scalar.GoalType;
import org.apache.commons.math3.optim.univariate.BrentOptimizer;
import org.apache.commons.math3.optim.univariate.SearchInterval;
import org.apache.commons.math3.optim.univariate.UnivariateObjectiveFunction;
import org.apache.commons.math3.stat.regression.SimpleRegression;

/**
 * Tells the form of one charge by its current: a plain ramp, one that a driver limits, or one that
 * turns up as the core saturates.
 *
 * <p>A coil charges by i = V/R (1 - exp(-R t/L)) (step response of an RL circuit). To the samples
 * are fitted, by least squares over a grid of time constants and of instants, such a ramp; one that
 * stands still from an instant on; and one to which a second such ramp is added from an instant on,
 * as of the little inductance that a saturated core leaves. The more elaborate form is taken where
 * an F test says so and it makes a difference to the eye.
 */
final class ChargeRamp {

  /** Points that a ramp is averaged into. */
  private static final int POINTS = 64;

  /** Fewer samples show no form. */
  private static final int FEWEST = 24;

  private static final double STRAIGHT = 1e4;
  private static final int MOST_TRIES = 200;

  /**
   * Time constants tried beside a change of form, in lengths of the charge; the last is a straight
   * line.
   */
  private static final double[] CONSTANTS = {0.25, 0.5, 1, 2, STRAIGHT};

  /** Time constants tried of what a knee adds, in lengths of the charge. */
  private static final double[] AFTER = {0.3, 1, STRAIGHT};

  /** Share of the charge before and after an instant at which the form may change. */
  private static final double LEAST_BEFORE = 0.1;

  private static final double LEAST_AFTER = 0.04;

  /** By how much of the last current a limit or a knee must change what the ramp would reach. */
  private static final double PLAIN_TO_SEE = 0.08;

  /** Chance of taking a plain ramp for another. */
  private static final double CHANCE = 1e-4;

  private final double[] time;
  private final double[] current;

  private ChargeRamp(double[] time, double[] current) {
    this.time = time;
    this.current = current;
  }

  /**
   * What was found.
   *
   * @param form of the charge
   * @param seconds from the start of charging to the limit or the knee; the whole charge for a
   *     plain ramp
   */
  record Found(ChargeForm form, double seconds) {}

  /** A fit: sum of squares, instant of the change, and what the change makes at the end. */
  private record Fit(double squares, double instant, double change) {}

  /**
   * Tells the form.
   *
   * @param samples current from the first to the last sample of the ramp, any unit
   * @param firstSeconds time of the first sample after the start of charging, s
   * @param interval between samples, s
   * @return empty where the samples are too few
   */
  static Optional<Found> tell(double[] samples, double firstSeconds, double interval) {
    if (samples.length < FEWEST) {
      return Optional.empty();
    }
    int each = Math.max(1, samples.length / POINTS);
    int n = samples.length / each;
    double[] time = new double[n];
    double[] current = new double[n];
    for (int i = 0; i < n; i++) {
      for (int k = 0; k < each; k++) {
        current[i] += samples[i * each + k] / each;
      }
      time[i] = firstSeconds + (i * each + (each - 1) / 2.0) * interval;
    }
    return Optional.of(new ChargeRamp(time, current).tell());
  }

  private Found tell() {
    int n = time.length;
    double length = time[n - 1];
    Fit plain = plain(length);
    Fit limited = null;
    Fit knee = null;
    for (double share : CONSTANTS) {
      double constant = share * length;
      double[] rest = rest(constant, current);
      for (int k = 2; k < n - 2; k++) {
        if (time[k] > LEAST_BEFORE * length && time[k] < (1 - LEAST_AFTER) * length) {
          limited = better(limited, limited(constant, time[k]));
          for (double after : AFTER) {
            knee = better(knee, knee(constant, after * length, time[k], rest));
          }
        }
      }
    }
    boolean isLimited = holds(plain, limited, 1);
    boolean isKnee = holds(plain, knee, 3);
    if (isLimited && (!isKnee || limited.squares() <= knee.squares())) {
      return new Found(ChargeForm.LIMITED, limited.instant());
    }
    return isKnee ? new Found(ChargeForm.KNEE, knee.instant()) : new Found(ChargeForm.RAMP, length);
  }

  private boolean holds(Fit plain, Fit other, int more) {
    if (other == null || other.change() < PLAIN_TO_SEE * current[current.length - 1]) {
      return false;
    }
    int dof = time.length - 3 - more;
    double f = (plain.squares() - other.squares()) / more / (other.squares() / dof);
    return f > new FDistribution(more, dof).inverseCumulativeProbability(1 - CHANCE);
  }

  private static Fit better(Fit a, Fit b) {
    return b != null && (a == null || b.squares() < a.squares()) ? b : a;
  }

  private static double charged(double t, double constant) {
    return constant * -Math.expm1(-t / constant);
  }

  /** A ramp and nothing else, of the time constant that fits best. */
  private Fit plain(double length) {
    UnivariateFunction squares = log -> limited(Math.exp(log) * length, length).squares();
    double least =
        new BrentOptimizer(1e-6, 1e-9)
            .optimize(
                new UnivariateObjectiveFunction(squares),
                GoalType.MINIMIZE,
                new SearchInterval(Math.log(0.05), Math.log(100)),
                new MaxEval(MOST_TRIES))
            .getValue();
    return new Fit(Math.min(least, limited(STRAIGHT * length, length).squares()), length, 0);
  }

  /** A ramp that stands still from an instant on. */
  private Fit limited(double constant, double instant) {
    SimpleRegression line = new SimpleRegression();
    for (int i = 0; i < time.length; i++) {
      line.addData(charged(Math.min(time[i], instant), constant), current[i]);
    }
    double end = time[time.length - 1];
    double more = line.getSlope() * (charged(end, constant) - charged(instant, constant));
    return new Fit(line.getSumSquaredErrors(), instant, more);
  }

  /** A ramp that is steeper from an instant on; by how much follows from what both leave over. */
  private Fit knee(double constant, double after, double instant, double[] rest) {
    double[] hinge = new double[time.length];
    for (int i = 0; i < hinge.length; i++) {
      hinge[i] = charged(Math.max(0, time[i] - instant), after);
    }
    double[] of = rest(constant, hinge);
    double along = 0;
    double squares = 0;
    double all = 0;
    for (int i = 0; i < of.length; i++) {
      along += of[i] * rest[i];
      squares += of[i] * of[i];
      all += rest[i] * rest[i];
    }
    double slope = along / squares;
    return new Fit(Math.max(0, all - slope * along), instant, slope * hinge[hinge.length - 1]);
  }

  /** What a ramp leaves over of some values. */
  private double[] rest(double constant, double[] values) {
    SimpleRegression line = new SimpleRegression();
    for (int i = 0; i < values.length; i++) {
      line.addData(charged(time[i], constant), values[i]);
    }
    double[] rest = new double[values.length];
    for (int i = 0; i < rest.length; i++) {
      rest[i] = values[i] - line.predict(charged(time[i], constant));
    }
    return rest;
  }
}
