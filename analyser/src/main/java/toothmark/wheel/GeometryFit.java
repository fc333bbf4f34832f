package toothmark.wheel;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.DoubleSummaryStatistics;
import java.util.List;
import java.util.stream.DoubleStream;
import java.util.stream.IntStream;
import org.apache.commons.math3.linear.Array2DRowRealMatrix;
import org.apache.commons.math3.linear.ArrayRealVector;
import org.apache.commons.math3.linear.CholeskyDecomposition;
import org.apache.commons.math3.linear.RealMatrix;
import org.apache.commons.math3.linear.RealVector;

/**
 * Learns how far each tooth stands from its nominal place, apart from what the crank's speed does.
 *
 * <p>Over two turns the crank's angle is a polynomial of time, plus ripple that repeats with the
 * turn, plus the place of each tooth. The ripple of gas torque shrinks with the square of speed;
 * that of the pistons' own mass swings as far at all speeds (Heywood 1988, section 2.2), so that in
 * its orders a wheel's error cannot be told from it, and only what a sound wheel's teeth have there
 * by chance is granted. All are found at once by regularised least squares over many pairs of
 * turns, the polynomials eliminated first. Run-out, a sine once a turn, has a term of its own, for
 * the smooth part of a wheel's error is what a prior on single teeth would shrink; it is kept only
 * where it is plain. After Resor, Trethewey and Maynard, J. Sound Vib. 286 (2005) 897-920, and
 * Diamond, Heyns and Oberholster, Mech. Syst. Signal Process. (2016).
 */
final class GeometryFit {

  /** Fewer turns say too little of single teeth. */
  static final int LEAST_TURNS = 10;

  /** Below this speed compression shapes the turn more than the wheel does, rev/min. */
  private static final double SLOWEST_RPM = 500;

  private static final int MOST_WINDOWS = 150;
  private static final int BLOCKS = 8;

  /** How far a sound tooth is off, and how far a bent one may be, degrees. */
  private static final double SOUND_DEGREES = 0.03;

  private static final double BENT_DEGREES = 5;
  private static final double BENT_FROM_DEGREES = 0.15;
  private static final double RUN_OUT_DEGREES = 0.5;
  private static final double PLAIN = 2.5;
  private static final double LEAST_RUN_OUT_DEGREES = 0.05;
  private static final double RIPPLE_DEGREES = 3;

  /** What unequal cylinders leave of a wave once a turn at 1000 rev/min; common practice. */
  private static final double UNEVEN_DEGREES = 0.1;

  /** Run-out that a wheel may have though it does not show: 0.04 mm at 75 mm. */
  private static final double HIDDEN_RUN_OUT_DEGREES = 0.02;

  /** Run-out is told from ripple by their change with speed where it varies by this factor. */
  private static final double SEVERAL_SPEEDS = 1.3;

  private static final double HELD = 1e-6;

  private final WheelPattern pattern;
  private final int teeth;
  private final int unknowns;
  private final List<GeometryWindow> windows;
  private final double[] prior;
  private RealMatrix[] normal;
  private RealVector[] right;
  private double scale = 1;

  private GeometryFit(WheelPattern pattern, List<GeometryWindow> windows) {
    this.pattern = pattern;
    this.teeth = pattern.teeth();
    this.unknowns = GeometryWindow.unknowns(teeth);
    this.windows = windows;
    this.prior = new double[unknowns];
    Arrays.fill(prior, 0, teeth, SOUND_DEGREES);
    Arrays.fill(prior, teeth, teeth + 2, RUN_OUT_DEGREES);
    Arrays.fill(prior, teeth + 2, teeth + 4, UNEVEN_DEGREES);
    Arrays.fill(prior, teeth + 4, unknowns, RIPPLE_DEGREES);
    if (uneven() > 0) {
      Arrays.fill(prior, teeth + 2, teeth + 4, HELD);
    }
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
    List<GeometryWindow> all = GeometryWindow.all(events, pattern, SLOWEST_RPM);
    if (all.size() < LEAST_TURNS - 1) {
      double[] zero = new double[pattern.teeth()];
      return ToothGeometry.independent(zero, SOUND_DEGREES, amplitudes, 0);
    }
    List<GeometryWindow> some = new ArrayList<>();
    int step = (all.size() + MOST_WINDOWS - 1) / MOST_WINDOWS;
    for (int i = 0; i < all.size(); i += step) {
      some.add(all.get(i));
    }
    return new GeometryFit(pattern, some).fit(amplitudes, all.size() + 1);
  }

  private ToothGeometry fit(double[] amplitudes, int turns) {
    accumulate(null);
    RealVector found = solve(-1);
    accumulate(found);
    found = solve(-1);
    if (freeBentTeeth(found)) {
      accumulate(found);
      found = solve(-1);
    }
    RealMatrix spread = spread(found).add(wave(uneven()));
    if (!runOutIsPlain(found, spread)) {
      Arrays.fill(prior, teeth, teeth + 2, HIDDEN_RUN_OUT_DEGREES);
      Arrays.fill(prior, teeth + 2, teeth + 4, UNEVEN_DEGREES);
      found = solve(-1);
      spread = spread(found);
    }
    double[] offsets = directions().operate(found).toArray();
    return new ToothGeometry(offsets, spread, amplitudes, turns);
  }

  /** Covariance of a wave once a turn, its phase unknown, that each tooth may be off by. */
  private RealMatrix wave(double deviation) {
    RealMatrix c = new Array2DRowRealMatrix(teeth, teeth);
    for (int k = 0; k < teeth; k++) {
      for (int l = 0; l < teeth; l++) {
        double apart = pattern.degreesAfterTooth1(k + 1) - pattern.degreesAfterTooth1(l + 1);
        c.setEntry(k, l, deviation * deviation * Math.cos(Math.toRadians(apart)));
      }
    }
    return c;
  }

  private DoubleStream deviations(RealMatrix spread) {
    return IntStream.range(0, teeth).mapToDouble(k -> Math.sqrt(spread.getEntry(k, k)));
  }

  /**
   * Sums the normal equations by blocks of windows; known residuals lessen the weight of outliers.
   */
  private void accumulate(RealVector known) {
    normal = new RealMatrix[BLOCKS];
    right = new RealVector[BLOCKS];
    List<double[]> residuals = new ArrayList<>();
    for (int b = 0; b < BLOCKS; b++) {
      normal[b] = new Array2DRowRealMatrix(unknowns, unknowns);
      right[b] = new ArrayRealVector(unknowns);
    }
    for (int w = 0; w < windows.size(); w++) {
      GeometryWindow.Rows rows = windows.get(w).rows(known, scale);
      rows.addTo(normal[w * BLOCKS / windows.size()], right[w * BLOCKS / windows.size()]);
      residuals.add(rows.residuals(known));
    }
    double[] r =
        residuals.stream().flatMapToDouble(Arrays::stream).map(Math::abs).sorted().toArray();
    scale = Math.max(1e-3, 1.4826 * r[r.length / 2]);
  }

  /** Solves all blocks together, or all but one. */
  private RealVector solve(int without) {
    return decompose(without).getSolver().solve(sum(right, without));
  }

  private CholeskyDecomposition decompose(int without) {
    RealMatrix a = new Array2DRowRealMatrix(unknowns, unknowns);
    for (int b = 0; b < BLOCKS; b++) {
      a = b == without ? a : a.add(normal[b]);
    }
    for (int i = 0; i < unknowns; i++) {
      a.addToEntry(i, i, scale * scale / (prior[i] * prior[i]));
    }
    return new CholeskyDecomposition(a, 1e-9, 1e-14);
  }

  private static RealVector sum(RealVector[] parts, int without) {
    RealVector s = new ArrayRealVector(parts[0].getDimension());
    for (int b = 0; b < parts.length; b++) {
      s = b == without ? s : s.add(parts[b]);
    }
    return s;
  }

  /** Teeth far off their place are let go, so that the prior on sound teeth does not hold them. */
  private boolean freeBentTeeth(RealVector found) {
    double[] size = new double[teeth];
    for (int k = 0; k < teeth; k++) {
      size[k] = Math.abs(found.getEntry(k));
    }
    double[] sorted = size.clone();
    Arrays.sort(sorted);
    double limit = Math.max(BENT_FROM_DEGREES, 5 * 1.4826 * sorted[teeth / 2]);
    boolean any = false;
    for (int k = 0; k < teeth; k++) {
      if (size[k] > limit) {
        prior[k] = BENT_DEGREES;
        any = true;
      }
    }
    return any;
  }

  /** Covariance of the offsets: what the fit leaves open, and how it varies by block. */
  private RealMatrix spread(RealVector found) {
    RealMatrix inverse = decompose(-1).getSolver().getInverse().scalarMultiply(scale * scale);
    RealMatrix directions = directions();
    RealMatrix spread = directions.multiply(inverse).multiply(directions.transpose());
    for (int b = 0; b < BLOCKS; b++) {
      RealVector d = directions.operate(solve(b).subtract(found));
      spread = spread.add(d.outerProduct(d).scalarMultiply((BLOCKS - 1.0) / BLOCKS));
    }
    return spread;
  }

  /** How the offset of each tooth is made up of the unknowns. */
  private RealMatrix directions() {
    RealMatrix directions = new Array2DRowRealMatrix(teeth, unknowns);
    for (int k = 0; k < teeth; k++) {
      double a = Math.toRadians(pattern.degreesAfterTooth1(k + 1));
      directions.setEntry(k, k, 1);
      directions.setEntry(k, teeth, Math.cos(a));
      directions.setEntry(k, teeth + 1, Math.sin(a));
    }
    return directions;
  }

  private boolean runOutIsPlain(RealVector found, RealMatrix spread) {
    double amplitude = Math.hypot(found.getEntry(teeth), found.getEntry(teeth + 1));
    double[] sorted = deviations(spread).sorted().toArray();
    return amplitude > Math.max(LEAST_RUN_OUT_DEGREES, PLAIN * sorted[teeth / 2]);
  }

  /** Median strength of each tooth over that of the median tooth. */
  private static double[] amplitudes(ToothEvents events, int teeth) {
    List<List<Double>> by = new ArrayList<>();
    for (int k = 0; k < teeth; k++) {
      by.add(new ArrayList<>());
    }
    for (int i = 0; i < events.size(); i++) {
      if (events.kind(i) == ToothKind.SEEN) {
        by.get(events.tooth(i) - 1).add(events.strength(i));
      }
    }
    double[] amplitudes = new double[teeth];
    for (int k = 0; k < teeth; k++) {
      double[] s = by.get(k).stream().mapToDouble(Double::doubleValue).sorted().toArray();
      amplitudes[k] = s.length == 0 ? 0 : s[s.length / 2];
    }
    double[] sorted = amplitudes.clone();
    Arrays.sort(sorted);
    double median = sorted[teeth / 2] > 0 ? sorted[teeth / 2] : 1;
    return Arrays.stream(amplitudes).map(a -> a / median).toArray();
  }
}
