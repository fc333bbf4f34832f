package toothmark.findings;

import toothmark.timing.GapShape;

/** The timing jumps by a fixed angle at one speed. */
final class TimingStepCheck extends GapShapeCheck {

  TimingStepCheck() {
    super("timing-step", GapShape.STEP);
  }

  @Override
  Draft describe(Draft draft) {
    return draft.saw("two-values").ratherThan("delay").caution("base-angle");
  }
}
