package toothmark.findings;

import toothmark.timing.GapShape;

/** The sensor's signal passes its threshold late at low speed. */
final class ThresholdLagCheck extends GapShapeCheck {

  ThresholdLagCheck() {
    super("threshold-lag", GapShape.THRESHOLD);
  }

  @Override
  Draft describe(Draft draft) {
    return draft.saw("fades").ratherThan("delay").caution("lower-threshold");
  }
}
