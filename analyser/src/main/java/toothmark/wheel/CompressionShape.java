package toothmark.wheel;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * The course of the pace that compressions give on the starter: a row of peaks.
 *
 * <p>Gas that is pressed together and let go takes and gives back energy on each side of top dead
 * centre, and the starter makes up some of it on the way: with x the square of the speed in units
 * of its mean and angles in radians, dx/dangle = 2 (energy * gas + drive * (free - sqrt(x))). The
 * gas torque of all cylinders is that of slider cranks with polytropic compression (Heywood,
 * Internal Combustion Engine Fundamentals (1988), equations 2.4 to 2.6). Energy is the pressure of
 * the intake times the swept volume of a cylinder, over inertia times the speed squared, so how
 * strong the peaks are is known within a factor from how fast the crank turns.
 */
final class CompressionShape {

  /** Over finer rows waves alone tell as much. */
  private static final int MOST_EDGES = 12;

  /** Engines by their number of cylinders, and how usual each is; a judgement. */
  private static final int[] CYLINDERS = {2, 3, 4, 5, 6, 8};

  private static final double[] USUAL = {0.05, 0.12, 0.55, 0.04, 0.17, 0.07};

  /**
   * Energy times the speed squared, (rad/s)²: cylinders of 0.25 to 0.6 litres at one bar turn 0.15
   * to 0.5 kg m², the starter's armature with it; the middle, and what one in three is off it.
   */
  private static final double MIDDLE = 150;

  private static final double SPREAD = 0.5;

  /** Energies tried, in that spread from the middle. */
  private static final double[] ENERGIES = {-1.6, -0.8, 0, 0.8, 1.6};

  /** Their distance, as a standard deviation of what lies around each. */
  static final double BETWEEN = 0.8 * SPREAD / Math.sqrt(12);

  /**
   * How fast the starter's torque falls with speed, of that energy: it gives what friction takes,
   * 20 to 60 Nm for a litre of a cold engine of four, and none at a third more speed.
   */
  private static final double[] DRIVES = {1.5, 2.5, 4};

  private static final double POLYTROPIC = 1.25;
  private static final double COMPRESSION_RATIO = 9.5;
  private static final double ROD_RATIO = 3.5;

  /** Valves are closed so many degrees on each side of top dead centre. */
  private static final double CLOSED = 130;

  /** Of one firing to the next. */
  private static final int STEPS = 96;

  private static final int ROUNDS = 16;

  /** The crank nearly stops: square of its least speed. */
  private static final double LEAST = 0.02;

  private static final int PHASES = 48;

  /** In the row, which holds a whole number of them. */
  final int firings;

  /** How much the pace swings, of its mean: the amplitude of a wave of the same power. */
  final double strength;

  /** How usual such an engine is, nats. */
  final double nats;

  /** Of the pace's integral less that of its mean, in firing intervals, from 0 to 1. */
  private final double[] integral;

  private CompressionShape(int firings, double nats, double[] pace) {
    this.firings = firings;
    this.nats = nats;
    this.integral = new double[STEPS + 1];
    double squares = 0;
    for (int k = 0; k < STEPS; k++) {
      integral[k + 1] = integral[k] + (pace[k] - 1) / STEPS;
      squares += Math.pow(pace[k] - 1, 2) / STEPS;
    }
    this.strength = Math.sqrt(2 * squares);
  }

  /** Whether rows of so many edges are so coarse that its shape says more than waves do. */
  static boolean suits(int edges) {
    return edges <= MOST_EDGES;
  }

  /**
   * The courses that a row may have.
   *
   * @param turns of the crank in the row
   * @param seconds it takes
   * @return of every engine whose firings fit into the row
   */
  static List<CompressionShape> ofTurns(int turns, double seconds) {
    List<CompressionShape> all = new ArrayList<>();
    for (int k = 0; k < CYLINDERS.length; k++) {
      if (turns * CYLINDERS[k] % 2 == 0) {
        add(CYLINDERS[k], turns * CYLINDERS[k] / 2, seconds, Math.log(USUAL[k]), all);
      }
    }
    return all;
  }

  /**
   * The same of a row that may be any part of a turn that holds one firing.
   *
   * @param seconds it takes
   * @return of every engine
   */
  static List<CompressionShape> ofFiring(double seconds) {
    List<CompressionShape> all = new ArrayList<>();
    for (int k = 0; k < CYLINDERS.length; k++) {
      add(CYLINDERS[k], 1, seconds, Math.log(USUAL[k]), all);
    }
    return all;
  }

  private static void add(
      int cylinders, int firings, double seconds, double nats, List<CompressionShape> all) {
    double interval = 4 * Math.PI / cylinders;
    double speed = firings * interval / seconds;
    double[] gas = gas(cylinders);
    for (double z : ENERGIES) {
      double energy = MIDDLE / (speed * speed) * Math.exp(SPREAD * z);
      for (double drive : DRIVES) {
        double[] pace = pace(gas, interval, energy, drive * energy);
        all.add(new CompressionShape(firings, nats - 0.5 * z * z, pace));
      }
    }
  }

  /** The pace from one firing to the next, its mean 1, when it has settled. */
  private static double[] pace(double[] gas, double radians, double energy, double drive) {
    double[] pace = new double[STEPS];
    double free = 1;
    double square = 1;
    double mean = 1;
    for (int round = 0; round < ROUNDS; round++) {
      for (int k = 0; k < STEPS; k++) {
        double speed = Math.sqrt(square);
        pace[k] = 1 / speed;
        double torque = energy * gas[k] + drive * (free - speed);
        square = Math.max(LEAST, square + 2 * radians / STEPS * torque);
      }
      mean = Arrays.stream(pace).average().orElseThrow();
      free *= mean;
    }
    for (int k = 0; k < STEPS; k++) {
      pace[k] /= mean;
    }
    return pace;
  }

  /** Torque of the gas in all cylinders from one firing to the next, in pressure times volume. */
  private static double[] gas(int cylinders) {
    double[] sum = new double[STEPS];
    double interval = 720.0 / cylinders;
    for (int k = 0; k < STEPS; k++) {
      for (int c = 0; c < cylinders; c++) {
        sum[k] += gas(((k + 0.5) / STEPS + c) * interval - 360);
      }
    }
    return sum;
  }

  /** Of one cylinder, degrees after its top dead centre. */
  private static double gas(double degrees) {
    double a = Math.toRadians(degrees);
    double clearance = 1 / (COMPRESSION_RATIO - 1);
    double closed = clearance + travel(Math.toRadians(CLOSED));
    double pressure = Math.pow(closed / (clearance + travel(a)), POLYTROPIC) - 1;
    double root = Math.sqrt(ROD_RATIO * ROD_RATIO - Math.pow(Math.sin(a), 2));
    double perRadian = 0.5 * Math.sin(a) * (1 + Math.cos(a) / root);
    return Math.abs(degrees) < CLOSED ? pressure * perRadian : 0;
  }

  /** Of a piston from its top, in strokes. */
  private static double travel(double radians) {
    double sin = Math.sin(radians);
    double rod = Math.sqrt(ROD_RATIO * ROD_RATIO - sin * sin);
    return 0.5 * (1 + ROD_RATIO - Math.cos(radians) - rod);
  }

  /**
   * What the pace adds to shares and widths.
   *
   * @param degrees where the edges of a row stand, and its end; a row is 360
   * @param widths how many edges have a width, all or none
   * @return one for each phase, shares first
   */
  List<double[]> of(double[] degrees, int widths) {
    int n = degrees.length - 1;
    List<double[]> all = new ArrayList<>();
    for (int phase = 0; phase < PHASES; phase++) {
      double[] shape = new double[n + widths];
      double before = integralAt(0, phase);
      for (int k = 0; k < n; k++) {
        double after = integralAt(degrees[k + 1], phase);
        shape[k] = (after - before) / firings;
        before = after;
      }
      for (int k = 0; k < widths; k++) {
        double half = 180.0 / STEPS / firings;
        double rise = integralAt(degrees[k] + half, phase) - integralAt(degrees[k] - half, phase);
        shape[n + k] = rise * STEPS;
      }
      all.add(shape);
    }
    return all;
  }

  private double integralAt(double degrees, int phase) {
    double firing = degrees * firings / 360 + (double) phase / PHASES;
    double place = (firing - Math.floor(firing)) * STEPS;
    int k = Math.min((int) place, STEPS - 1);
    return integral[k] + (place - k) * (integral[k + 1] - integral[k]);
  }
}
