package toothmark.findings;

import java.util.Optional;
import toothmark.timing.GapFit;
import toothmark.timing.GapShape;

/** What the checks of the gap's shape have in common. */
final class TimingShapes {

  static final String NO_GAP =
      "Actual advance cannot be compared: no commanded advance, or too few sparks.";
  static final String ONE_SPEED =
      "The speed varies by less than 30 %, so a delay cannot be told from a fixed angle.";

  private TimingShapes() {}

  /** Whether one shape is clearly the best, and it is this one. */
  static boolean named(GapFit fit, GapShape shape) {
    return fit.verdict() == GapFit.Verdict.NAMED
        && !fit.shapes().isEmpty()
        && fit.shapes().get(0).shape() == shape;
  }

  /** The fit, where it names that shape. */
  static Optional<GapFit> fitNaming(Observations seen, GapShape shape) {
    return seen.timing().gap().filter(g -> named(g, shape));
  }
}
