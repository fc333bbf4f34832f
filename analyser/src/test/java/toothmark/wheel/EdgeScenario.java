package toothmark.wheel;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.function.DoubleUnaryOperator;
import toothmark.edges.EdgeTrain;

/**
 * Makes edge trains whose labels are known: a wheel, a speed, and what goes wrong.
 *
 * <p>The crank angle is integrated from the speed in small steps and each tooth's passage found by
 * interpolation, so nothing here resembles what the decoder does.
 */
final class EdgeScenario {

  /** One edge or lost tooth with what it truly is. */
  record Truth(double time, int tooth, int revolution, boolean seen) {}

  /** What was made. */
  record Made(EdgeTrain train, List<Truth> truth) {}

  static double[] lastError;

  private final WheelPattern pattern;
  private DoubleUnaryOperator rpm = t -> 1000;
  private double seconds = 2;
  private double rippleShare;
  private double rippleOrder = 2;
  private boolean falling;
  private double startDegrees = 123;
  private double jitterDegrees = 0.02;
  private double toothErrorDegrees = 0.03;
  private double strayShare;
  private double lossShare;
  private double strayStrength = 1;
  private final List<double[]> open = new ArrayList<>();
  private int bentTooth;
  private double bentDegrees;
  private double bentStrength = 1;
  private double runOutDegrees;
  private double besideGapDegrees;

  private EdgeScenario(WheelPattern pattern) {
    this.pattern = pattern;
  }

  static EdgeScenario of(String pattern) {
    return new EdgeScenario(WheelPattern.parse(pattern));
  }

  static EdgeScenario of(WheelPattern pattern) {
    return new EdgeScenario(pattern);
  }

  EdgeScenario rpm(DoubleUnaryOperator speed) {
    this.rpm = speed;
    return this;
  }

  EdgeScenario rpm(double speed) {
    return rpm(t -> speed);
  }

  EdgeScenario seconds(double s) {
    this.seconds = s;
    return this;
  }

  EdgeScenario ripple(double share, double order) {
    this.rippleShare = share;
    this.rippleOrder = order;
    return this;
  }

  /** Ripple of a constant torque: its share falls with the square of the speed. */
  EdgeScenario firing(double shareAt1000, double order) {
    this.falling = true;
    return ripple(shareAt1000, order);
  }

  EdgeScenario from(double degrees) {
    this.startDegrees = degrees;
    return this;
  }

  EdgeScenario jitter(double degrees) {
    this.jitterDegrees = degrees;
    return this;
  }

  EdgeScenario toothError(double degrees) {
    this.toothErrorDegrees = degrees;
    return this;
  }

  EdgeScenario strays(double share) {
    this.strayShare = share;
    return this;
  }

  EdgeScenario strayStrength(double strength) {
    this.strayStrength = strength;
    return this;
  }

  EdgeScenario lost(double share) {
    this.lossShare = share;
    return this;
  }

  EdgeScenario open(double start, double end) {
    this.open.add(new double[] {start, end});
    return this;
  }

  EdgeScenario bent(int tooth, double degrees) {
    this.bentTooth = tooth;
    this.bentDegrees = degrees;
    return this;
  }

  /** The bent tooth's edges are weak as well. */
  EdgeScenario bentStrength(double share) {
    this.bentStrength = share;
    return this;
  }

  EdgeScenario runOut(double degrees) {
    this.runOutDegrees = degrees;
    return this;
  }

  /** Teeth beside a gap seem so much farther from it: there the field of a neighbour is missing. */
  EdgeScenario besideGaps(double degrees) {
    this.besideGapDegrees = degrees;
    return this;
  }

  private double besideGap(int tooth) {
    double wide = 1.5 * pattern.pitchDegrees();
    return (pattern.degreesFromLast(tooth) > wide ? besideGapDegrees : 0)
        - (pattern.degreesToNext(tooth) > wide ? besideGapDegrees : 0);
  }

  Made make(long seed) {
    Random random = new Random(seed);
    double[] error = new double[pattern.teeth()];
    for (int k = 0; k < error.length; k++) {
      error[k] =
          toothErrorDegrees * random.nextGaussian()
              + runOutDegrees * Math.sin(Math.toRadians(pattern.degreesAfterTooth1(k + 1) + 40))
              + (k + 1 == bentTooth ? bentDegrees : 0)
              + besideGap(k + 1);
    }
    lastError = error;
    List<Truth> truth = new ArrayList<>();
    List<double[]> edges = new ArrayList<>();
    double angle = startDegrees;
    double phase = random.nextDouble() * 360;
    double dt = 2e-6;
    int tooth = 1;
    int turn = 0;
    double at = place(tooth, turn, error, random);
    while (at < angle) {
      tooth = tooth % pattern.teeth() + 1;
      turn += tooth == 1 ? 1 : 0;
      at = place(tooth, turn, error, random);
    }
    for (double t = 0; t < seconds; t += dt) {
      double w = 6 * rpm.applyAsDouble(t);
      double share = falling ? rippleShare * Math.pow(6000 / w, 2) : rippleShare;
      w *= 1 + share * Math.sin(Math.toRadians(rippleOrder * (angle + phase)));
      double next = angle + w * dt;
      while (at < next && next > angle) {
        double when = t + dt * (at - angle) / (next - angle);
        boolean seen = random.nextDouble() >= lossShare && !isOpen(when);
        truth.add(new Truth(when, tooth, turn, seen));
        if (seen) {
          edges.add(new double[] {when, tooth == bentTooth ? bentStrength : 1});
        }
        tooth = tooth % pattern.teeth() + 1;
        turn += tooth == 1 ? 1 : 0;
        at = Math.max(place(tooth, turn, error, random), at + 0.05);
      }
      angle = next;
    }
    addStrays(edges, truth.size(), random);
    return new Made(train(edges), truth);
  }

  private double place(int tooth, int turn, double[] error, Random random) {
    return 360.0 * turn
        + pattern.degreesAfterTooth1(tooth)
        + error[tooth - 1]
        + jitterDegrees * random.nextGaussian();
  }

  private boolean isOpen(double t) {
    return open.stream().anyMatch(w -> t >= w[0] && t < w[1]);
  }

  private void addStrays(List<double[]> edges, int teeth, Random random) {
    int strays = (int) Math.round(strayShare * teeth);
    double end = edges.isEmpty() ? seconds : edges.get(edges.size() - 1)[0];
    for (int i = 0; i < strays; i++) {
      double s = strayStrength < 1 ? strayStrength * random.nextDouble() : 1;
      edges.add(new double[] {random.nextDouble() * end, s});
    }
    edges.sort((a, b) -> Double.compare(a[0], b[0]));
  }

  static EdgeTrain train(List<double[]> edges) {
    int n = edges.size();
    double[] t = new double[n];
    double[] u = new double[n];
    double[] s = new double[n];
    double[] level = new double[n];
    for (int i = 0; i < n; i++) {
      t[i] = edges.get(i)[0];
      if (i > 0 && t[i] <= t[i - 1]) {
        t[i] = Math.nextUp(t[i - 1]);
      }
      u[i] = 1e-7;
      s[i] = edges.get(i)[1];
      level[i] = 1;
    }
    return new EdgeTrain(t, u, s, level);
  }
}
