package toothmark.timing;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.function.IntFunction;
import org.apache.commons.math3.analysis.UnivariateFunction;
import org.apache.commons.math3.distribution.FDistribution;
import org.apache.commons.math3.optim.MaxEval;
import org.apache.commons.math3.optim.nonlinear.scalar.GoalType;
import org.apache.commons.math3.optim.univariate.BrentOptimizer;
import org.apache.commons.math3.optim.univariate.SearchInterval;
import org.apache.commons.math3.optim.univariate.UnivariateObjectiveFunction;
import org.apache.commons.math3.stat.StatUtils;
import org.apache.commons.math3.util.MathArrays;

/**
 * Chooses how the gap changes with speed.
 *
 * <p>A shape is named only when it beats a constant gap by an F test (at 1 %, for as many shapes as
 * are tried) and the next shape is worse by 6 or more of the corrected Akaike criterion (Hurvich
 * and Tsai, Biometrika 76 (1989) 297, doi:10.1093/biomet/76.2.297; the bound after Burnham and
 * Anderson, Model Selection and Multimodel Inference, 2002, 2.6). Both count only as many readings
 * as are independent by the correlation of the residuals.
 */
final class ShapeChoice {

  private static final double LARGEST_CHANCE = 0.01;
  private static final double CLEARLY_WORSE_AICC = 6;

  /**
   * Shapes that differ by less than this many of the command's own uncertainties are not told
   * apart: when the controller takes the speed shifts the command as a shape of the gap would.
   */
  private static final double OPEN_UNCERTAINTIES = 3;

  /**
   * A shape that moves the gap by less than this is none, however sure: the wheel's teeth and the
   * bend of the sensor's lag leave as much, degrees.
   */
  private static final double LEAST_CHANGE_DEGREES = 0.1;

  /** Shapes nowhere further apart than this are one for all that can be done, degrees. */
  private static final double ALIKE_DEGREES = 0.1;

  /** A threshold shows at cranking speeds only, rev/min. */
  private static final double THRESHOLD_NEEDS_RPM = 500;

  private static final int GRID = 24;

  /** Phases at the highest speed between which a filter's lag is sought, radians. */
  private static final double LEAST_PHASE = 0.02;

  private static final double LARGEST_PHASE = 20;

  private final GapReadings gaps;
  private final int slots;
  private final double[] values;
  private final double[] weights;

  private ShapeChoice(GapReadings gaps, int slots, double[] variances) {
    this.gaps = gaps;
    this.slots = slots;
    this.values = gaps.gaps();
    this.weights = Arrays.stream(variances).map(v -> 1 / v).toArray();
  }

  /**
   * What was chosen.
   *
   * @param verdict what can be said
   * @param shapes best first
   */
  record Choice(GapFit.Verdict verdict, List<GapFit.ShapeScore> shapes) {}

  /** A shape with its fit; parameters without the variance. */
  private record Candidate(GapShape shape, int parameters, LinearFit fit) {}

  /**
   * Chooses.
   *
   * @param gaps without what comes of the change of speed
   * @param slots of the wheel
   * @param variances of each gap's whole error, square degrees
   * @param delayUncertainty standard uncertainty of a delay, microseconds
   * @return what can be said
   */
  static Choice choose(GapReadings gaps, int slots, double[] variances, double delayUncertainty) {
    return new ShapeChoice(gaps, slots, variances).choose(delayUncertainty);
  }

  private Choice choose(double delayUncertaintyMicroseconds) {
    List<Candidate> all = candidates();
    Candidate least =
        all.stream().min(Comparator.comparingDouble(c -> aicc(c, gaps.size()))).orElseThrow();
    double size = effectiveSize(least.fit());
    all.sort(Comparator.comparingDouble(c -> aicc(c, size)));
    Candidate best = all.get(0);
    List<GapFit.ShapeScore> scores = new ArrayList<>();
    for (Candidate c : all) {
      scores.add(new GapFit.ShapeScore(c.shape(), aicc(c, size) - aicc(best, size)));
    }
    return new Choice(verdict(all, scores, size, delayUncertaintyMicroseconds), scores);
  }

  private GapFit.Verdict verdict(
      List<Candidate> all, List<GapFit.ShapeScore> scores, double size, double uncertainty) {
    Candidate constant = fitted(GapShape.CONSTANT, 1, i -> new double[] {1});
    boolean changes =
        all.stream()
            .filter(c -> change(c) >= LEAST_CHANGE_DEGREES)
            .anyMatch(c -> chance(c, constant, size) * (all.size() - 1) < LARGEST_CHANCE);
    if (!changes) {
      double span = gaps.highestRpm() - gaps.lowestRpm();
      double bound = 1.96 * uncertainty * Line.DEGREES * span;
      return bound < GapFit.NO_CHANGE_DEGREES
          ? GapFit.Verdict.NO_CHANGE
          : GapFit.Verdict.CANNOT_TELL;
    }
    return scores.get(0).shape() != GapShape.CONSTANT
            && scores.get(1).excessAicc() >= CLEARLY_WORSE_AICC
            && all.stream().allMatch(c -> standsOut(all.get(0), c))
        ? GapFit.Verdict.NAMED
        : GapFit.Verdict.CANNOT_TELL;
  }

  /** How far a shape moves the gap over the speeds seen, degrees. */
  private double change(Candidate c) {
    return range(MathArrays.ebeSubtract(values, c.fit().residuals()));
  }

  private static double range(double[] x) {
    return StatUtils.max(x) - StatUtils.min(x);
  }

  /** Whether the best shape differs from a simpler one by more than is open of the command. */
  private boolean standsOut(Candidate best, Candidate other) {
    if (other.parameters() >= best.parameters()) {
      return true;
    }
    double[] apart = MathArrays.ebeSubtract(best.fit().residuals(), other.fit().residuals());
    double open = StatUtils.sumSq(gaps.openOfLook());
    return StatUtils.sumSq(apart) > square(OPEN_UNCERTAINTIES) * open;
  }

  private static double square(double x) {
    return x * x;
  }

  private static double chance(Candidate c, Candidate constant, double size) {
    int more = c.parameters() - constant.parameters();
    double dof = Math.max(1, size - c.parameters());
    if (more == 0) {
      return 1;
    }
    double ratio =
        constant.fit().weightedSquares() / Math.max(c.fit().weightedSquares(), 1e-12) - 1;
    return 1 - new FDistribution(more, dof).cumulativeProbability(ratio * dof / more);
  }

  private static double aicc(Candidate c, double size) {
    double k = c.parameters() + 1;
    int n = c.fit().residuals().length;
    double correction = 2 * k * (k + 1) / Math.max(1, size - k - 1);
    double mean = Math.max(c.fit().weightedSquares(), 1e-12) / n;
    return size * Math.log(mean) + 2 * k + correction;
  }

  private double effectiveSize(LinearFit fit) {
    double[] r = fit.residuals();
    double products = 0;
    double squares = 0;
    for (int i = 0; i < r.length; i++) {
      double z = r[i] * Math.sqrt(weights[i]);
      squares += z * z;
      products += i > 0 ? z * r[i - 1] * Math.sqrt(weights[i - 1]) : 0;
    }
    double c = squares > 0 ? Math.max(0, Math.min(0.98, products / squares)) : 0;
    return Math.max(6, r.length * (1 - c) / (1 + c));
  }

  private List<Candidate> candidates() {
    List<Candidate> all = new ArrayList<>();
    all.add(fitted(GapShape.CONSTANT, 1, i -> new double[] {1}));
    Candidate delay = fitted(GapShape.DELAY, 2, i -> new double[] {1, -gaps.rpm(i) / 1000});
    all.add(delay);
    Candidate filterLag = filterLag();
    double[] apart = MathArrays.ebeSubtract(delay.fit().residuals(), filterLag.fit().residuals());
    if (range(apart) >= ALIKE_DEGREES) {
      all.add(filterLag);
    }
    all.add(step());
    if (gaps.lowestRpm() < THRESHOLD_NEEDS_RPM) {
      all.add(fitted(GapShape.THRESHOLD, 2, i -> new double[] {1, 1000 / gaps.rpm(i)}));
    }
    return all;
  }

  private Candidate fitted(GapShape shape, int parameters, IntFunction<double[]> row) {
    double[][] rows = new double[gaps.size()][];
    for (int i = 0; i < rows.length; i++) {
      rows[i] = row.apply(i);
    }
    return new Candidate(shape, parameters, LinearFit.of(rows, values, weights));
  }

  /**
   * Lag of a first-order filter on the crank signal: atan(2 pi f tau) / N at tooth frequency f. The
   * time constant alone decides both size and bend.
   */
  private Candidate filterLag() {
    double fastest = phase(gaps.highestRpm(), 1);
    UnivariateFunction loss = logTau -> lagging(Math.exp(logTau) / fastest).fit().weightedSquares();
    double logTau =
        new BrentOptimizer(1e-6, 1e-4)
            .optimize(
                new UnivariateObjectiveFunction(loss),
                GoalType.MINIMIZE,
                new SearchInterval(Math.log(LEAST_PHASE), Math.log(LARGEST_PHASE)),
                new MaxEval(200))
            .getPoint();
    return lagging(Math.exp(logTau) / fastest);
  }

  private Candidate lagging(double tau) {
    double[] ahead = new double[values.length];
    double[][] rows = new double[values.length][];
    for (int i = 0; i < ahead.length; i++) {
      ahead[i] = values[i] + Math.toDegrees(Math.atan(phase(gaps.rpm(i), tau))) / slots;
      rows[i] = new double[] {1};
    }
    return new Candidate(GapShape.FILTER_LAG, 2, LinearFit.of(rows, ahead, weights));
  }

  private double phase(double rpm, double tau) {
    return 2 * Math.PI * slots * rpm / 60 * tau;
  }

  private Candidate step() {
    double[] sorted = gaps.rpms();
    Arrays.sort(sorted);
    Candidate best = null;
    for (int k = 1; k < GRID; k++) {
      double at = StatUtils.percentile(sorted, 100.0 * k / GRID);
      if (at > sorted[0] && at < sorted[sorted.length - 1]) {
        best =
            better(fitted(GapShape.STEP, 3, i -> new double[] {1, gaps.rpm(i) > at ? 1 : 0}), best);
      }
    }
    return best;
  }

  private static Candidate better(Candidate a, Candidate b) {
    return b == null || a.fit().weightedSquares() < b.fit().weightedSquares() ? a : b;
  }
}
