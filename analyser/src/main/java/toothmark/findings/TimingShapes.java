package toothmark.findings;

import java.util.Optional;
import toothmark.timing.GapFit;
import toothmark.timing.GapShape;
import toothmark.timing.SparkTiming;

/** What the checks of the gap's shape have in common. */
final class TimingShapes {

  /** A change of the gap worth a look, degrees: a quarter of what makers allow. */
  static final double MATTERS_DEGREES = 0.5;

  /** Quantile of the normal distribution above which 5 % lie. */
  private static final double NORMAL_95 = 1.645;

  private TimingShapes() {}

  /** Whether one shape is clearly the best, and it is this one. */
  static boolean named(GapFit fit, GapShape shape) {
    return fit.verdict() == GapFit.Verdict.NAMED
        && !fit.shapes().isEmpty()
        && fit.shapes().get(0).shape() == shape;
  }

  /** The fit, where it names that shape and the gap changes enough to matter. */
  static Optional<GapFit> fitNaming(Observations seen, GapShape shape) {
    return seen.timing().gap().filter(g -> named(g, shape) && change(seen, g) >= MATTERS_DEGREES);
  }

  /**
   * How far the gap ranges: the middle of its upper tenth less that of its lower tenth, beyond what
   * scatter alone does, degrees.
   */
  private static double change(Observations seen, GapFit fit) {
    double[] gaps =
        seen.timing().sparks().stream()
            .filter(s -> s.standing() == SparkTiming.Standing.FITTED)
            .flatMapToDouble(s -> s.gapDegrees().stream())
            .sorted()
            .toArray();
    if (gaps.length < 10) {
      return 0;
    }
    double range = gaps[gaps.length * 19 / 20] - gaps[gaps.length / 20];
    return range - 2 * NORMAL_95 * fit.scatterDegrees();
  }
}
