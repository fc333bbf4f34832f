package toothmark.wheel;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.DoubleSummaryStatistics;
import java.util.List;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.apache.commons.math3.linear.Array2DRowRealMatrix;
import org.apache.commons.math3.linear.ArrayRealVector;
import org.apache.commons.math3.linear.RealMatrix;
import org.apache.commons.math3.linear.RealVector;

/**
 * Learns how far each tooth stands from its nominal place, apart from what the crank's speed does.
 *
 * <p>Over two turns the crank's angle is a polynomial of time, plus firing ripple that repeats with
 * the turn and shrinks with the square of speed, plus what the pistons' inertia swings it at all
 * speeds, plus the place of each tooth, which does neither. All are found at once by regularised
 * least squares over many pairs of turns, the polynomials eliminated first. Run-out, a sine once a
 * turn, has a term of its own, for the smooth part of a wheel's error is what a prior on single
 * teeth would shrink; it is kept only where it is plain. After Resor, Trethewey and Maynard, J.
 * Sound Vib. 286 (2005) 897-920, and Diamond, Heyns and Oberholster, Mech. Syst. Signal Process.
 * (2016).
 */
final class GeometryFit {

  /** Fewer turns say too little of single teeth. */
  static final int LEAST_TURNS = 10;

  /** Below this speed compression shapes the turn more than the wheel does, rev/min. */
  private static final double SLOWEST_RPM = 500;

  private static final int MOST_WINDOWS = 150;

  /** Windows in which the speed changes more are used only where there are too few others. */
  private static final double CALM = 0.1;

  private static final int PASSES = 8;

  /** A pass that moves no tooth by more is the last. */
  private static final double SETTLED_DEGREES = 1e-3;

  /** How far a sound tooth is off, and how far a bent one may be, degrees. */
  private static final double SOUND_DEGREES = 0.03;

  private static final double BENT_DEGREES = 5;
  private static final int MOST_BENT = 4;

  /** Fewer teeth show none bent where the engine swings the crank once a turn as well. */
  private static final int FEWEST_AMONG_WAVES = 20;

  /** How much likelier bent than sound a tooth must be, nats: few in a thousand are. */
  private static final double BENT_NATS = 6;

  private static final double RUN_OUT_DEGREES = 0.5;
  private static final double PLAIN = 2.5;
  private static final double LEAST_RUN_OUT_DEGREES = 0.05;

  /**
   * A larger wave once a turn is the engine's, of one or two cylinders or of uneven firing: 1 mm
   * off centre on a circle of 150 mm is 0.76 degrees.
   */
  private static final double MOST_RUN_OUT_DEGREES = 0.9;

  private static final double RIPPLE_DEGREES = 3;

  /** How far a window's ripple may be from the law of all, as a share of it, and at least. */
  private static final double FREEDOM = 0.5;

  private static final double LEAST_FREEDOM_DEGREES = 0.02;

  /** What unequal cylinders leave of a wave once a turn at 1000 rev/min; common practice. */
  private static final double UNEVEN_DEGREES = 0.1;

  /** Run-out that a wheel may have though it does not show. */
  private static final double HIDDEN_RUN_OUT_DEGREES = 0.03;

  /** Run-out is told from ripple by their change with speed where it varies by this factor. */
  private static final double SEVERAL_SPEEDS = 1.3;

  private static final double HELD = 1e-6;

  private static final int[] RIPPLE_ORDERS = {1, 2, 3, 4, 6};

  /**
   * The pistons' inertia swings the crank by the same angle at all speeds: four in line of 0.6 kg
   * and 80 mm stroke on 0.15 kg m² by 0.18° twice a turn (torque after Heywood, Internal Combustion
   * Engine Fundamentals, 1988, section 15; masses are common practice).
   */
  private static final int[] INERTIA_ORDERS = {2, 3, 4};

  private static final double[] INERTIA_DEGREES = {0.2, 0.1, 0.05};

  /** A wave twice a turn that is larger is the wheel's as well, degrees. */
  private static final double MOST_INERTIA_DEGREES = 2 * INERTIA_DEGREES[0];

  private final WheelPattern pattern;
  private final int teeth;
  private final int steady;
  private final int unknowns;
  private final List<GeometryWindow> windows;
  private final double[][] waves;
  private final double[] prior;
  private final BlockedEquations equations;

  private GeometryFit(WheelPattern pattern, List<GeometryWindow> windows) {
    this.pattern = pattern;
    this.teeth = pattern.teeth();
    this.steady = teeth + 2 + 2 * RIPPLE_ORDERS.length;
    this.unknowns = steady + 2 * INERTIA_ORDERS.length;
    this.windows = windows;
    this.waves = waves(pattern);
    this.prior = new double[unknowns];
    this.equations = new BlockedEquations(windows, prior);
    Arrays.fill(prior, 0, teeth, SOUND_DEGREES);
    Arrays.fill(prior, teeth, teeth + 2, RUN_OUT_DEGREES);
    Arrays.fill(prior, teeth + 2, teeth + 4, UNEVEN_DEGREES);
    Arrays.fill(prior, teeth + 4, steady, RIPPLE_DEGREES);
    for (int m = 0; m < INERTIA_ORDERS.length; m++) {
      Arrays.fill(prior, steady + 2 * m, steady + 2 * m + 2, INERTIA_DEGREES[m]);
    }
    if (uneven() > 0) {
      Arrays.fill(prior, teeth + 2, teeth + 4, HELD);
      Arrays.fill(prior, steady, unknowns, HELD);
    }
  }

  /** For each tooth cosine and sine of the turn, and of every order. */
  private static double[][] waves(WheelPattern pattern) {
    int[] orders =
        Stream.of(new int[] {1}, RIPPLE_ORDERS, INERTIA_ORDERS)
            .flatMapToInt(Arrays::stream)
            .toArray();
    double[][] waves = new double[pattern.teeth()][2 * orders.length];
    for (int k = 0; k < waves.length; k++) {
      double turn = Math.toRadians(pattern.degreesAfterTooth1(k + 1));
      for (int m = 0; m < orders.length; m++) {
        waves[k][2 * m] = Math.cos(orders[m] * turn);
        waves[k][2 * m + 1] = Math.sin(orders[m] * turn);
      }
    }
    return waves;
  }

  /**
   * What unequal cylinders may pass off as run-out, degrees: at one speed both are the same wave,
   * and a fit of both would drive one against the other.
   */
  private double uneven() {
    DoubleSummaryStatistics rpm =
        windows.stream().mapToDouble(GeometryWindow::rpm).summaryStatistics();
    return rpm.getMax() < SEVERAL_SPEEDS * rpm.getMin()
        ? UNEVEN_DEGREES * GeometryWindow.rippleStrength(rpm.getAverage())
        : 0;
  }

  /**
   * Learns a wheel.
   *
   * @param events its teeth, named
   * @param pattern the wheel
   * @return places and strengths; a flat geometry where too few turns are fast and whole
   */
  static ToothGeometry learn(ToothEvents events, WheelPattern pattern) {
    double[] amplitudes = amplitudes(events, pattern.teeth());
    List<GeometryWindow.Place> all = GeometryWindow.all(events, pattern, SLOWEST_RPM);
    if (all.size() < LEAST_TURNS - 1) {
      double[] zero = new double[pattern.teeth()];
      double[] u = new double[pattern.teeth()];
      Arrays.fill(u, SOUND_DEGREES);
      return new ToothGeometry(zero, u, amplitudes, 0);
    }
    List<GeometryWindow.Place> calm = all.stream().filter(w -> w.speedChange() < CALM).toList();
    List<GeometryWindow.Place> use = calm.size() < LEAST_TURNS - 1 ? all : calm;
    List<GeometryWindow> some = new ArrayList<>();
    int step = (use.size() + MOST_WINDOWS - 1) / MOST_WINDOWS;
    for (int i = 0; i < use.size(); i += step) {
      some.add(GeometryWindow.at(use.get(i), events, pattern));
    }
    return new GeometryFit(pattern, some).fit(amplitudes, use.size() + 1);
  }

  private ToothGeometry fit(double[] amplitudes, int turns) {
    RealVector found = refined(new ArrayRealVector(unknowns), PASSES);
    boolean swung = uneven() > 0 && runOut(found) > MOST_RUN_OUT_DEGREES;
    if (swung) {
      Arrays.fill(prior, teeth, teeth + 2, HELD);
      Arrays.fill(prior, teeth + 2, teeth + 4, RIPPLE_DEGREES);
      found = refined(new ArrayRealVector(unknowns), PASSES);
    }
    int mayBeBent = swung && teeth < FEWEST_AMONG_WAVES ? 0 : MOST_BENT;
    for (int k = 0; k < mayBeBent && freeBentTooth(found); k++) {
      found = refined(found, 2);
    }
    RealMatrix covariance = covariance(found);
    if (runOutIsPlain(found, covariance)) {
      covariance = covariance.add(wave(uneven()));
    } else {
      Arrays.fill(prior, teeth, teeth + 2, HELD);
      found = solved();
      covariance =
          uneven() > 0
              ? covariance(found).add(wave(HIDDEN_RUN_OUT_DEGREES))
              : withHiddenRunOut(found);
    }
    double[] offsets = offsets(found);
    double[] sway = new double[teeth];
    for (int k = 0; k < teeth; k++) {
      sway[k] = sway(found, k);
    }
    double swing = Math.hypot(found.getEntry(steady), found.getEntry(steady + 1));
    RealVector doubt =
        new ArrayRealVector(sway).mapMultiply(Math.max(0, 1 - MOST_INERTIA_DEGREES / swing));
    return new ToothGeometry(
        offsets, covariance.add(doubt.outerProduct(doubt)).getData(), amplitudes, sway, turns);
  }

  /** Of places for which no run-out was found: what there may be of it by the change of speed. */
  private RealMatrix withHiddenRunOut(RealVector found) {
    Arrays.fill(prior, teeth, teeth + 2, HIDDEN_RUN_OUT_DEGREES);
    RealVector hidden = refined(found, 1);
    RealVector left = new ArrayRealVector(offsets(found.subtract(hidden)));
    return covariance(hidden).add(left.outerProduct(left));
  }

  /** Covariance of places that err by a wave once a turn, of unknown phase. */
  private RealMatrix wave(double degrees) {
    RealMatrix c = new Array2DRowRealMatrix(teeth, teeth);
    for (int j = 0; j < teeth; j++) {
      for (int k = 0; k < teeth; k++) {
        double apart = pattern.degreesAfterTooth1(j + 1) - pattern.degreesAfterTooth1(k + 1);
        c.setEntry(j, k, degrees * degrees * Math.cos(Math.toRadians(apart)));
      }
    }
    return c;
  }

  private double runOut(RealVector found) {
    return Math.hypot(found.getEntry(teeth), found.getEntry(teeth + 1));
  }

  /** What the crank swings twice a turn at all speeds, as if it were the tooth's offset. */
  private double sway(RealVector found, int k) {
    double a = 2 * Math.toRadians(pattern.degreesAfterTooth1(k + 1));
    return -found.getEntry(steady) * Math.cos(a) - found.getEntry(steady + 1) * Math.sin(a);
  }

  private double[] offsets(RealVector found) {
    double[] x = found.toArray();
    return IntStream.range(0, teeth).mapToDouble(k -> offset(x, k)).toArray();
  }

  /** A tooth's own place and what run-out makes of it. */
  private double offset(double[] found, int k) {
    return found[k] + found[teeth] * waves[k][0] + found[teeth + 1] * waves[k][1];
  }

  private RealVector solved() {
    return equations.solve(BlockedEquations.NONE);
  }

  /** Solves again and again, each time with the ripple as free as the last solution says. */
  private RealVector refined(RealVector first, int passes) {
    RealVector found = first;
    double[] freedom = freedom(first);
    RealVector before = new ArrayRealVector(unknowns);
    for (int k = 0; k < passes; k++) {
      equations.accumulate(found, new GeometryWindow.Ripple(waves, freedom), k > 0);
      RealVector move = solved().subtract(found);
      found = found.add(move);
      if (k > 0 && new ArrayRealVector(offsets(move)).getLInfNorm() < SETTLED_DEGREES) {
        break;
      }
      double[] next = freedom(found);
      if (move.dotProduct(before) < 0) {
        // halfway, or it may swing between two solutions for ever
        Arrays.setAll(next, m -> 0.5 * (freedom[m] + next[m]));
      }
      System.arraycopy(next, 0, freedom, 0, freedom.length);
      before = move;
    }
    return found;
  }

  /** Torque changes with load, so a window's ripple may be another than its speed says. */
  private double[] freedom(RealVector known) {
    double[] freedom = new double[RIPPLE_ORDERS.length];
    for (int m = 0; m < freedom.length; m++) {
      double usual =
          Math.hypot(known.getEntry(teeth + 2 + 2 * m), known.getEntry(teeth + 3 + 2 * m));
      freedom[m] = Math.max(LEAST_FREEDOM_DEGREES, FREEDOM * usual) / equations.scale();
    }
    return freedom;
  }

  /**
   * Lets the tooth go that is likeliest bent, so that the prior on sound teeth does not hold it and
   * drive its neighbours and the crank's waves instead.
   *
   * <p>What the passings alone say of a tooth is what is known of it less its prior; the gain is
   * the ratio of how probable a bent and a sound tooth make that (Tipping and Faul, Fast marginal
   * likelihood maximisation for sparse Bayesian models, 2003).
   */
  private boolean freeBentTooth(RealVector found) {
    RealMatrix left = equations.left();
    int likeliest = -1;
    double most = BENT_NATS;
    for (int k = 0; k < teeth; k++) {
      double sound = prior[k] * prior[k];
      double precision = 1 / left.getEntry(k, k) - 1 / sound;
      if (precision > 1e-6 / sound && prior[k] == SOUND_DEGREES) {
        double seen = found.getEntry(k) / left.getEntry(k, k) / precision;
        double gain =
            density(seen, 1 / precision + BENT_DEGREES * BENT_DEGREES)
                - density(seen, 1 / precision + sound);
        if (gain > most) {
          most = gain;
          likeliest = k;
        }
      }
    }
    if (likeliest >= 0) {
      prior[likeliest] = BENT_DEGREES;
    }
    return likeliest >= 0;
  }

  /** Logarithm, without its constant, of a normal density. */
  private static double density(double x, double variance) {
    return -0.5 * (Math.log(variance) + x * x / variance);
  }

  /** Of the offsets: what the fit leaves open, and how they vary by block. */
  private RealMatrix covariance(RealVector found) {
    double[][] left = equations.left().getData();
    double[][] covariance = new double[teeth][teeth];
    double[][] moved = new double[BlockedEquations.BLOCKS][];
    for (int b = 0; b < moved.length; b++) {
      moved[b] = offsets(equations.solve(b).subtract(found));
    }
    for (int j = 0; j < teeth; j++) {
      double[] c = new double[unknowns];
      for (int k = 0; k < unknowns; k++) {
        c[k] = offset(left[k], j);
      }
      for (int k = 0; k < teeth; k++) {
        covariance[j][k] = offset(c, k);
        for (double[] m : moved) {
          covariance[j][k] += m[j] * m[k] * (moved.length - 1.0) / moved.length;
        }
      }
    }
    return new Array2DRowRealMatrix(covariance, false);
  }

  private boolean runOutIsPlain(RealVector found, RealMatrix covariance) {
    double[] sorted = new double[teeth];
    for (int k = 0; k < teeth; k++) {
      sorted[k] = Math.hypot(Math.sqrt(covariance.getEntry(k, k)), uneven());
    }
    Arrays.sort(sorted);
    return runOut(found) > Math.max(LEAST_RUN_OUT_DEGREES, PLAIN * sorted[teeth / 2]);
  }

  /** Median strength of each tooth over that of the median tooth. */
  private static double[] amplitudes(ToothEvents events, int teeth) {
    int[] count = new int[teeth];
    for (int i = 0; i < events.size(); i++) {
      count[Math.max(0, events.tooth(i) - 1)] += events.kind(i) == ToothKind.SEEN ? 1 : 0;
    }
    double[][] by = Arrays.stream(count).mapToObj(double[]::new).toArray(double[][]::new);
    for (int i = 0; i < events.size(); i++) {
      if (events.kind(i) == ToothKind.SEEN) {
        by[events.tooth(i) - 1][--count[events.tooth(i) - 1]] = events.strength(i);
      }
    }
    double[] amplitudes = new double[teeth];
    for (int k = 0; k < teeth; k++) {
      Arrays.sort(by[k]);
      amplitudes[k] = by[k].length == 0 ? 0 : by[k][by[k].length / 2];
    }
    double[] sorted = amplitudes.clone();
    Arrays.sort(sorted);
    double median = sorted[teeth / 2] > 0 ? sorted[teeth / 2] : 1;
    return Arrays.stream(amplitudes).map(a -> a / median).toArray();
  }
}
