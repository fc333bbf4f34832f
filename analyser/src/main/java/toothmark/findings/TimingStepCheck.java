package toothmark.findings;

import toothmark.timing.GapShape;

/** The timing jumps by a fixed angle at one speed. */
final class TimingStepCheck extends GapShapeCheck {

  TimingStepCheck() {
    super("timing-step", GapShape.STEP, "The timing jumps by a fixed angle at one speed.");
  }

  @Override
  Draft describe(Draft draft) {
    return draft
        .saw("The advance gap has one value below a speed and another above it.")
        .ratherThan("A delay changes little by little; this jumps.")
        .next(
            "Look in the controller for a table edge, a dwell limit or a change of timing tooth at that speed.")
        .caution("Do not trim it with the base angle: one side would be wrong.");
  }
}
