package toothmark.findings;

import toothmark.timing.GapShape;

/** Sparks stray while the speed changes. */
final class SpeedPredictionCheck extends GapShapeCheck {

  SpeedPredictionCheck() {
    super("speed-prediction", GapShape.ACCELERATION, "Sparks stray while the speed changes.");
  }

  @Override
  Draft describe(Draft draft) {
    return draft
        .saw(
            "The gap follows the change of speed: one way while speeding up, the other way while slowing down.")
        .ratherThan("A fixed delay does not depend on acceleration.")
        .next(
            "Set the controller to time sparks from a tooth nearer to the spark, or to a quicker speed measure.")
        .caution("Judge the basic timing at steady speed only.");
  }
}
