package toothmark.timing;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import org.apache.commons.math3.stat.StatUtils;
import org.apache.commons.math3.stat.descriptive.moment.StandardDeviation;
import org.apache.commons.math3.util.MathArrays;
import toothmark.receiver.SyncLoss;
import toothmark.units.Measured;

/**
 * Fits gap(n) = offset - 6 n delay.
 *
 * <p>Stray sparks are left out against a line of least absolute residuals; the rest is fitted by
 * generalised least squares with errors that follow each other. What comes of the controller's way
 * of going by speed is fitted along: when it takes the speed, half known, and how it foretells a
 * spark's time, if it does. To the uncertainty of the fit are added those that all sparks share: of
 * the alignment, and of the places of the teeth beside the sparks.
 */
final class GapFitter {

  /** A delay is stated when speed varies by at least this share of its mean. */
  private static final double LEAST_SPAN = 0.3;

  private static final double REJECT = 4;

  private static final double LEAST_SCATTER_DEGREES = 0.02;

  /** A foretelling shows from so many standard uncertainties on, and so many degrees. */
  private static final double PLAIN = 4;

  private static final double LEAST_FORETOLD_DEGREES = 0.1;

  /** What moves gaps less than this does not count, square degrees. */
  private static final double NEGLIGIBLE = 1e-8;

  /** Readings for each column of a line of least absolute residuals, at least. */
  private static final int FEWEST_A_COLUMN = 5;

  private static final int FEWEST = 4;
  private static final int FEWEST_FOR_DELAY = 8;
  private static final int NEIGHBOURS = 4;

  /** When fewer than this share stray from the line they are left out, neighbours or not. */
  private static final double FEW = 0.1;

  private final WheelSetting wheel;
  private final Optional<AlignedWheel> aligned;

  GapFitter(WheelSetting wheel, Optional<AlignedWheel> aligned) {
    this.wheel = wheel;
    this.aligned = aligned;
  }

  /**
   * A fit and the readings on which it rests.
   *
   * @param fit the fit
   * @param kept the readings
   */
  record Outcome(GapFit fit, GapReadings kept) {}

  Optional<Outcome> fit(GapReadings gaps) {
    if (gaps.size() < FEWEST) {
      return Optional.empty();
    }
    GapReadings raw = withoutStrays(gaps);
    double[][] shifts = raw.shifts();
    double[][] columns =
        isSloped(raw) ? shifts : Arrays.copyOf(shifts, Math.min(shifts.length, GapReadings.LOOKS));
    LineFit fit = LineFit.of(raw.rpms(), raw.gaps(), raw.variances(), columns);
    double[] off = fit.nuisances();
    Optional<Measured> foretold = foretold(fit, raw);
    int taken = foretold.isPresent() ? off.length : Math.min(off.length, GapReadings.LOOKS);
    double[] known = Arrays.copyOf(off, taken);
    GapReadings kept = raw.without(known);
    Line line = withSharedErrors(fit, kept, known);
    return Optional.of(new Outcome(described(fit, line, kept, foretold, gaps.size()), kept));
  }

  /**
   * Whether speed varies enough to part what depends on it from what does not. On the starter alone
   * compressions move an angle between two teeth more than any delay does.
   */
  private static boolean isSloped(GapReadings gaps) {
    return gaps.highestRpm() >= SyncLoss.CRANKING_BELOW_RPM
        && gaps.relativeSpan() >= LEAST_SPAN
        && gaps.size() >= FEWEST_FOR_DELAY;
  }

  private GapFit described(
      LineFit fit, Line line, GapReadings kept, Optional<Measured> foretold, int readings) {
    boolean sloped = isSloped(kept);
    ShapeChoice.Choice choice =
        sloped
            ? ShapeChoice.choose(
                kept,
                wheel.pattern().slots(),
                fit.variances(),
                Math.sqrt(fit.line().delayVariance()))
            : new ShapeChoice.Choice(
                GapFit.Verdict.CANNOT_TELL, List.of(new GapFit.ShapeScore(GapShape.CONSTANT, 0)));
    Line shown = sloped ? line.about(0) : line;
    double sd = Math.sqrt(shown.middleVariance() * shown.delayVariance());
    Measured delay =
        new Measured(shown.delayMicroseconds(), Math.sqrt(shown.delayVariance())).times(1e-6);
    return new GapFit(
        new Measured(shown.middleDegrees(), Math.sqrt(shown.middleVariance())),
        sloped ? Optional.of(delay) : Optional.empty(),
        sloped ? shown.covariance() / sd : 0,
        kept.lowestRpm(),
        kept.highestRpm(),
        kept.size(),
        readings - kept.size(),
        foretold,
        scatter(kept, fit.line()),
        choice.verdict(),
        choice.shapes());
  }

  /** The spark that foretelling moves most, if it plainly moves any. */
  private static Optional<Measured> foretold(LineFit fit, GapReadings gaps) {
    double[] off = fit.nuisances();
    if (off.length == 0) {
      return Optional.empty();
    }
    double[][] shifts = gaps.shifts();
    Measured most = new Measured(0, 0);
    for (int i = 0; i < gaps.size(); i++) {
      double value = 0;
      double variance = 0;
      for (int a = GapReadings.LOOKS; a < off.length; a++) {
        value += off[a] * shifts[a][i];
        for (int b = GapReadings.LOOKS; b < off.length; b++) {
          variance += shifts[a][i] * shifts[b][i] * fit.nuisanceCovariance(a, b);
        }
      }
      most =
          Math.abs(value) > Math.abs(most.value())
              ? new Measured(value, Math.sqrt(Math.max(0, variance)))
              : most;
    }
    double sense = IntStream.range(GapReadings.LOOKS, off.length).mapToDouble(k -> off[k]).sum();
    boolean plain =
        sense > 0
            && Math.abs(most.value())
                > Math.max(LEAST_FORETOLD_DEGREES, PLAIN * most.standardUncertainty());
    return plain ? Optional.of(most) : Optional.empty();
  }

  private static double scatter(GapReadings kept, Line line) {
    double[] r = new double[kept.size()];
    for (int i = 0; i < r.length; i++) {
      r[i] = kept.degrees(i) - line.at(kept.rpm(i));
    }
    return new StandardDeviation().evaluate(r);
  }

  private GapReadings withoutStrays(GapReadings gaps) {
    boolean sloped = gaps.size() >= FEWEST_FOR_DELAY && gaps.relativeSpan() > 0.05;
    double centre = StatUtils.mean(gaps.rpms());
    double[][] rows = new double[gaps.size()][];
    double[][] shifts = gaps.shifts();
    boolean changing =
        sloped
            && gaps.size() >= FEWEST_A_COLUMN * shifts.length
            && Arrays.stream(shifts)
                .skip(GapReadings.LOOKS)
                .allMatch(c -> StatUtils.populationVariance(c) > NEGLIGIBLE);
    for (int i = 0; i < rows.length; i++) {
      rows[i] = new double[changing ? shifts.length : sloped ? 2 : 1];
      rows[i][0] = 1;
      for (int k = 1; k < rows[i].length; k++) { // level and speed stand where looks do
        rows[i][k] = k == 1 ? (gaps.rpm(i) - centre) / 1000 : shifts[k][i];
      }
    }
    double floor = Math.max(gaps.knownScatter(), LEAST_SCATTER_DEGREES);
    boolean[] far = far(Robust.leastAbsolute(rows, gaps.gaps(), floor).residuals(), floor);
    boolean[] alone = far(fromNeighbours(gaps), floor);
    int count = 0;
    for (boolean f : far) {
      count += f ? 1 : 0;
    }
    boolean few = count < FEW * gaps.size();
    return gaps.where(i -> !far[i] || !(few || alone[i]));
  }

  private static boolean[] far(double[] residuals, double floor) {
    double limit = REJECT * Math.max(Robust.sigma(residuals), floor);
    boolean[] far = new boolean[residuals.length];
    for (int i = 0; i < far.length; i++) {
      far[i] = Math.abs(residuals[i]) > limit;
    }
    return far;
  }

  /** Each gap against the median of those beside it, whatever the shape. */
  private static double[] fromNeighbours(GapReadings gaps) {
    double[] all = gaps.gaps();
    double[] r = new double[all.length];
    for (int i = 0; i < r.length; i++) {
      int from = Math.max(0, Math.min(i - NEIGHBOURS, all.length - 2 * NEIGHBOURS - 1));
      int to = Math.min(all.length, from + 2 * NEIGHBOURS + 1);
      r[i] = all[i] - Robust.median(Arrays.copyOfRange(all, from, to));
    }
    return r;
  }

  /**
   * Adds what all sparks share. The teeth beside the sparks and those beside top dead centre err
   * alike where they stand near each other, and only the difference counts.
   */
  private Line withSharedErrors(LineFit fit, GapReadings kept, double[] off) {
    double[][] beside = new double[kept.size()][];
    for (int i = 0; i < beside.length; i++) {
      beside[i] = teeth(kept.crankDegrees(i), off);
    }
    int teeth = wheel.pattern().teeth();
    double[] middle = new double[teeth];
    double[] delay = new double[teeth];
    for (int k = 0; k < teeth; k++) {
      double[] share = column(beside, k);
      if (Arrays.stream(share).anyMatch(v -> v != 0)) {
        double[] moved = fit.project(share);
        middle[k] = -moved[0];
        delay[k] = -moved[1];
      }
    }
    Line line = fit.line();
    if (aligned.isPresent()) {
      Line a = aligned.get().apparent();
      line =
          line.plus(
              new Line(a.centreRpm(), 0, 0, a.middleVariance(), a.delayVariance(), a.covariance()));
      middle = MathArrays.ebeAdd(middle, wheel.teethBeside(a.middleDegrees()));
    }
    return line.plus(
        new Line(
            line.centreRpm(),
            0,
            0,
            wheel.geometry().covariance(middle, middle),
            wheel.geometry().covariance(delay, delay),
            wheel.geometry().covariance(middle, delay)));
  }

  /** How the teeth's places move a gap: by those beside the spark, and by foretelling. */
  private double[] teeth(double crankDegrees, double[] off) {
    double[] shares = wheel.teethBeside(crankDegrees);
    for (int k = GapReadings.LOOKS; k < off.length; k++) {
      double[] foretold = Foretelling.WAYS.get(k - GapReadings.LOOKS).teeth(wheel, crankDegrees);
      shares = MathArrays.ebeAdd(shares, MathArrays.scale(off[k], foretold));
    }
    return shares;
  }

  private static double[] column(double[][] rows, int k) {
    return Arrays.stream(rows).mapToDouble(r -> r[k]).toArray();
  }
}
