package toothmark.findings;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.DoubleSummaryStatistics;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import org.apache.commons.math3.complex.Complex;
import org.apache.commons.math3.linear.Array2DRowRealMatrix;
import org.apache.commons.math3.linear.ArrayRealVector;
import org.apache.commons.math3.linear.CholeskyDecomposition;
import org.apache.commons.math3.linear.DecompositionSolver;
import org.apache.commons.math3.linear.NonPositiveDefiniteMatrixException;
import org.apache.commons.math3.linear.RealMatrix;
import toothmark.edges.EdgeTrain;
import toothmark.units.Measured;
import toothmark.units.Say;

/**
 * A frequency at which the teeth swing about their places, whatever the speed: something between
 * the pistons and the sensor rings.
 *
 * <p>Over every few turns the lateness of the teeth is split into multiples of half an order. What
 * the torque of the cylinders swings a stiff crank by falls with the square of the frequency, or
 * stays the same where the masses of the pistons do it; where the swing rises with the frequency
 * and falls again, a spring does it. That one order after the other swings most at the same
 * frequency, each at its own speed, shows the resonance (as in a Campbell diagram of torsional
 * vibration: Den Hartog, Mechanical Vibrations, chapter 5; from memory).
 *
 * @param hertz of the resonance
 * @param degrees how far teeth swing each way at the most
 * @param fromRpm lowest speed at which it shows
 * @param toRpm highest
 * @param strengthPerDegree by which share the strength of the signal changes with each degree of
 *     the swing, of either sign; empty for a signal without flux
 */
record Resonance(
    double hertz,
    double degrees,
    double fromRpm,
    double toRpm,
    Optional<Measured> strengthPerDegree) {

  private static final int TURNS = 3;
  private static final int STEP_TURNS = 1;
  private static final int MOST_WINDOWS = 3000;
  private static final double HALF = 0.5;
  private static final double LOWEST_ORDER = 1;
  private static final double HIGHEST_ORDER = 12;
  private static final int LOWEST = (int) (LOWEST_ORDER / HALF);

  /** Below, what the neighbours' mean leaves of a swing is too little, and errors look large. */
  private static final double LEAST_ORDER = 2;

  /** A tooth further out is none, and turns with fewer teeth than this share have lost some. */
  private static final double TORN_PITCHES = 0.3;

  private static final double WHOLE = 0.95;

  /** Orders are told up to this share of the slots of the wheel. */
  private static final double RESOLVED = 1.0 / 3;

  private static final int FEWEST_SLOTS = 24;

  /** Values for each unknown of a window's fit. */
  private static final double PLENTY = 1.6;

  /** Bands of frequency, and how many to each side are taken together. */
  private static final double BAND = 1.05;

  private static final int BESIDE = 1;

  /** How far on each side, in bands, a resonance has left its place: about twice the frequency. */
  private static final int AWAY = 15;

  private static final int FEWEST_BESIDE = 7;

  /** A swing stands so far above the least on each side. */
  private static final double PROMINENT = 2;

  /** Places of a resonance lie so near to it, as a share of its frequency, and swing so widely. */
  private static final double WIDTH = 0.1;

  private static final double WIDE = 0.3;

  /** Beside a resonance begins so far from it and ends so far, in the frequency's logarithm. */
  private static final double CLEAR = 0.14;

  private static final double FAR = 0.75;
  private static final double SURE = 4;
  private static final int FEWEST_PLACES = 4;

  /** Over a change of speed by this factor an order is no frequency. */
  private static final double CHANGED = 1.15;

  private static final double LOWEST_HERTZ = 40;

  /** Swing of one order over a few turns. */
  private record Place(double rpm, double order, Complex swing, Complex strength, double u) {

    double hertz() {
      return order * rpm / 60;
    }

    double power() {
      return swing.abs() * swing.abs() - 2 * u * u;
    }
  }

  static Optional<Resonance> of(Turns turns, ToothLateness late, EdgeTrain train) {
    if (turns.pattern().slots() < FEWEST_SLOTS) {
      return Optional.empty();
    }
    List<Place> places = places(turns, late, train);
    return new Bands(places)
        .prominent()
        .mapToObj(i -> around(LOWEST_HERTZ * Math.pow(BAND, i), places))
        .flatMap(Optional::stream)
        .findFirst();
  }

  /** Mean square of the swing of all orders by bands of frequency, with its uncertainty. */
  private static final class Bands {

    private final double[] power;
    private final double[] uncertainty;

    Bands(List<Place> places) {
      double highest = places.stream().mapToDouble(Place::hertz).max().orElse(LOWEST_HERTZ);
      power = new double[band(highest) + 1];
      uncertainty = new double[power.length];
      int[] count = new int[power.length];
      for (Place p : places) {
        int first = Math.max(0, band(p.hertz()) - BESIDE);
        int last = Math.min(power.length - 1, band(p.hertz()) + BESIDE);
        for (int i = first; i <= last; i++) {
          power[i] += p.power();
          uncertainty[i] += 4 * Math.pow(p.u, 4);
          count[i]++;
        }
      }
      for (int i = 0; i < power.length; i++) {
        power[i] = count[i] < FEWEST_PLACES ? Double.NaN : Math.max(0, power[i] / count[i]);
        uncertainty[i] = Math.sqrt(uncertainty[i]) / count[i];
      }
    }

    /** The bands that stand above the least of those on each side, the strongest first. */
    IntStream prominent() {
      return IntStream.range(0, power.length)
          .filter(this::standsOut)
          .boxed()
          .sorted(Comparator.comparingDouble(i -> -power[i]))
          .mapToInt(Integer::intValue);
    }

    private boolean standsOut(int i) {
      double beside = Math.max(least(i - AWAY, i), least(i + 1, i + 1 + AWAY));
      return power[i] - Say.EXPAND * uncertainty[i] > PROMINENT * PROMINENT * beside;
    }

    /** The least that may be in some bands; endless where too few are known. */
    private double least(int from, int to) {
      int known = 0;
      double least = Double.POSITIVE_INFINITY;
      for (int i = Math.max(0, from); i < Math.min(power.length, to); i++) {
        if (!Double.isNaN(power[i])) {
          known++;
          least = Math.min(least, power[i] + Say.EXPAND * uncertainty[i]);
        }
      }
      return known < FEWEST_BESIDE ? Double.POSITIVE_INFINITY : least;
    }
  }

  private static int band(double hertz) {
    return (int) Math.rint(Math.log(hertz / LOWEST_HERTZ) / Math.log(BAND));
  }

  /** The wide swings about a frequency, where several orders at several speeds have them. */
  private static Optional<Resonance> around(double hertz, List<Place> places) {
    List<Place> near =
        places.stream()
            .filter(p -> Math.abs(Math.log(p.hertz() / hertz)) < WIDTH)
            .filter(p -> p.order >= LEAST_ORDER && p.swing.abs() > SURE * p.u)
            .toList();
    double most = near.stream().mapToDouble(p -> p.swing.abs()).max().orElse(0);
    List<Place> wide = near.stream().filter(p -> p.swing.abs() > WIDE * most).toList();
    double low = wide.stream().mapToDouble(Place::rpm).min().orElse(0);
    double high = wide.stream().mapToDouble(Place::rpm).max().orElse(0);
    boolean rings = wide.stream().anyMatch(p -> risesAndFalls(p, places));
    if (wide.size() < FEWEST_PLACES || high < CHANGED * low || !rings) {
      return Optional.empty();
    }
    double weight = 0;
    double weighted = 0;
    for (Place p : wide) {
      weight += p.power();
      weighted += p.power() * p.hertz();
    }
    return Optional.of(new Resonance(weighted / weight, most, low, high, strength(wide)));
  }

  /**
   * Whether the order of a place swings far less at lower and at higher speeds: where the torque of
   * the cylinders and that of the pistons' masses cancel each other, it does so on one side.
   */
  private static boolean risesAndFalls(Place peak, List<Place> places) {
    DoubleSummaryStatistics below = new DoubleSummaryStatistics();
    DoubleSummaryStatistics above = new DoubleSummaryStatistics();
    for (Place p : places) {
      double away = Math.log(p.hertz() / peak.hertz());
      if (p.order == peak.order && Math.abs(away) > CLEAR && Math.abs(away) < FAR) {
        (away < 0 ? below : above).accept(p.swing.abs() + p.u);
      }
    }
    double least = Math.max(below.getMin(), above.getMin());
    return peak.swing.abs() - peak.u > PROMINENT * least;
  }

  /**
   * Slope of the strength's swing on that of the teeth, in step with it: the change of speed, a
   * quarter of a swing away, changes the strength a little as well.
   */
  private static Optional<Measured> strength(List<Place> places) {
    List<Place> known = places.stream().filter(p -> !p.strength.isNaN()).toList();
    if (known.size() < FEWEST_PLACES) {
      return Optional.empty();
    }
    double xx = known.stream().mapToDouble(p -> p.swing.abs() * p.swing.abs()).sum();
    Complex xy = Complex.ZERO;
    for (Place p : known) {
      xy = xy.add(p.strength.multiply(p.swing.conjugate()));
    }
    Complex slope = xy.divide(xx);
    double left = 0;
    for (Place p : known) {
      double off = p.strength.subtract(slope.multiply(p.swing)).abs();
      left += off * off / 2;
    }
    double u = Math.sqrt(left / (known.size() - 1) / xx * TURNS / STEP_TURNS);
    return Optional.of(new Measured(Math.abs(slope.getReal()), u));
  }

  private static List<Place> places(Turns turns, ToothLateness late, EdgeTrain train) {
    if (late.size() == 0) {
      return List.of();
    }
    double[] at = late.places();
    double[] strength = strengths(turns, late, train);
    double last = at[at.length - 1] - TURNS;
    double step = Math.max(STEP_TURNS, Math.ceil((last - at[0]) / MOST_WINDOWS));
    List<int[]> windows = new ArrayList<>();
    for (double from = at[0]; from < last; from += step) {
      windows.add(new int[] {firstAtOrAfter(at, from), firstAtOrAfter(at, from + TURNS)});
    }
    int fullest = windows.stream().mapToInt(w -> w[1] - w[0]).max().orElse(0);
    return windows.parallelStream()
        .filter(w -> w[1] - w[0] > WHOLE * fullest && isWhole(turns, late, w[0], w[1]))
        .flatMap(w -> split(turns, late, strength, w[0], w[1]).stream())
        .filter(p -> p.hertz() > LOWEST_HERTZ)
        .toList();
  }

  /** Whether no tooth stands so far out that it was lost, or another edge taken for it. */
  private static boolean isWhole(Turns turns, ToothLateness late, int first, int end) {
    return Arrays.stream(late.degrees(), first, end)
        .allMatch(x -> Math.abs(x) < TORN_PITCHES * turns.pattern().pitchDegrees());
  }

  private static int firstAtOrAfter(double[] sorted, double x) {
    int i = Arrays.binarySearch(sorted, x);
    return i >= 0 ? i : -i - 1;
  }

  /** Logarithm of the strength of each tooth over its own mean; NaN where it has none. */
  private static double[] strengths(Turns turns, ToothLateness late, EdgeTrain train) {
    double[] s = new double[late.size()];
    double[] sum = new double[turns.pattern().teeth() + 1];
    int[] count = new int[sum.length];
    for (int i = 0; i < s.length; i++) {
      int edge = ToothSwings.edgeAt(train, late.times()[i]);
      s[i] = edge >= 0 && train.swing(edge) > 0 ? Math.log(train.swing(edge)) : Double.NaN;
      if (!Double.isNaN(s[i])) {
        sum[turns.number(late.tooth(i))] += s[i];
        count[turns.number(late.tooth(i))]++;
      }
    }
    for (int i = 0; i < s.length; i++) {
      int k = turns.number(late.tooth(i));
      s[i] -= sum[k] / count[k];
    }
    return s;
  }

  /** The orders of some teeth in a row; none where too few are whole to tell them. */
  private static List<Place> split(
      Turns turns, ToothLateness late, double[] strength, int first, int end) {
    double highest = Math.min(HIGHEST_ORDER, RESOLVED * turns.pattern().slots());
    int orders = (int) ((highest - LOWEST_ORDER) / HALF) + 1;
    int n = end - first;
    if (n < PLENTY * 2 * orders) {
      return List.of();
    }
    double[] at = Arrays.copyOfRange(late.places(), first, end);
    double[] y = Arrays.copyOfRange(late.degrees(), first, end);
    double[] s = Arrays.copyOfRange(strength, first, end);
    double[][] waves = new double[n][];
    for (int i = 0; i < n; i++) {
      waves[i] = waves(at[i], 2 * (LOWEST + orders) - 1);
    }
    RealMatrix design =
        new Array2DRowRealMatrix(waves, false)
            .getSubMatrix(0, n - 1, 2 * LOWEST, 2 * (LOWEST + orders) - 1);
    try {
      DecompositionSolver solver = new CholeskyDecomposition(products(waves, orders)).getSolver();
      double[] swing = solver.solve(new ArrayRealVector(design.preMultiply(y), false)).toArray();
      double[] change = solver.solve(new ArrayRealVector(design.preMultiply(s), false)).toArray();
      double[] fitted = design.operate(swing);
      double left = 0;
      for (int i = 0; i < n; i++) {
        left += (y[i] - fitted[i]) * (y[i] - fitted[i]);
      }
      double u = Math.sqrt(left / (n - 2 * orders) * 2 / n);
      double seconds = late.times()[end - 1] - late.times()[first];
      double rpm = 60 * (at[n - 1] - at[0]) / seconds;
      List<Place> places = new ArrayList<>();
      for (int k = 0; k < orders; k++) {
        double order = LOWEST_ORDER + HALF * k;
        double gain = late.gain(order);
        Complex x = new Complex(swing[2 * k], -swing[2 * k + 1]).divide(gain);
        Complex c = new Complex(change[2 * k], -change[2 * k + 1]);
        places.add(new Place(rpm, order, x, c, u / gain));
      }
      return places;
    } catch (NonPositiveDefiniteMatrixException e) {
      return List.of();
    }
  }

  /** Cosine and sine at a place of so many multiples of half an order, from none up. */
  private static double[] waves(double place, int multiples) {
    double cosine = Math.cos(2 * Math.PI * HALF * place);
    double sine = Math.sin(2 * Math.PI * HALF * place);
    double[] waves = new double[2 * multiples];
    waves[0] = 1;
    for (int k = 2; k < waves.length; k += 2) {
      waves[k] = waves[k - 2] * cosine - waves[k - 1] * sine;
      waves[k + 1] = waves[k - 1] * cosine + waves[k - 2] * sine;
    }
    return waves;
  }

  /** The matrix of the normal equations: products of waves are sums of waves. */
  private static RealMatrix products(double[][] waves, int orders) {
    double[] sums = new double[waves[0].length];
    for (double[] w : waves) {
      for (int k = 0; k < sums.length; k++) {
        sums[k] += w[k] / 2;
      }
    }
    double[][] products = new double[2 * orders][2 * orders];
    for (int j = 0; j < orders; j++) {
      for (int k = 0; k < orders; k++) {
        int both = 2 * (2 * LOWEST + j + k);
        int apart = 2 * Math.abs(j - k);
        products[2 * j][2 * k] = sums[apart] + sums[both];
        products[2 * j + 1][2 * k + 1] = sums[apart] - sums[both];
        double across = sums[both + 1] + (j < k ? sums[apart + 1] : -sums[apart + 1]);
        products[2 * j][2 * k + 1] = across;
        products[2 * k + 1][2 * j] = across;
      }
    }
    return new Array2DRowRealMatrix(products, false);
  }
}
